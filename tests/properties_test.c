/* tests/properties_test.c - what must not change when a piece is said in another way: a limb in
 * more segments, the piece turned, mirrored, measured at half size, its parts in another order, a
 * change made by --set; and how far the local axes of a nearly plumb limb may go. */
#include "figure.h"

#define PI 3.14159265358979323846

/* The figure told plainly, asked once. */
static cJSON *plainly;

static int tell_plainly(void **state)
{
    (void)state;
    plainly = result_of(&plain, NULL);
    return 0;
}

static int forget(void **state)
{
    (void)state;
    cJSON_Delete(plainly);
    plainly = NULL;
    return 0;
}

/* ---- comparing two results ---- */

typedef struct {
    const cJSON *a, *b; /* told plainly, told otherwise */
    const telling *told;
    double within; /* relative to the largest of what is compared together */
    int compared;
} pair;

static void close_to(pair *p, double a, double b, double size, double least, const char *what)
{
    p->compared++;
    if (fabs(a - b) <= p->within * fmax(size, least)) return;
    print_error("%s: %.10g told plainly, %.10g told otherwise\n", what, a, b);
    fail();
}

static void same_number(pair *p, const char *path)
{
    const double a = run_number(p->a, path);
    close_to(p, a, run_number(p->b, path), fabs(a), 0.0, path);
}

static triple triple_of(const cJSON *list)
{
    assert_int_equal(cJSON_GetArraySize(list), 3);
    return (triple){cJSON_GetArrayItem(list, 0)->valuedouble,
                    cJSON_GetArrayItem(list, 1)->valuedouble,
                    cJSON_GetArrayItem(list, 2)->valuedouble};
}

static void same_triple(pair *p, const cJSON *a, const cJSON *b, bool moment, double least,
                        const char *what)
{
    const triple was = triple_of(a), is = triple_of(b);
    const triple expected = moment ? moved_moment(p->told, was) : moved(p->told, was);
    const double size = sqrt(was.x * was.x + was.y * was.y + was.z * was.z);
    close_to(p, expected.x, is.x, size, least, what);
    close_to(p, expected.y, is.y, size, least, what);
    close_to(p, expected.z, is.z, size, least, what);
}

static const cJSON *get(const cJSON *map, const char *key)
{
    const cJSON *found = cJSON_GetObjectItemCaseSensitive(map, key);
    if (!found) print_error("no %s\n", key);
    assert_non_null(found);
    return found;
}

static const char *text_of(const cJSON *map, const char *key)
{
    const cJSON *found = get(map, key);
    return cJSON_IsString(found) ? found->valuestring : "";
}

/* Reactions or movements, place by place; places that the other result lacks are passed over. */
static void same_places(pair *p, const cJSON *a, const cJSON *b, const char *first,
                        const char *second, double least)
{
    const cJSON *entry;
    int met = 0;
    cJSON_ArrayForEach(entry, a)
    {
        const char *at = text_of(entry, "at");
        const cJSON *other = run_entry(b, at, strlen(at));
        if (!other) continue;
        met++;
        same_triple(p, get(entry, first), get(other, first), false, least, at);
        same_triple(p, get(entry, second), get(other, second), true, least, at);
    }
    assert_true(met >= 2);
}

/* Section forces of segments that both have. Mirrored, local y turns over: Vy, T and Mz with it. */
static void same_forces(pair *p, const cJSON *a, const cJSON *b)
{
    static const char *const name[] = {"axial_N",    "shear_y_N",   "shear_z_N",
                                       "torsion_Nm", "moment_y_Nm", "moment_z_Nm"};
    const double sign = p->told->mirrored ? -1.0 : 1.0, turn[] = {1, sign, 1, sign, 1, sign};
    const cJSON *entry;
    int met = 0;
    cJSON_ArrayForEach(entry, a)
    {
        char which[128];
        snprintf(which, sizeof which, "segment=%s,x=%.10g", text_of(entry, "segment"),
                 get(entry, "x")->valuedouble);
        const cJSON *other = run_entry(b, which, strlen(which));
        if (!other) continue;
        met++;
        for (int half = 0; half < 6; half += 3) {
            double size = 0.0;
            for (int i = half; i < half + 3; i++)
                size = fmax(size, fabs(get(entry, name[i])->valuedouble));
            for (int i = half; i < half + 3; i++) {
                close_to(p, turn[i] * get(entry, name[i])->valuedouble,
                         get(other, name[i])->valuedouble, size, 1.0, which);
            }
        }
    }
    assert_true(met >= 22);
}

