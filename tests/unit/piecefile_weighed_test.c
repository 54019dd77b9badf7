/* What is said when weighings cannot be, stand twice, or are of another size. Weights by hand: a
 * post of C87300 (8359 kg/m3), 100 mm round, wall 5 mm, nothing for texture or ribs: 0.5 m weigh
 * pi (0.1 x 0.005 - 0.005^2) 0.5 x 8359 = 6.237 kg, full of bronze pi 0.05^2 0.5 x 8359 = 32.83 kg;
 * a wax of 930 kg/m3 makes 8.988 times its weight. */
#include "base/diags.h"
#include "piece/works.h"
#include "pieces.h"

#define HEAD "piece: P\nunits: mm\n"
#define BODY                                                                                       \
    "bronze: {alloy: C87300, wall: {is: 5, low: 5, high: 5}, surface: 1, extra: 0}\n"              \
    "limbs: {post: [[foot, 0, 0, 0, 100, 100], [knee, 0, 0, 500, 100, 100],\n"                     \
    "  [head, 0, 0, 1500, 100, 100]], peg: [[head], [tip, 0, 0, 1600, 40, 40]]}\n"                 \
    "lumps: [{name: hat, at: head, mass: {is: 2 kg, because: weighed}}]\n"                         \
    "stands: [{at: foot, held: fixed}]\n"
#define POST(rest) HEAD BODY rest
enum { LINE = 8 }; /* where the rest begins */

typedef struct {
    tt_status status;
    tt_diags *diags;
} outcome;

static outcome read_with(const char *text, const tt_changes *changes)
{
    outcome o = {TT_OK, tt_diags_new(0)};
    tt_piece *piece = NULL;
    o.status = tt_piece_read("p.yaml", text, strlen(text), changes, o.diags, &piece);
    tt_piece_free(piece);
    return o;
}

/* One diagnostic, with this in its words or hint; NULL: none at all. */
static void expect(outcome o, unsigned number, tt_severity severity, unsigned line, const char *has)
{
    const size_t n = tt_diags_count(o.diags);
    if (n != (number ? 1 : 0)) tt_test_print(o.diags);
    assert_int_equal(n, number ? 1 : 0);
    assert_int_equal(o.status, number && severity == TT_ERROR ? TT_E_INPUT : TT_OK);
    if (number) {
        const tt_diag *diag = tt_diags_at(o.diags, 0);
        assert_int_equal(diag->number, number);
        assert_int_equal(diag->severity, severity);
        assert_int_equal(diag->place.line, line);
        if (!strstr(diag->text, has) && !(diag->hint && strstr(diag->hint, has))) {
            tt_test_print(o.diags);
            fail_msg("it does not say: %s", has);
        }
    }
    tt_diags_free(o.diags);
}

static void error(const char *text, unsigned number, unsigned line, const char *has)
{
    expect(read_with(text, NULL), number, TT_ERROR, line, has);
}

static void warning(const char *text, unsigned number, unsigned line, const char *has)
{
    expect(read_with(text, NULL), number, TT_WARNING, line, has);
}

static void silent(const char *text, const tt_changes *changes)
{
    expect(read_with(text, changes), 0, TT_WARNING, 0, NULL);
}

