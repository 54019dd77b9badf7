/* SHA-256 against the published examples of FIPS 180-4 (FROM MEMORY), the lengths at which the
 * padding changes among them. */
#include "base/sha256.h"
#include "assert_close.h"

#include <stdlib.h>
#include <string.h>

static void same(const char *text, const char *expected)
{
    char got[65];
    tt_sha256_hex(text, strlen(text), got);
    assert_string_equal(got, expected);
}

static void published_examples(void **state)
{
    (void)state;
    same("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    same("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    same("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
         "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    same("abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqr"
         "lmnopqrsmnopqrstnopqrstu",
         "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1");
}

static void a_million_times_a(void **state)
{
    (void)state;
    const size_t n = 1000000;
    char *text = malloc(n), got[65];
    assert_non_null(text);
    memset(text, 'a', n);
    tt_sha256_hex(text, n, got);
    free(text);
    assert_string_equal(got, "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

static void nothing_at_all(void **state)
{
    (void)state;
    char got[65];
    tt_sha256_hex(NULL, 0, got);
    assert_string_equal(got, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(published_examples),
                                       cmocka_unit_test(a_million_times_a),
                                       cmocka_unit_test(nothing_at_all)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