static void same_case(pair *p, const cJSON *a, const cJSON *cases)
{
    char name[64];
    int degrees;
    snprintf(name, sizeof name, "%s", text_of(a, "name"));
    if (sscanf(name, "wind %d", &degrees) == 1)
        snprintf(name, sizeof name, "wind %d", moved_wind(p->told, degrees));
    const cJSON *b = run_entry(cases, name, strlen(name));
    assert_non_null(b);
    same_places(p, get(a, "reactions"), get(b, "reactions"), "force_N", "moment_Nm", 1.0);
    same_places(p, get(a, "displacements"), get(b, "displacements"), "move_m", "turn_rad", 1e-5);
    same_forces(p, get(a, "forces"), get(b, "forces"));
}

static void same_models(pair *p)
{
    const cJSON *model, *one;
    cJSON_ArrayForEach(model, get(p->a, "models"))
    {
        const cJSON *other =
            run_entry(get(p->b, "models"), text_of(model, "name"), strlen(text_of(model, "name")));
        assert_non_null(other);
        int cases = 0;
        cJSON_ArrayForEach(one, get(model, "cases"))
        {
            same_case(p, one, get(other, "cases"));
            cases++;
        }
        assert_true(cases >= 4);
        const double f = run_number(model, "modes/0/frequency_Hz");
        close_to(p, f, run_number(other, "modes/0/frequency_Hz"), f, 0.0, "first frequency");
    }
}

/* The worst use of a check, over all its places. */
static double worst(const cJSON *tree, const char *check)
{
    const cJSON *row;
    double most = -1.0;
    cJSON_ArrayForEach(row, get(tree, "checks"))
    {
        const cJSON *use = get(row, "use");
        if (strcmp(text_of(row, "check"), check) == 0 && cJSON_IsNumber(use))
            most = fmax(most, use->valuedouble);
    }
    assert_true(most > 0.0);
    return most;
}

static void same_whole(pair *p)
{
    static const char *const paths[] = {"mass/total_kg", "mass/low_kg", "mass/high_kg",
                                        "balance/edge_distance_m"};
    static const char *const checks[] = {
        "strength.bronze", "strength.armature", "fit", "mass", "sway", "frequency"};
    for (size_t i = 0; i < sizeof paths / sizeof *paths; i++) same_number(p, paths[i]);
    same_triple(p, get(p->a, "centre_of_mass_m"), get(p->b, "centre_of_mass_m"), false, 0.0,
                "centre of mass");
    for (size_t i = 0; i < sizeof checks / sizeof *checks; i++) {
        const double use = worst(p->a, checks[i]);
        close_to(p, use, worst(p->b, checks[i]), use, 0.0, checks[i]);
    }
    assert_string_equal(text_of(p->a, "verdict"), text_of(p->b, "verdict"));
}

/* The figure told otherwise against the figure told plainly; the caller deletes the former. */
static cJSON *same(const telling *told, double within)
{
    cJSON *other = result_of(told, NULL);
    pair p = {.a = plainly, .b = other, .told = told, .within = within};
    same_whole(&p);
    same_models(&p);
    assert_true(p.compared > 1000);
    return other;
}

/* ---- the tests ---- */

static void limb_in_more_segments(void **state)
{
    (void)state;
    static const char *const middle[] = {[3] = "left_1-left_2,x=0.5", [10] = "left_4-left_5,x=1"};
    static const int splits[] = {3, 10};
    telling told = plain;
    for (size_t i = 0; i < sizeof splits / sizeof *splits; i++) {
        told.split = splits[i];
        cJSON *other = same(&told, 1e-3);
        char path[160];
        snprintf(path, sizeof path,
                 "models[together]/cases[wind_40]/forces[segment=%s]/moment_y_Nm",
                 middle[splits[i]]);
        const double whole = run_number(
            plainly,
            "models[together]/cases[wind_40]/forces[segment=left_foot-left_hip,x=0.5]/moment_y_Nm");
        assert_true(fabs(whole) > 1.0);
        assert_close(run_number(other, path), whole, 1e-3);
        cJSON_Delete(other);
    }
}

static void turned_about_the_vertical(void **state)
{
    (void)state;
    telling told = plain;
    told.turned = true;
    cJSON_Delete(same(&told, 1e-6));
}

static void mirrored(void **state)
{
    (void)state;
    telling told = plain;
    told.mirrored = true;
    cJSON_Delete(same(&told, 1e-6));
    told.turned = true;
    cJSON_Delete(same(&told, 1e-6));
}

static void measured_at_half_size(void **state)
{
    (void)state;
    telling told = plain;
    told.measured = 0.5;
    cJSON_Delete(same(&told, 1e-9));
}

