/* The key table itself, and the defaults that reading puts in. */
#include "piecefile/keys.h"
#include "pieces.h"

enum { MOST_MAPS = 60 };
static const tt_map *maps[MOST_MAPS];
static size_t map_count;

/* All maps that the keys of the piece lead to, each once. */
static void gather(const tt_map *map)
{
    for (size_t m = 0; m < map_count; m++)
        if (maps[m] == map) return;
    assert_true(map_count < MOST_MAPS);
    maps[map_count++] = map;
    for (const tt_map *part = map; part; part = part->also)
        for (size_t i = 0; i < part->n; i++)
            if (part->key[i].map) gather(part->key[i].map);
}

static int gather_all(void **state)
{
    (void)state;
    gather(&tt_root_map);
    return map_count < 18;
}

static bool begins_with(const char *text, const char *start)
{
    return strncmp(text, start, strlen(start)) == 0;
}

static void check_row(const tt_key *key)
{
    static const char *const truths[] = {"on", "off", "y", "n", "yes", "no", "true", "false"};
    for (size_t i = 0; i < sizeof truths / sizeof *truths; i++)
        assert_string_not_equal(key->name, truths[i]); /* no key is a truth value of YAML 1.1 */
    assert_true(key->doc && key->doc[0]);
    assert_true(begins_with(key->example, key->name));
    assert_int_equal(key->example[strlen(key->name)], ':');
    if (key->otherwise) assert_true(key->why && key->why[0]);
    if (key->kind == TT_KEY_GIVEN || key->kind == TT_KEY_SPREAD || key->kind == TT_KEY_NUMBER ||
        key->kind == TT_KEY_COUNT)
        assert_true(key->least < key->most);
    if (key->kind == TT_KEY_LIST || key->kind == TT_KEY_NAMES) assert_true(key->read != NULL);
    if (key->kind == TT_KEY_WORD) assert_true(key->words && key->words[0]);
}

static void rows(void **state)
{
    (void)state;
    size_t n = 0;
    for (size_t m = 0; m < map_count; m++)
        for (const tt_map *map = maps[m]; map; map = map->also)
            for (size_t i = 0; i < map->n; i++, n++) {
                check_row(&map->key[i]);
                /* the first row of a name is this one: no name twice in a map and its shares */
                assert_ptr_equal(tt_key_named(maps[m], map->key[i].name), &map->key[i]);
            }
    assert_true(n > 100);
}

/* The words behind `name: ` of the example. */
static const char *value_of(const tt_key *key)
{
    return key->example + strlen(key->name) + 2;
}

static bool one_of(const char *const *words, const char *word)
{
    while (*words && strcmp(*words, word) != 0) words++;
    return *words != NULL;
}

static void check_quantity(const tt_key *key, const char *text)
{
    const tt_quantity q = tt_quantity_read(text, key->dimension, 0);
    if (q.fault != TT_QUANTITY_OK || q.value < key->least || q.value > key->most)
        fail_msg("%s: the example is not what its own row reads", key->example);
}

/* True when the example is a scalar that was held against its row. */
static bool example_fits(const tt_key *key)
{
    static const char *const yes_no[] = {"yes", "no", NULL};
    const char *value = value_of(key);
    const bool measured = key->least < key->most;
    if (strpbrk(value, "[{")) return false;
    if (key->kind == TT_KEY_WORD || (key->kind == TT_KEY_OWN && key->words && !measured))
        assert_true(one_of(key->words, value));
    else if (key->kind == TT_KEY_FLAG)
        assert_true(one_of(yes_no, value));
    else if (key->kind == TT_KEY_COUNT || measured)
        check_quantity(key, value);
    else
        return false;
    return true;
}

static void every_example_is_accepted(void **state)
{
    (void)state;
    size_t n = 0;
    for (size_t m = 0; m < map_count; m++)
        for (const tt_map *map = maps[m]; map; map = map->also)
            for (size_t i = 0; i < map->n; i++) n += example_fits(&map->key[i]);
    assert_true(n > 50);
    check_quantity(&tt_set_scale, tt_set_scale.example + strlen("--scale "));
}

static const char *const files[] = {"tests/pieces/every-key.yaml", "tests/pieces/every-key-us.yaml",
                                    "tests/pieces/ground-eu.yaml", "tests/pieces/ground-us.yaml",
                                    "tests/pieces/works.yaml",     "tests/pieces/works-us.yaml"};
enum { FILES = sizeof files / sizeof *files };

static bool in_files(char *const text[FILES], const char *name)
{
    char word[80];
    snprintf(word, sizeof word, "%.70s:", name);
    for (size_t i = 0; i < FILES; i++)
        if (strstr(text[i], word)) return true;
    return false;
}

