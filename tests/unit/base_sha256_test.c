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

/* n times q; expected values by another implementation (Python's hashlib). */
static void lengths_round_the_padding(void **state)
{
    (void)state;
    static const struct {
        size_t n;
        const char *expected;
    } rows[] = {
        {55, "85528b5baff5639cb8e7daca79d085ac29ac0978e873ed7527158616b2b6c379"},
        {56, "f8ce2f8d6990c639668fe404262f35ed72d8bb145ad6bae786af7284447386df"},
        {63, "9b49777003a4143d8c3f4d3002eb631c6bda8b030a3ccc87f8a21d5f61c89e87"},
        {64, "ee8e658590c9a5e119400a774415a01db104de1ee6e2c29ec69aa73ef46544d2"},
        {65, "2b6c3f7f12b1b12fc5409626dc4e5302d8d37082cbeddea7755eac43aba039c8"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char text[66] = {0};
        memset(text, 'q', rows[i].n);
        same(text, rows[i].expected);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_examples), cmocka_unit_test(a_million_times_a),
        cmocka_unit_test(nothing_at_all), cmocka_unit_test(lengths_round_the_padding)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
