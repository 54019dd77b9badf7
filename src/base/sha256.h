/* base/sha256.h - the SHA-256 digest of a text, so that a result names the input it came from. */
#ifndef TT_BASE_SHA256_H
#define TT_BASE_SHA256_H

#include <stddef.h>

/** The digest of n bytes as 64 lower-case hexadecimal digits and a zero. bytes may be NULL when
 *  n is 0. */
void tt_sha256_hex(const void *bytes, size_t n, char out[65]);

#endif