/* A key that is read stands in one of the files that use each; all of them are read. */
static void every_key_is_used(void **state)
{
    (void)state;
    char *text[FILES];
    for (size_t i = 0; i < FILES; i++) {
        text[i] = tt_test_text(files[i]);
        tt_piece_free(tt_test_piece(files[i], NULL));
    }
    for (size_t m = 0; m < map_count; m++)
        for (const tt_map *map = maps[m]; map; map = map->also)
            for (size_t i = 0; i < map->n; i++)
                if (!in_files(text, map->key[i].name))
                    fail_msg("%s is in no file", map->key[i].name);
    for (size_t i = 0; i < FILES; i++) free(text[i]);
}

static void check_defaults(const tt_piece *piece, const char *const *keys)
{
    size_t at = 0;
    for (size_t i = 1; i < piece->origins.n; i++) {
        const tt_origin *origin = &piece->origins.at[i];
        if (origin->kind != TT_ORIGIN_DEFAULT) continue;
        assert_non_null(keys[at]);
        assert_string_equal(origin->key, keys[at++]);
        assert_true(origin->written && origin->written[0]);
        assert_true(origin->why && origin->why[0]);
        assert_int_equal(origin->place.line, 0);
    }
    assert_null(keys[at]);
}

/* Each once, the one of the hill first. */
static void defaults(void **state)
{
    (void)state;
    static const char *const eu[] = {"site/wind/orography",
                                     "site/wind/direction_factor",
                                     "site/wind/season_factor",
                                     "site/wind/air",
                                     "site/base_height",
                                     "site/damping",
                                     "site/indoors",
                                     "site/public",
                                     "bronze/wall",
                                     "lumps/drag",
                                     "limits/use",
                                     "basis",
                                     "edition",
                                     "risk",
                                     "faces",
                                     "scale",
                                     "bronze/surface",
                                     "bronze/extra",
                                     "bronze/casting_quality",
                                     "armature/loss",
                                     "armature/wall_factor",
                                     "bronze/inspection",
                                     "seams",
                                     "site/people/climb",
                                     "site/people/push",
                                     "site/people/reach",
                                     "site/people/count",
                                     "site/heat/bronze",
                                     "site/heat/armature",
                                     "site/heat/cold/bronze",
                                     "site/heat/cold/armature",
                                     NULL};
    tt_piece *piece = tt_test_piece("tests/pieces/heron.yaml", NULL);
    check_defaults(piece, eu);
    assert_near(piece->site.damping.is, 0.02, 1e-15);
    assert_near(piece->site.wind.air.is, 1.25, 1e-15);
    assert_near(piece->site.base_height.is, 0, 0);
    assert_true(piece->site.open_to_public && !piece->site.indoors);
    assert_near(piece->site.people.climb.is, 1000, 1e-9);
    assert_near(piece->site.people.push.is, 500, 1e-9);
    assert_near(piece->site.people.reach.is, 2.5, 1e-12);
    assert_int_equal(piece->site.people.count, 1);
    assert_near(piece->site.heat.bronze[0].is, 35, 1e-12);
    assert_near(piece->site.heat.bronze[1].is, -30, 1e-12);
    assert_near(piece->site.heat.armature[0].is, 15, 1e-12);
    assert_near(piece->site.heat.armature[1].is, -15, 1e-12);
    const tt_segment *s = tt_test_segment(piece, "hock-body");
    assert_near(s->surface.is, 1.15, 1e-15);
    assert_near(s->extra.is, 0.1, 1e-15);
    assert_near(s->casting_quality.is, 0, 0); /* by its rule: the check decides */
    assert_near(s->neck_quality, 0, 0);
    assert_int_equal(piece->origins.at[s->casting_quality.origin].kind, TT_ORIGIN_DEFAULT);
    assert_near(s->wall.low, 0.8 * s->wall.is, 1e-15);
    assert_near(s->wall.high, 1.25 * s->wall.is, 1e-15);
    assert_int_equal(piece->origins.at[piece->basis_origin].kind, TT_ORIGIN_DEFAULT);
    assert_string_equal(piece->edition, "EN 1990:2002");
    assert_near(piece->limits.use.is, 1, 0);
    assert_false(piece->limits.has_mass);
    tt_piece_free(piece);
}

#define LEG(head)                                                                                  \
    "piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n" head                                 \
    "limbs:\n  leg:\n    rows: [[toe, 0, 0, 0, 150], [hip, 0, 0, 620, 200]]\n"                     \
    "    armature: {tube: [33.7, 4]}\nstands: [{at: toe, held: fixed}]\n"

static void loss(const char *text, double expected)
{
    tt_piece *piece = tt_test_piece_of(text, NULL);
    const tt_member *member = &tt_test_segment(piece, "toe-hip")->armature;
    assert_near(member->loss, expected, 1e-15);
    tt_piece_free(piece);
}

/* Decision: carbon steel outdoors loses 1 mm, stainless steel and what stands indoors nothing. */
static void rust(void **state)
{
    (void)state;
    loss(LEG("armature: {grade: S355}\n"), 0.001);
    loss(LEG("armature: {grade: S355}\nsite: {indoors: yes}\n"), 0);
    loss(LEG("armature: {grade: \"1.4462\"}\n"), 0);
    loss(LEG("armature: {grade: S355, sealed: yes, loss: {is: 0, because: \"filled\"}}\n"), 0);
}

