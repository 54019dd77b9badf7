/* check/lifting.c - stands that rest and would be pulled up, with the pull, N. */
#include "check/parts.h"

#include <math.h>

/* The most by which a stand is pulled up, N, and under what; 0: never. */
static double pull_at(const tt_check_input *in, size_t point, const char **under)
{
    double most = 0.0, size = 0.0;
    for (size_t i = 0; i < in->combinations->n; i++) {
        const tt_combination *together = &in->combinations->at[i];
        for (int k = 0; k < 2 * TT_MODELS; k++) {
            double r[6];
            tt_superpose_reaction(in->solution, k / 2, together, k % 2 ? TT_HEAVY : TT_LIGHT, point,
                                  r);
            size = fmax(size, fabs(r[2]));
            if (-r[2] <= most) continue;
            most = -r[2];
            *under = together->name;
        }
    }
    return most > 1e-9 * size ? most : 0.0;
}

/* What rests can only press: where it would be pulled another piece stands there than was solved.
 */
bool tt_lifting(const tt_check_input *in, tt_findings *out)
{
    for (size_t i = 0; i < in->piece->stands.n; i++) {
        const tt_stand *stand = &in->piece->stands.at[i];
        const char *under = NULL;
        const double pull = stand->held == TT_HELD_RESTS ? pull_at(in, stand->at, &under) : 0.0;
        if (pull <= 0.0) continue;
        const char *why = tt_pool_format(
            &out->pool, "this stand lifts under %s; what then carries is not computed", under);
        const tt_unchecked entry = {.check = "lifting",
                                    .where = in->piece->points.at[stand->at].name,
                                    .why = why,
                                    .give = "held: fixed or pinned, where something holds it down",
                                    .needed = true,
                                    .has_demand = true,
                                    .demand = pull,
                                    .unit = "N"};
        if (!why || !tt_unchecked_add(out, entry)) return false;
    }
    return true;
}