/* Over 1.15 x 32.83 = 37.75 kg; over 32.83 kg; over five times 6.237 kg; under a fifth of it. */
static void far_off(void **state)
{
    (void)state;
    error(POST("weighed: [{segment: foot-knee, bronze: 38 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
          "32.83 kg");
    warning(POST("weighed: [{segment: foot-knee, bronze: 37 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
            "was it kg, not grams?");
    warning(POST("weighed: [{segment: foot-knee, bronze: 31.3 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
            "6.237 kg");
    silent(POST("weighed: [{segment: foot-knee, bronze: 31 kg}]\n"), NULL);
    warning(POST("weighed: [{segment: foot-knee, bronze: 1.2 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
            "not the wax's?");
    silent(POST("weighed: [{segment: foot-knee, bronze: 1.3 kg}]\n"), NULL);
    error(POST("weighed: [{segment: foot-knee, wax: 6.2 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
          "makes 55.73 kg of bronze");
    warning(POST("weighed: [{segment: foot-knee, wax: 0.1 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
            "0.8988 kg of bronze");
}

/* Two of 12 kg and 6 kg, known to 3 %: with the hat 19.46 kg at the least, by themselves 20 kg. */
static void whole(void **state)
{
    (void)state;
    error(
        POST("weighed:\n  - {segment: knee-head, bronze: 12 kg}\n  - {segment: foot-knee, bronze: "
             "6 kg}\n  - {whole: yes, bronze: 19.4 kg}\n"),
        TT_D_WEIGHED, LINE + 3, "alone 20 kg");
    silent(
        POST("weighed:\n  - {segment: knee-head, bronze: 12 kg}\n  - {segment: foot-knee, bronze: "
             "6 kg}\n  - {whole: yes, bronze: 19.5 kg}\n"),
        NULL);
    error(POST("weighed: [{whole: yes, bronze: 2 kg}]\n"), TT_D_WEIGHED, LINE, "lumps alone 2 kg");
    error(POST("weighed: [{whole: yes, bronze: 204 kg}]\n"), TT_D_WEIGHED_FAR, LINE,
          "was all of it on the hook");
}

#define TWO(first, second)                                                                         \
    POST("weighed:\n  - {segment: foot-knee, " first "}\n  - {segment: foot-knee, " second "}\n")

static void twice(void **state)
{
    (void)state;
    warning(TWO("bronze: 7 kg", "bronze: 6500 gram"), TT_D_WEIGHED_TWICE, LINE + 2,
            "foot-knee was weighed twice (7 kg, 6500 gram); the last in the file is taken");
    warning(TWO("wax: 0.7 kg", "wax: 0.7 kg"), TT_D_WEIGHED_TWICE, LINE + 2, "twice in wax");
    warning(TWO("bronze: 7 kg, day: 2026-05-02", "bronze: 6 kg, day: 2026-05-01"),
            TT_D_WEIGHED_TWICE, LINE + 2, "(7 kg, 6 kg)");
    warning(TWO("bronze: 7 kg, day: 2026-05-02", "bronze: 7 kg, day: 2026-05-02"),
            TT_D_WEIGHED_TWICE, LINE + 2, "(7 kg, 7 kg)");
    silent(TWO("bronze: 7 kg, day: 2025-12-31", "bronze: 6 kg, day: 2026-01-01"), NULL);
    silent(TWO("bronze: 7 kg", "bronze: 6 kg, day: 2026-01-01"), NULL);
    silent(TWO("wax: 0.7 kg", "bronze: 6 kg"), NULL);
}

static void names(void **state)
{
    (void)state;
    error(POST("weighed: [{segment: post, bronze: 6 kg}]\n"), TT_D_NAME_UNKNOWN, LINE,
          "panels: {post: [foot-knee, knee-head]} makes a part of it: panel: post");
    error(POST("weighed: [{panel: post, bronze: 6 kg}]\n"), TT_D_NAME_UNKNOWN, LINE,
          "panels: {post: [foot-knee, knee-head]}");
    error(POST("weighed: [{segment: peg, bronze: 6 kg}]\n"), TT_D_NAME_UNKNOWN, LINE,
          "segment: head-tip is all of it");
    error(POST("weighed: [{segment: hat, bronze: 6 kg}]\n"), TT_D_NAME_UNKNOWN, LINE,
          "a lump's weight goes into its `mass`");
    silent(
        POST("panels: {post: [foot-knee, knee-head]}\nweighed: [{panel: post, bronze: 18 kg}]\n"),
        NULL);
}

/* Half the size on paper, and a wanted size that is not a whole multiple: what was weighed holds
 * for the size that the file says, another one is refused. */
#define SCALED(scale)                                                                              \
    "piece: P\nunits: mm\nscale: " scale "\nbronze: {alloy: C87300, wall: 5}\n"                    \
    "limbs: {post: [[foot, 0, 0, 0, 50, 50], [knee, 0, 0, 250, 50, 50]]}\n"                        \
    "stands: [{at: foot, held: fixed}]\nweighed: [{segment: foot-knee, bronze: 8 kg}]\n"

static void refused(const char *text, const char *scale, const char *set, const char *has)
{
    const tt_changes changes = {.scale = scale, .set = &set, .sets = set ? 1 : 0};
    expect(read_with(text, &changes), TT_D_CONTRADICTION, TT_ERROR, 7, has);
}

static void sizes(void **state)
{
    (void)state;
    static const char wanted[] = SCALED("{measured: 550, wanted: 2 m}");
    const char *const none[] = {"scale=4", "weighed=[]"};
    silent(SCALED("2"), NULL);
    silent(SCALED("2"), &(tt_changes){.scale = "2"});
    silent(wanted, NULL);
    silent(wanted, &(tt_changes){.scale = "3.64"});
    refused(wanted, "3.5", NULL, "the file's own scale, 3.64");
    refused(SCALED("2"), "1", NULL, "the file's own scale, 2");
    refused(SCALED("1"), "2", NULL, "the file's own scale, 1");
    refused(SCALED("2"), NULL, "scale=4", "which --set changes");
    refused(wanted, NULL, "scale/wanted=3 m", "which --set changes");
    silent(SCALED("2"), &(tt_changes){.set = none, .sets = 2});
    silent(SCALED("2"), &(tt_changes){.set = none + 1, .sets = 1, .scale = "3"});
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(far_off), cmocka_unit_test(whole),
                                       cmocka_unit_test(twice), cmocka_unit_test(names),
                                       cmocka_unit_test(sizes)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
