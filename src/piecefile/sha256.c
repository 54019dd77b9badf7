/* piecefile/sha256.c - SHA-256 of the text of a file, so that a result names what it was made from.
 * FIPS 180-4, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3, 6.2 (from memory; proved by its test vectors). */
#include "piecefile/reader.h"

#include <stdint.h>
#include <stdio.h>
#include <string.h>

static const uint32_t k[64] = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

static uint32_t turn(uint32_t x, unsigned n)
{
    return (x >> n) | (x << (32 - n));
}

static void schedule(uint32_t w[64], const unsigned char block[64])
{
    for (int i = 0; i < 16; i++)
        w[i] = (uint32_t)block[4 * i] << 24 | (uint32_t)block[4 * i + 1] << 16 |
               (uint32_t)block[4 * i + 2] << 8 | (uint32_t)block[4 * i + 3];
    for (int i = 16; i < 64; i++) {
        const uint32_t a = w[i - 15], b = w[i - 2];
        w[i] = w[i - 16] + (turn(a, 7) ^ turn(a, 18) ^ (a >> 3)) + w[i - 7] +
               (turn(b, 17) ^ turn(b, 19) ^ (b >> 10));
    }
}

static void add_block(uint32_t h[8], const unsigned char block[64])
{
    uint32_t w[64], v[8];
    schedule(w, block);
    memcpy(v, h, sizeof v);
    for (int i = 0; i < 64; i++) {
        const uint32_t a = v[0], e = v[4];
        const uint32_t one = v[7] + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) +
                             ((e & v[5]) ^ (~e & v[6])) + k[i] + w[i];
        const uint32_t two = (turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) +
                             ((a & v[1]) ^ (a & v[2]) ^ (v[1] & v[2]));
        memmove(v + 1, v, 7 * sizeof *v);
        v[4] += one;
        v[0] = one + two;
    }
    for (int i = 0; i < 8; i++) h[i] += v[i];
}

void tt_sha256(const char *text, size_t length, char out[65])
{
    uint32_t h[8] = {0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                     0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
    size_t done = 0;
    for (; length - done >= 64; done += 64) add_block(h, (const unsigned char *)text + done);
    unsigned char last[128] = {0};
    const size_t rest = length - done, size = rest < 56 ? 64 : 128;
    if (rest) memcpy(last, text + done, rest);
    last[rest] = 0x80;
    for (size_t i = 0; i < 8; i++)
        last[size - 1 - i] = (unsigned char)((uint64_t)length * 8 >> (8 * i));
    add_block(h, last);
    if (size == 128) add_block(h, last + 64);
    for (size_t i = 0; i < 8; i++) snprintf(out + 8 * i, 9, "%08x", (unsigned)h[i]);
}