/* No bronze: no alloy, no wall, and none of their defaults. */
static void bare(void **state)
{
    (void)state;
    static const char *const keys[] = {"site/base_height",
                                       "site/damping",
                                       "site/indoors",
                                       "site/public",
                                       "limits/use",
                                       "basis",
                                       "edition",
                                       "risk",
                                       "faces",
                                       "scale",
                                       "armature/loss",
                                       "armature/wall_factor",
                                       "site/people/climb",
                                       "site/people/push",
                                       "site/people/reach",
                                       "site/people/count",
                                       "site/heat/bronze",
                                       "site/heat/armature",
                                       "site/heat/cold/bronze",
                                       "site/heat/cold/armature",
                                       NULL};
    tt_piece *piece =
        tt_test_piece_of("piece: P\nunits: mm\narmature: {grade: \"1.4404\"}\n"
                         "limbs:\n  leg:\n    rows: [[toe, 0, 0, 0], [hip, 0, 0, 620]]\n"
                         "    armature: {bar: 20}\n"
                         "stands: [{at: toe, held: fixed}]\n"
                         "site: {wind: {is: none, because: \"a hall\"}}\n",
                         NULL);
    check_defaults(piece, keys);
    assert_true(piece->site.wind.ruled_out);
    assert_string_equal(piece->site.wind.none_because, "a hall");
    assert_int_equal(piece->segments.at[0].alloy, TT_NONE);
    tt_piece_free(piece);
}

static const tt_origin *origin_of(const tt_piece *piece, const char *key)
{
    for (size_t i = 1; i < piece->origins.n; i++)
        if (piece->origins.at[i].key && strcmp(piece->origins.at[i].key, key) == 0)
            return &piece->origins.at[i];
    return NULL;
}

/* A low piece is not climbed; indoors there is no sun; a heat of one's own is as cold as it is hot;
 * what is ruled out has no figures. */
static void defaults_of_the_site(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of("piece: P\nunits: mm\nbronze: {alloy: C87300, wall: 5}\n"
                                       "limbs: {leg: [[toe, 0, 0, 0, 50], [hip, 0, 0, 490, 50]]}\n"
                                       "stands: [{at: toe, held: fixed}]\n"
                                       "site: {indoors: yes}\n",
                                       NULL);
    assert_near(piece->site.people.climb.is, 0, 0);
    assert_string_equal(origin_of(piece, "site/people/climb")->written, "none");
    assert_null(origin_of(piece, "site/heat/bronze"));
    tt_piece_free(piece);
    piece = tt_test_piece_of(LEG("armature: {grade: \"1.4462\"}\nsite: {heat: {bronze: 40 K}, "
                                 "people: {is: none, because: \"on a "
                                 "locked roof\"}}\n"),
                             NULL);
    assert_near(piece->site.heat.bronze[0].is, 40, 1e-12);
    assert_near(piece->site.heat.bronze[1].is, -40, 1e-12);
    assert_near(piece->site.heat.armature[0].is, 15, 1e-12);
    assert_near(piece->site.heat.armature[1].is, -15, 1e-12);
    assert_true(piece->site.people.load.ruled_out);
    assert_null(origin_of(piece, "site/people/climb"));
    assert_string_equal(origin_of(piece, "site/people")->why, "on a locked roof");
    tt_piece_free(piece);
}

static const tt_waiting *waits(const tt_piece *piece, const char *check)
{
    for (size_t i = 0; i < piece->waiting.n; i++)
        if (strcmp(piece->waiting.at[i].check, check) == 0) return &piece->waiting.at[i];
    return NULL;
}

/* What is said and not used yet is kept by its key; what asks for nothing is not. */
static void what_waits(void **state)
{
    (void)state;
    tt_piece *piece = tt_test_piece_of(
        LEG("armature: {grade: \"1.4462\"}\nsite: {earthquake: none, ice: {thickness: 5 mm, wind: "
            "9 m/s}, snow: none, water: no}\n"),
        NULL);
    assert_null(waits(piece, "earthquake"));
    assert_null(waits(piece, "snow"));
    assert_null(waits(piece, "water"));
    assert_string_equal(waits(piece, "ice")->key, "site/ice");
    assert_string_equal(waits(piece, "ice")->where, "the whole piece");
    assert_true(waits(piece, "ice")->needed);
    assert_string_equal(waits(piece, "people")->key, "site/people");
    assert_string_equal(waits(piece, "heat")->key, "site/heat");
    assert_int_equal(piece->waiting.n, 3);
    tt_piece_free(piece);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows),
                                       cmocka_unit_test(every_example_is_accepted),
                                       cmocka_unit_test(every_key_is_used),
                                       cmocka_unit_test(defaults),
                                       cmocka_unit_test(rust),
                                       cmocka_unit_test(bare),
                                       cmocka_unit_test(defaults_of_the_site),
                                       cmocka_unit_test(what_waits)};
    return cmocka_run_group_tests(tests, gather_all, NULL);
}
