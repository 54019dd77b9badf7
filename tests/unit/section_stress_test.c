/* Stress of a section against the stress of every point of its edge, from sigma = N / A +
 * My z / Iy - Mz y / Iz, and against sums done by hand. */
#include "assert_close.h"
#include "section/section.h"

#include <stdbool.h>

static const double PI = 3.14159265358979323846;

static const tt_forces FORCES = {
    .n = -12e3, .vy = 800.0, .vz = -600.0, .t = -150.0, .my = 900.0, .mz = -400.0};

static double sigma(const tt_section *s, const tt_forces *f, double y, double z)
{
    return f->n / s->area + f->my * z / s->iy - f->mz * y / s->iz;
}

static void round_an_ellipse(void **state)
{
    (void)state;
    const tt_outline oval = tt_outline_of(TT_OUTLINE_ELLIPSE, 0.16, 0.1);
    const tt_section s = tt_section_shell(&oval, 0.008, 0.34);
    const tt_stress stress = tt_section_stress(&s, &FORCES);
    double worst = 0.0;
    for (int i = 0; i < 20000; i++) {
        const double u = 2.0 * PI * i / 20000;
        worst = fmax(worst, fabs(sigma(&s, &FORCES, 0.08 * cos(u), 0.05 * sin(u))));
    }
    assert_close(stress.normal, worst, 1e-7);
    const double shear =
        150.0 / s.torsion_modulus + hypot(800.0 * s.peak_shear_y, 600.0 * s.peak_shear_z);
    assert_close(stress.shear, shear, 1e-12);
    assert_close(stress.equivalent, sqrt(worst * worst + 3.0 * shear * shear), 1e-7);
}

/* 60 wide, 40 deep: A = 2400 mm2, Wy = 16 000, Wz = 24 000 mm3. */
static void corners_of_a_box(void **state)
{
    (void)state;
    const tt_outline box = tt_outline_of(TT_OUTLINE_BOX, 0.06, 0.04);
    const tt_section s = tt_section_solid(&box, 0.34);
    const tt_stress stress = tt_section_stress(&s, &FORCES);
    assert_close(stress.normal, (5.0 + 56.25 + 16.0 + 2.0 / 3.0) * 1e6, 1e-12);
    const tt_forces shear = {.vz = 1600.0};
    assert_close(tt_section_stress(&s, &shear).shear, 1e6, 1e-12);
    assert_close(tt_section_stress(&s, &shear).equivalent, sqrt(3.0) * 1e6, 1e-12);
    /* T / (alpha b a^2), alpha = 0.231 at 1.5: Timoshenko and Goodier, art. 109, FROM MEMORY */
    const tt_forces torsion = {.t = 100.0};
    assert_close(tt_section_stress(&s, &torsion).shear, 100.0 / (0.231 * 0.06 * 0.0016), 0.003);
}

/* The corners of a box whose axes are no principal ones: curvatures by the inverse of
 * My = iy ky - iyz kz, Mz = iz kz - iyz ky. Numbers chosen so that ky = 2, kz = -1 (times 1 / E).
 */
static void product_of_inertia(void **state)
{
    (void)state;
    const tt_section s = {.area = 1.0,
                          .iy = 3.0,
                          .iz = 5.0,
                          .iyz = 1.5,
                          .j = 1.0,
                          .torsion_modulus = 1.0,
                          .reach_y = 2.0,
                          .reach_z = 4.0};
    const tt_forces f = {.my = 3.0 * 2.0 + 1.5, .mz = -5.0 - 1.5 * 2.0};
    assert_close(tt_section_stress(&s, &f).normal, 2.0 * 4.0 + 1.0 * 2.0, 1e-12);
}

static void signs_do_not_matter(void **state)
{
    (void)state;
    const tt_section s = tt_section_tube(0.0603, 0.005, 0.3);
    const tt_forces turned = {
        .n = 12e3, .vy = -800.0, .vz = 600.0, .t = 150.0, .my = -900.0, .mz = 400.0};
    const tt_stress one = tt_section_stress(&s, &FORCES), other = tt_section_stress(&s, &turned);
    assert_close(one.normal, other.normal, 0.0);
    assert_close(one.shear, other.shear, 0.0);
    assert_true(one.normal > 0.0 && one.shear > 0.0);
}

static void no_part_carries_nothing(void **state)
{
    (void)state;
    const tt_section none = {0};
    const tt_forces idle = {0}, small = {.vy = 1e-9};
    assert_near(tt_section_stress(&none, &idle).equivalent, 0.0, 0.0);
    assert_true(isinf(tt_section_stress(&none, &small).equivalent));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(round_an_ellipse),        cmocka_unit_test(corners_of_a_box),
        cmocka_unit_test(product_of_inertia),      cmocka_unit_test(signs_do_not_matter),
        cmocka_unit_test(no_part_carries_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
