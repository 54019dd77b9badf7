/* tests/laws_test.c - laws of the house that the registers, the tables and the results must keep:
 * every check and basis is whole, what is said twice agrees, every result of the program carries
 * the cautions and keeps to our words. */
#include "assess/assessment.h"
#include "check/check.h"
#include "compose/explain.h"
#include "compose/start.h"
#include "piecefile/keys.h"
#include "run_piece.h"

#include <ctype.h>
#include <glob.h>
#include <strings.h>
#include <sys/wait.h>

/* Fails with words of what and which. */
static void law(bool kept, const char *words, const char *which)
{
    if (!kept) fail_msg("%s: %s", which, words);
}

static bool said(const char *text)
{
    return text && text[0];
}

/* ---- checks ---- */

static const char *const check_ids[] = {
#define TT_CHECK(id) #id,
#include "check/checks.def"
#undef TT_CHECK
};
enum { CHECKS = sizeof check_ids / sizeof *check_ids };

static void check_is_whole(const tt_check *check, const char *id)
{
    char name[64], path[1024];
    snprintf(name, sizeof name, "%s", id);
    char *stroke = strchr(name, '_');
    if (stroke) *stroke = '.';
    assert_string_equal(check->name, name);
    snprintf(path, sizeof path, "%s/src/check/checks/%s.c", TT_ROOT, id);
    FILE *file = fopen(path, "r");
    law(file != NULL, "has no file of its name", id);
    if (file) fclose(file);
    law(said(check->title), "has no title", id);
    law(said(check->explain) && strlen(check->explain) > 60, "has no explanation to speak of", id);
    law(check->run != NULL, "does nothing", id);
    law((size_t)check->source < TT_S_COUNT, "has no source", id);
    law(said(tt_source_of(check->source)->document), "has a source without a document", id);
}

/* Every check stands on the page of the manual on results. */
static void checks_are_in_the_manual(void **state)
{
    (void)state;
    run_text page = run_file(TT_ROOT "/docs/results.md");
    assert_true(page.n > 0);
    for (size_t i = 0; i < CHECKS; i++) {
        char row[80];
        snprintf(row, sizeof row, "| `%s` |", tt_checks_at(i)->name);
        law(strstr(page.at, row) != NULL, "is on no page of the manual", check_ids[i]);
    }
    free(page.at);
}

static void checks_are_whole(void **state)
{
    (void)state;
    assert_int_equal(tt_checks_count(), CHECKS);
    assert_true(CHECKS >= 7);
    for (size_t i = 0; i < CHECKS; i++) {
        check_is_whole(tt_checks_at(i), check_ids[i]);
        for (size_t k = 0; k < i; k++)
            assert_string_not_equal(tt_checks_at(i)->name, tt_checks_at(k)->name);
    }
}

/* Is "check=NAME]" or "check=NAME," in one of the files? */
static bool mentioned(const glob_t *files, const char *name)
{
    char words[2][80];
    bool found = false;
    snprintf(words[0], sizeof words[0], "check=%s]", name);
    snprintf(words[1], sizeof words[1], "check=%s,", name);
    for (size_t i = 0; i < files->gl_pathc && !found; i++) {
        run_text text = run_file(files->gl_pathv[i]);
        found = text.n > 0 && (strstr(text.at, words[0]) || strstr(text.at, words[1]));
        free(text.at);
    }
    return found;
}

static void checks_have_a_reference(void **state)
{
    (void)state;
    glob_t files;
    assert_int_equal(glob(TT_ROOT "/tests/cases/piece/*.case", 0, NULL, &files), 0);
    assert_int_equal(glob(TT_ROOT "/tests/*_test.c", GLOB_APPEND, NULL, &files), 0);
    law(!mentioned(&files, "no."
                           "such"),
        "is mentioned", "a check that is not there");
    for (size_t i = 0; i < tt_checks_count(); i++) {
        const char *name = tt_checks_at(i)->name;
        law(mentioned(&files, name), "no case expects anything of it", name);
    }
    globfree(&files);
}

/* A stand that rests is not read yet: so far the check of balance says why it does not apply. */
static void balance_says_why_it_does_not_apply(void **state)
{
    (void)state;
    run_text text = run_file(TT_ROOT "/tests/pieces/reference/balance.yaml");
    cJSON *tree = run_piece("balance.yaml", text.at, NULL);
    const cJSON *why = run_find(tree, "not_applicable[check=balance]/why", NULL);
    assert_true(cJSON_IsString(why));
    assert_non_null(strstr(why->valuestring, "holds the piece down"));
    assert_null(run_find(tree, "checks[check=balance]", NULL));
    cJSON_Delete(tree);
    free(text.at);
}

/* ---- bases ---- */

enum { MOST_RULES = 64 };

