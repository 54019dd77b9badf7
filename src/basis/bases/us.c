/* basis/bases/us.c - ASCE 7-16 and 7-22 with AISC 360: load factors, drag, steel. SI. */
#include "basis/inside.h"

static double drag(tt_shape shape, double across, double along, tt_steps *steps)
{
    switch (shape) {
    case TT_SHAPE_OVAL:
        return tt_drag_oval(across, along, steps);
    case TT_SHAPE_ROUND:
        tt_say(steps, TT_S_asce_drag_round, "Cf", "", 1.2, "1.2", NULL);
        return 1.2;
    case TT_SHAPE_BOX:
        tt_say(steps, TT_S_asce_drag_box, "Cf", "", 2.0, "2.0", NULL);
        return 2.0;
    case TT_SHAPE_OTHER:
        break;
    }
    tt_say(steps, TT_S_drag_other_us, "Cf", "", 2.0, "2.0", NULL);
    return 2.0;
}

static double steel_strength(double f_y, double f_u, bool stainless, tt_steps *steps)
{
    (void)f_u; /* elastic checks by yield alone */
    tt_say(steps, stainless ? TT_S_aisc_stainless : TT_S_aisc_steel, "phi F_y", "Pa", 0.9 * f_y,
           "0.90 F_y", "0.90 * %.4g", f_y);
    return 0.9 * f_y;
}

/* Own variable cases count as L; several of them act at once. Left out, because without snow, roof
 * load and rain others are worse: 2.3.1 (3), which is 1.2D + (L or 0.5W); 2.4.1 (3) and (4).
 * 0.9D + 1.6L is not in 2.3.1: a load that works against the weight is not met by 1.2D
 * (assumption). Overturning: the whole weight with 1.5 on what tips, or 0.6 of what restores
 * with 1.0; the part of the weight that tips is never reduced; own variable cases as the wind. */
static const tt_rule_row rows[] = {
    {"(1)", TT_STRENGTH, TT_S_asce_lrfd, 1.4, 1.4, {0}, {0}, 1.0, true, {1.4, 0.9}},
    {"(2)", TT_STRENGTH, TT_S_asce_lrfd, 1.2, 1.2, {0, 1.6}, {0, 1.6}, 1.0, false, {1.2, 0.9}},
    {"(4)", TT_STRENGTH, TT_S_asce_lrfd, 1.2, 1.2, {1.0}, {0, 1.0}, 1.0, false, {1.2, 0.9}},
    {"(5)", TT_STRENGTH, TT_S_asce_lrfd, 0.9, 0.9, {1.0}, {0}, 1.0, false, {1.2, 0.9}},
    {"0.9D + 1.6L",
     TT_STRENGTH,
     TT_S_light_american,
     0.9,
     0.9,
     {0, 1.6},
     {0, 1.6},
     1.0,
     false,
     {1.2, 0.9}},
    {"1.2D + A",
     TT_ACCIDENTAL,
     TT_S_asce_event,
     1.2,
     1.2,
     {0, 0, 1.0},
     {0, 0.5},
     1.0,
     false,
     {1.2, 0.9}},
    {"0.9D + A",
     TT_ACCIDENTAL,
     TT_S_asce_event,
     0.9,
     0.9,
     {0, 0, 1.0},
     {0, 0.5},
     1.0,
     false,
     {1.2, 0.9}},
    {"(1)", TT_ALLOWABLE, TT_S_asce_asd, 1.0, 1.0, {0}, {0}, 1.0, true, {1.0, 0.6}},
    {"(2)", TT_ALLOWABLE, TT_S_asce_asd, 1.0, 1.0, {0, 1.0}, {0, 1.0}, 1.0, false, {1.0, 0.6}},
    {"(5)", TT_ALLOWABLE, TT_S_asce_asd, 1.0, 1.0, {0.6}, {0}, 1.0, false, {1.0, 0.6}},
    {"(6)", TT_ALLOWABLE, TT_S_asce_asd, 1.0, 1.0, {0.45}, {0, 0.75}, 1.0, false, {1.0, 0.6}},
    {"(7)", TT_ALLOWABLE, TT_S_asce_asd, 0.6, 0.6, {0.6}, {0}, 1.0, false, {1.0, 0.6}},
    {"(1) x 1.5", TT_EQUILIBRIUM, TT_S_overturning, 1.0, 1.0, {0}, {0}, 1.5, true, {1.0, 0.6}},
    {"(2) x 1.5",
     TT_EQUILIBRIUM,
     TT_S_overturning,
     1.0,
     1.0,
     {0, 1.0},
     {0, 1.0},
     1.5,
     false,
     {1.0, 0.6}},
    {"(5) x 1.5", TT_EQUILIBRIUM, TT_S_overturning, 1.0, 1.0, {0.6}, {0}, 1.5, false, {1.0, 0.6}},
    {"(6) x 1.5",
     TT_EQUILIBRIUM,
     TT_S_overturning,
     1.0,
     1.0,
     {0.45},
     {0, 0.75},
     1.5,
     false,
     {1.0, 0.6}},
    {"(7)",
     TT_EQUILIBRIUM,
     TT_S_overturning,
     1.0,
     0.6,
     {0.6, 1.0},
     {0.6, 1.0},
     1.0,
     false,
     {1.0, 0.6}},
    {"service",
     TT_SERVICE,
     TT_S_service_american,
     1.0,
     1.0,
     {0.6, 1.0},
     {0.6, 1.0},
     1.0,
     true,
     {1.0, 1.0}},
};

/* Speeds and ice are read from maps of the risk category: no factor here. */
static size_t rules(int risk, tt_rule *to, size_t most)
{
    (void)risk;
    return tt_rules_of(rows, sizeof rows / sizeof *rows, to, most);
}

const tt_basis tt_basis_us = {
    .id = "us",
    .title = "ASCE 7 and AISC 360",
    .editions = {"7-16", "7-22"},
    .pressure = tt_us_pressure,
    .gust = tt_us_gust,
    .drag = drag,
    .least_pressure = 16.0 * 47.880259, /* 16 psf */
    .least_pressure_source = {"ASCE 7", "16, 22", "29.7, 16 psf", TT_FROM_MEMORY},
    .steel_strength = steel_strength,
    .rules = rules,
};
