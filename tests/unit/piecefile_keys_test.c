/* The key table itself, and the defaults that reading puts in. */
#include "piecefile/keys.h"
#include "pieces.h"

static const tt_map *const maps[] = {
    &tt_root_map,        &tt_scale_map,       &tt_units_map,         &tt_material_map,
    &tt_bronze_map,      &tt_armature_map,    &tt_limb_map,          &tt_segment_map,
    &tt_outline_map,     &tt_member_map,      &tt_drag_map,          &tt_lump_map,
    &tt_stand_map,       &tt_site_map,        &tt_wind_map,          &tt_load_map,
    &tt_combination_map, &tt_limits_map,      &tt_rack_map,          &tt_seam_map,
    &tt_splice_map,      &tt_splice_weld_map, &tt_splice_socket_map, &tt_splice_flange_map,
    &tt_splice_lug_map,  &tt_tie_map,         &tt_tie_weld_map,      &tt_hole_map,
    &tt_base_map,        &tt_plate_map,       &tt_anchors_map,       &tt_tested_map,
    &tt_concrete_map,    &tt_pedestal_map,    &tt_footing_map,       &tt_soil_map,
    &tt_weighing_map,    &tt_hang_map,        &tt_numbers_map};
enum { MAPS = sizeof maps / sizeof *maps };

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
    if (key->kind == TT_KEY_UNREAD) return;
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
    for (size_t m = 0; m < MAPS; m++)
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
    if (key->kind == TT_KEY_UNREAD) return false;
    const char *value = value_of(key);
    if (strpbrk(value, "[{")) return false;
    if (key->kind == TT_KEY_WORD || (key->kind == TT_KEY_OWN && key->words))
        assert_true(one_of(key->words, value));
    else if (key->kind == TT_KEY_FLAG)
        assert_true(one_of(yes_no, value));
    else if (key->kind == TT_KEY_COUNT || key->least < key->most)
        check_quantity(key, value);
    else
        return false;
    return true;
}

static void every_example_is_accepted(void **state)
{
    (void)state;
    size_t n = 0;
    for (size_t m = 0; m < MAPS; m++)
        for (const tt_map *map = maps[m]; map; map = map->also)
            for (size_t i = 0; i < map->n; i++) n += example_fits(&map->key[i]);
    assert_true(n > 50);
    check_quantity(&tt_set_scale, tt_set_scale.example + strlen("--scale "));
}

/* A key that is read stands in one of the files that use each. */
static void every_key_is_used(void **state)
{
    (void)state;
    static const char *const names[] = {"every-key-read", "every-key-read-us", "works", "works-us"};
    enum { FILES = sizeof names / sizeof *names };
    char *text[FILES];
    for (size_t f = 0; f < FILES; f++) {
        char path[80];
        snprintf(path, sizeof path, "tests/pieces/%s.yaml", names[f]);
        text[f] = tt_test_text(path);
    }
    for (size_t m = 0; m < MAPS; m++)
        for (const tt_map *map = maps[m]; map; map = map->also)
            for (size_t i = 0; i < map->n; i++) {
                char word[80];
                bool used = map->key[i].kind == TT_KEY_UNREAD;
                snprintf(word, sizeof word, "%.70s:", map->key[i].name);
                for (size_t f = 0; f < FILES; f++) used = used || strstr(text[f], word);
                if (!used) fail_msg("%s is in no file", word);
            }
    for (size_t f = 0; f < FILES; f++) free(text[f]);
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
                                     NULL};
    tt_piece *piece = tt_test_piece("tests/pieces/heron.yaml", NULL);
    check_defaults(piece, eu);
    assert_near(piece->site.damping.is, 0.02, 1e-15);
    assert_near(piece->site.wind.air.is, 1.25, 1e-15);
    assert_near(piece->site.base_height.is, 0, 0);
    assert_true(piece->site.open_to_public && !piece->site.indoors);
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

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(rows),
                                       cmocka_unit_test(every_example_is_accepted),
                                       cmocka_unit_test(every_key_is_used),
                                       cmocka_unit_test(defaults),
                                       cmocka_unit_test(rust),
                                       cmocka_unit_test(bare)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
