/* basis/bases/eu.c - the Eurocodes, first generation, recommended values: load factors by EN 1990,
 * force coefficients after EN 1991-1-4, steel by EN 1993-1-1 and 1-4. SI. */
#include "basis/inside.h"

#include <math.h>

/* EN 1991-1-4 Figure 7.23, digitised: straight lines against log10(d / b). */
static double drag_box(double across, double along)
{
    static const double depth[] = {0.2, 0.7, 5.0, 10.0}, drag[] = {2.0, 2.4, 1.0, 0.9};
    const double ratio = along / across;
    if (!(ratio > depth[0])) return drag[0];
    for (int i = 1; i < 4; i++) {
        if (ratio > depth[i]) continue;
        const double part = log10(ratio / depth[i - 1]) / log10(depth[i] / depth[i - 1]);
        return drag[i - 1] + part * (drag[i] - drag[i - 1]);
    }
    return drag[3];
}

static double drag(tt_shape shape, double across, double along, tt_steps *steps)
{
    double c_f = 1.8;
    switch (shape) {
    case TT_SHAPE_OVAL:
        return tt_drag_oval(across, along, steps);
    case TT_SHAPE_ROUND:
        c_f = 1.2;
        tt_say(steps, TT_S_en_drag_round, "cf", "", c_f, "1.2", NULL);
        break;
    case TT_SHAPE_BOX:
        c_f = drag_box(across, along);
        tt_say(steps, TT_S_en_drag_box, "cf", "", c_f, "cf,0(d / b), sharp corners",
               "d / b = %.4g / %.4g", along, across);
        break;
    case TT_SHAPE_OTHER:
        tt_say(steps, TT_S_drag_other_eu, "cf", "", c_f, "1.8", NULL);
        break;
    }
    return c_f;
}

static double steel_strength(double f_y, double f_u, bool stainless, tt_steps *steps)
{
    (void)f_u; /* elastic checks by yield alone */
    const double gamma_M0 = stainless ? 1.1 : 1.0;
    tt_say(steps, stainless ? TT_S_en_stainless : TT_S_en_steel, "f_d", "Pa", f_y / gamma_M0,
           "f_y / gamma_M0", "%.4g / %.2f", f_y, gamma_M0);
    return f_y / gamma_M0;
}

/* EN 1990 Table B.3, CC1, CC2, CC3; risk 4 is CC3 too. It multiplies unfavourable actions only,
 * the weight that tips among them, and does not enter accidental combinations. */
static double consequence(int risk)
{
    return risk <= 1 ? 0.9 : risk == 2 ? 1.0 : 1.1;
}

/* EN 1990 Table A1.1: wind psi0 0.6, psi1 0.2. An own variable case does not say what it is: it has
 * the heaviest row, E (storage), psi0 1.0 and psi1 0.9 (assumption). (6.11b) gives psi1 to one
 * variable action and psi2 to the rest; here each has psi1, which is not less.
 * With light weight no rule stands bare: the same effects, smaller. */
static size_t rules(int risk, tt_rule *to, size_t most)
{
    const double K = consequence(risk), Q = 1.5 * K, W = 0.6 * Q;
    const tt_rule_row rows[] = {
        {"6.10 sup",
         TT_STRENGTH,
         TT_S_en_strength,
         1.35 * K,
         1.35 * K,
         {Q, Q},
         {W, Q},
         1.0,
         true,
         {1.35 * K, 1.0}},
        {"6.10 inf",
         TT_STRENGTH,
         TT_S_en_strength,
         1.0,
         1.0,
         {Q, Q},
         {W, Q},
         1.0,
         false,
         {1.35 * K, 1.0}},
        {"6.10 EQU",
         TT_EQUILIBRIUM,
         TT_S_en_equilibrium,
         1.1 * K,
         0.9,
         {Q, Q},
         {W, Q},
         1.0,
         true,
         {1.1 * K, 0.9}},
        {"6.14b",
         TT_SERVICE,
         TT_S_en_service,
         1.0,
         1.0,
         {1.0, 1.0},
         {0.6, 1.0},
         1.0,
         true,
         {1.0, 1.0}},
        {"6.11b",
         TT_ACCIDENTAL,
         TT_S_en_accidental,
         1.0,
         1.0,
         {0, 0, 1.0},
         {0.2, 0.9},
         1.0,
         false,
         {1.0, 1.0}},
    };
    return tt_rules_of(rows, sizeof rows / sizeof *rows, to, most);
}

const tt_basis tt_basis_eu = {
    .id = "eu",
    .title = "Eurocodes, first generation, recommended values",
    .editions = {"EN 1990:2002"},
    .pressure = tt_eu_pressure,
    .gust = tt_eu_gust,
    .drag = drag,
    .least_pressure = 0.0,
    .least_pressure_source = {"assumption of this program", NULL, "none taken", TT_COMMON_PRACTICE},
    .steel_strength = steel_strength,
    .rules = rules,
};