static void limbs_in_another_order(void **state)
{
    (void)state;
    telling told = plain;
    told.swapped = true;
    cJSON_Delete(same(&told, 1e-6));
}

static void set_is_the_edited_file(void **state)
{
    (void)state;
    telling told = plain;
    told.wall = "6 mm";
    told.wind = "{basic_speed: 27 m/s, terrain: III}";
    static const char *const set[] = {"bronze/wall=6 mm", "site/wind/basic_speed=27 m/s",
                                      "site/wind/terrain=III"};
    cJSON *edited = result_of(&told, NULL);
    cJSON *by_set = result_of(&plain, &(tt_changes){.set = set, .sets = 3});
    cJSON_DeleteItemFromObject(edited, "input");
    cJSON_DeleteItemFromObject(by_set, "input");
    assert_false(cJSON_Compare(get(edited, "mass"), get(plainly, "mass"), true));
    assert_true(cJSON_Compare(edited, by_set, true));
    cJSON_Delete(edited);
    cJSON_Delete(by_set);
}

/* One piece to both bases: geometry and weight stay, factors and strengths do not. */
static void both_bases(void **state)
{
    (void)state;
    telling told = plain;
    told.basis = "us";
    told.wind = "{basic_speed: 115 mph, exposure: C}";
    const cJSON *eu = plainly;
    cJSON *us = result_of(&told, NULL);
    pair p = {.a = eu, .b = us, .told = &plain, .within = 1e-9};
    same_number(&p, "mass/total_kg");
    same_number(&p, "mass/high_kg");
    same_number(&p, "balance/edge_distance_m");
    same_number(&p, "sections[segment=neck-hand,x=0]/bronze/iy_m4");
    assert_string_equal(text_of(eu, "basis"), "eu");
    assert_string_equal(text_of(us, "basis"), "us");
    assert_string_not_equal(text_of(us, "verdict"), "");
    assert_true(fabs(worst(us, "strength.bronze") / worst(eu, "strength.bronze") - 1.0) > 0.01);
    cJSON_Delete(us);
}

static double angle(triple a, triple b)
{
    const triple c = {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
    return atan2(sqrt(c.x * c.x + c.y * c.y + c.z * c.z), a.x * b.x + a.y * b.y + a.z * b.z);
}

static cJSON *shank(double lean, double azimuth, const char *faces)
{
    const double out = tan(lean) * 0.6;
    run_text to = {0};
    say(&to,
        "piece: Shank\nfaces: %s\nbronze: {alloy: C87300, wall: 5 mm}\nlimbs:\n  shank:\n    "
        "rows:\n",
        faces);
    say(&to,
        "      - [foot, 0, 0, 0, 46 mm, 40 mm]\n      - [knee, %.15g m, %.15g m, 600 mm, 70 mm, 60 "
        "mm]\n",
        out * cos(azimuth), out * sin(azimuth));
    say(&to, "stands: [{at: foot, held: fixed}]\nsite: {indoors: yes}\n");
    cJSON *tree = run_piece("shank", to.at, NULL);
    free(to.at);
    return tree;
}

static void leaning_shank_keeps_its_outline(void **state)
{
    (void)state;
    static const char *const faces[] = {"+x", "-y", "[1, 0.5, 0]", "+z"};
    static const double leans[] = {0.5, 2.0};
    static const char *const axes[] = {"sections/0/local_y", "sections/0/local_z"};
    for (size_t f = 0; f < sizeof faces / sizeof *faces; f++) {
        cJSON *plumb = shank(0.0, 0.0, faces[f]);
        for (int i = 0; i < 16; i++) {
            const double lean = leans[i % 2] * PI / 180.0, azimuth = (22.5 * i + 7.0) * PI / 180.0;
            cJSON *leaning = shank(lean, azimuth, faces[f]);
            for (int a = 0; a < 2; a++) {
                const double by = angle(triple_of(run_find(plumb, axes[a], NULL)),
                                        triple_of(run_find(leaning, axes[a], NULL)));
                assert_true(by <= lean * (1.0 + 1e-6));
            }
            cJSON_Delete(leaning);
        }
        cJSON_Delete(plumb);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(limb_in_more_segments),
                                       cmocka_unit_test(turned_about_the_vertical),
                                       cmocka_unit_test(mirrored),
                                       cmocka_unit_test(measured_at_half_size),
                                       cmocka_unit_test(limbs_in_another_order),
                                       cmocka_unit_test(set_is_the_edited_file),
                                       cmocka_unit_test(both_bases),
                                       cmocka_unit_test(leaning_shank_keeps_its_outline)};
    return cmocka_run_group_tests(tests, tell_plainly, forget);
}
