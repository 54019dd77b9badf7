/* fuzz/fuzz.h - one input of the fuzzer: the bytes of a piece file, whatever they are. Lines at its
 * top of the form "#set KEY=VALUE" (comments to YAML) are taken as --set, "#scale S" as --scale. */
#ifndef TT_FUZZ_H
#define TT_FUZZ_H

#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

#endif
