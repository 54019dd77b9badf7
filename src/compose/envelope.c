/* compose/envelope.c - worst of all: reactions of a stand over loads together, carry models and
 * patterns of weight. N, N.m. */
#include "compose/parts.h"

#include <math.h>

static double worse(double a, double b)
{
    return b > a ? b : a;
}

static int patterns(const tt_combination *together)
{
    return together->patterned ? TT_PATTERNS : TT_NOMINAL + 1;
}

static void press(tt_press *worst, const double reaction[6])
{
    worst->any = true;
    worst->down = worse(worst->down, reaction[2]);
    worst->up = worse(worst->up, -reaction[2]);
    worst->level = worse(worst->level, hypot(reaction[0], reaction[1]));
    worst->tilt = worse(worst->tilt, hypot(reaction[3], reaction[4]));
    worst->twist = worse(worst->twist, fabs(reaction[5]));
}

/* What is left by rounding where nothing acts: under a thousand-millionth of the weight. */
static void clear_noise(tt_press *worst, const tt_assessment *a)
{
    const double noise = 1e-9 * TT_GRAVITY * tt_model_mass(a->model, TT_HEAVY);
    double *const all[] = {&worst->down, &worst->up, &worst->level, &worst->tilt, &worst->twist};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        if (*all[i] < noise) *all[i] = 0.0;
    }
}

tt_press tt_press_of(const tt_assessment *a, size_t stand, tt_level level)
{
    tt_press worst = {0};
    const size_t node = a->piece->stands.at[stand].at; /* points are the first nodes */
    for (size_t i = 0; i < a->combinations.n; i++) {
        const tt_combination *together = &a->combinations.at[i];
        if (together->level != level) continue;
        for (int k = 0; k < TT_MODELS * patterns(together); k++) {
            double reaction[6];
            tt_superpose_reaction(&a->solution, k % TT_MODELS, together, k / TT_MODELS, node,
                                  reaction);
            press(&worst, reaction);
        }
    }
    clear_noise(&worst, a);
    return worst;
}