static void rules_are_whole(const tt_basis *basis, int risk)
{
    static const tt_level must[] = {TT_STRENGTH, TT_EQUILIBRIUM, TT_SERVICE, TT_ACCIDENTAL};
    tt_rule rules[MOST_RULES];
    bool has[TT_LEVELS] = {false};
    const size_t n = basis->rules(risk, rules, MOST_RULES);
    assert_in_range(n, 1, MOST_RULES - 1);
    for (size_t i = 0; i < n; i++) {
        law(said(rules[i].name), "has a rule without a name", basis->id);
        law(said(rules[i].source.document) && said(rules[i].source.place), "has no source",
            rules[i].name);
        law((unsigned)rules[i].level < TT_LEVELS, "is of no level", rules[i].name);
        law(rules[i].weight > 0.0, "leaves out the weight", rules[i].name);
        has[rules[i].level] = true;
    }
    for (size_t i = 0; i < sizeof must / sizeof *must; i++)
        law(has[must[i]], tt_level_word(must[i]), "no rule for the level");
    law(has[TT_ALLOWABLE] == (strcmp(basis->id, "us") == 0), "allowable loads are those of us",
        basis->id);
}

static void bases_are_whole(void **state)
{
    (void)state;
    assert_true(tt_basis_count() >= 2);
    for (size_t i = 0; i < tt_basis_count(); i++) {
        const tt_basis *basis = tt_basis_at(i);
        assert_ptr_equal(tt_basis_named(basis->id), basis); /* no id twice */
        law(said(basis->title), "has no title", basis->id);
        law(said(basis->editions[0]), "has no edition", basis->id);
        law(basis->pressure && basis->gust && basis->drag, "lacks a function of the wind",
            basis->id);
        law(basis->steel_strength && basis->rules, "lacks strength or rules", basis->id);
        law(basis->least_pressure >= 0.0 && said(basis->least_pressure_source.document),
            "has no source for its least pressure", basis->id);
        for (int risk = 1; risk <= 4; risk++) rules_are_whole(basis, risk);
    }
}

/* ---- what is said twice ---- */

static void editions_agree(void **state)
{
    (void)state;
    for (int us = 0; us < 2; us++) {
        const tt_basis *basis = tt_basis_named(us ? "us" : "eu");
        const char *const *words = tt_editions(us);
        assert_non_null(basis);
        assert_non_null(words[0]);
        size_t n = 0;
        for (; words[n] && basis && basis->editions[n]; n++)
            assert_string_equal(words[n], basis->editions[n]);
        law(basis && !words[n] && !basis->editions[n], "the editions are not as many",
            us ? "us" : "eu");
    }
}

static void levels_agree(void **state)
{
    (void)state;
    const tt_key *level = tt_key_named(&tt_combination_map, "level");
    assert_non_null(level);
    size_t n = 0;
    for (; level && level->words[n]; n++)
        assert_string_equal(level->words[n], tt_level_word((tt_level)n));
    assert_int_equal(n, TT_LEVELS);
}

/* ---- results of the program ---- */

/* What a command prints; its exit status. */
static run_text output_of(const char *piece, const char *options, int *status)
{
    char command[2048], part[4096];
    run_text text = {0};
    snprintf(command, sizeof command, "cd '%s' && '%s' %s '%s' 2>&1", TT_ROOT, TT_PROGRAM, options,
             piece);
    FILE *in = popen(command, "r"); // NOLINT(cert-env33-c): the program is what is tested
    assert_non_null(in);
    for (size_t n = 1; in && n > 0;) {
        n = fread(part, 1, sizeof part, in);
        assert_int_equal(run_take(&text, part, n), 0);
    }
    const int end = in ? pclose(in) : -1;
    *status = WIFEXITED(end) ? WEXITSTATUS(end) : -1;
    return text;
}

/* Every run of blanks becomes one, so that line breaks do not matter. */
static void one_blank(run_text *text)
{
    size_t n = 0;
    for (size_t i = 0; i < text->n; i++) {
        const bool blank = isspace((unsigned char)text->at[i]) != 0;
        if (!blank || (n && text->at[n - 1] != ' ')) text->at[n++] = blank ? ' ' : text->at[i];
    }
    text->at[n] = '\0';
    text->n = n;
}

static bool is_letter(char c)
{
    return isalnum((unsigned char)c) || c == '_';
}

/* Is the word of n letters one that no result says, however it is written? */
static bool unwanted(const char *word, size_t n)
{
    static const char *const never[] = {"safe",   "unsafe", "safely",   "pass",     "passes",
                                        "passed", "fail",   "fails",    "failed",   "failing",
                                        "ok",     "okay",   "approved", "approves", "certified"};
    for (size_t i = 0; i < sizeof never / sizeof *never; i++) {
        if (strlen(never[i]) == n && strncasecmp(never[i], word, n) == 0) return true;
    }
    return false;
}

static void keeps_to_our_words(const run_text *text, const char *piece)
{
    for (size_t i = 0, n; i < text->n; i += n + 1) {
        for (n = 0; i + n < text->n && is_letter(text->at[i + n]);) n++;
        if (unwanted(text->at + i, n))
            fail_msg("the result of %s says `%.*s`", piece, (int)n, text->at + i);
    }
}

static void text_carries_the_cautions(run_text *text, const char *piece)
{
    one_blank(text);
    keeps_to_our_words(text, piece);
    for (const char *const *caution = tt_cautions(); *caution; caution++)
        law(strstr(text->at, *caution) != NULL, *caution, piece);
}

static void json_carries_the_cautions(const run_text *text, const char *piece)
{
    int n = 0;
    cJSON *tree = cJSON_Parse(text->at);
    law(tree != NULL, "gives no JSON", piece);
    keeps_to_our_words(text, piece);
    const cJSON *cautions = cJSON_GetObjectItemCaseSensitive(tree, "cautions");
    for (const char *const *caution = tt_cautions(); *caution; caution++, n++) {
        const cJSON *item = cJSON_GetArrayItem(cautions, n);
        law(cJSON_IsString(item) && strcmp(item->valuestring, *caution) == 0, *caution, piece);
    }
    assert_int_equal(cJSON_GetArraySize(cautions), n);
    cJSON_Delete(tree);
}

/* Text with lines of calculation and messages, and JSON, of one run. */
static void result_carries_the_cautions(const char *piece)
{
    int status;
    remove(TT_SCRATCH);
    run_text text = output_of(piece, "check --steps --text - --json '" TT_SCRATCH "'", &status);
    law(text.n > 0 && (status == 0 || status == 1 || status == 4), "gives no result", piece);
    text_carries_the_cautions(&text, piece);
    free(text.at);
    text = run_file(TT_SCRATCH);
    law(text.n > 0, "gives no JSON", piece);
    json_carries_the_cautions(&text, piece);
    free(text.at);
}

static void results_carry_the_cautions(void **state)
{
    (void)state;
    glob_t pieces;
    size_t n = 0;
    while (tt_cautions()[n]) n++;
    assert_true(n >= 19);
    assert_int_equal(glob(TT_ROOT "/examples/*.yaml", 0, NULL, &pieces), 0);
    assert_true(pieces.gl_pathc >= 2);
    assert_int_equal(glob(TT_ROOT "/tests/pieces/*.yaml", GLOB_APPEND, NULL, &pieces), 0);
    assert_int_equal(glob(TT_ROOT "/tests/pieces/reference/*.yaml", GLOB_APPEND, NULL, &pieces), 0);
    assert_true(pieces.gl_pathc >= 25);
    for (size_t i = 0; i < pieces.gl_pathc; i++) {
        const char *piece = pieces.gl_pathv[i] + strlen(TT_ROOT) + 1; /* the name in the result */
        result_carries_the_cautions(piece);
    }
    globfree(&pieces);
}

static void other_words_of_the_program(void **state)
{
    (void)state;
    static const char *const commands[][2] = {{"--help", "check"}, {"stock", "alloys"},
                                              {"stock", "steels"}, {"stock", "tubes"},
                                              {"stock", "bars"},   {"check", "no such file"}};
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++) {
        int status;
        run_text text = output_of(commands[i][1], commands[i][0], &status);
        assert_true(text.n > 40);
        keeps_to_our_words(&text, commands[i][1]);
        free(text.at);
    }
}

static void explanations_keep_to_our_words(void **state)
{
    (void)state;
    tt_words all = {0};
    tt_diags *diags = tt_diags_new(0);
    run_text text = {0};
    assert_non_null(diags);
    assert_true(tt_explain_words(&all) && all.n > 100);
    for (size_t i = 0; i < all.n; i++)
        assert_int_equal(tt_write_explain(all.at[i], diags, run_take, &text), TT_OK);
    for (size_t i = 0; tt_starts[i].name; i++) {
        const tt_start_options options = {.what = tt_starts[i].name};
        assert_int_equal(tt_write_start(&options, diags, run_take, &text), TT_OK);
    }
    keeps_to_our_words(&text, "explain and new");
    tt_diags_free(diags);
    tt_list_clear(&all);
    free(text.at);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(checks_are_whole),
                                       cmocka_unit_test(checks_are_in_the_manual),
                                       cmocka_unit_test(checks_have_a_reference),
                                       cmocka_unit_test(balance_says_why_it_does_not_apply),
                                       cmocka_unit_test(bases_are_whole),
                                       cmocka_unit_test(editions_agree),
                                       cmocka_unit_test(levels_agree),
                                       cmocka_unit_test(results_carry_the_cautions),
                                       cmocka_unit_test(other_words_of_the_program),
                                       cmocka_unit_test(explanations_keep_to_our_words)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
