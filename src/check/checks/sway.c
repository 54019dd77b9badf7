/* check/checks/sway.c - the largest level movement of any place over the height of the piece, under
 * service loads, in the softer carry model. A ratio. */
#include "check/parts.h"

#include <math.h>

static const char name[] = "sway";

typedef struct {
    double move;
    size_t point;
    const tt_combination *together;
    int carry, pattern;
} furthest;

static void look(const tt_check_input *in, const tt_combination *together, int carry, int pattern, furthest *most)
{
    for (size_t p = 0; p < in->piece->points.n; p++) {
        double u[6];
        tt_superpose_move(in->solution, carry, together, pattern, p, u);
        const double move = hypot(u[0], u[1]);
        if (most->together && move <= most->move) continue;
        *most = (furthest){move, p, together, carry, pattern};
    }
}

static furthest search(const tt_check_input *in)
{
    furthest most = {.together = NULL};
    for (size_t i = 0; i < in->combinations->n; i++) {
        if (in->combinations->at[i].level != TT_SERVICE) continue;
        for (int carry = 0; carry < TT_MODELS; carry++) {
            look(in, &in->combinations->at[i], carry, TT_HEAVY, &most);
            look(in, &in->combinations->at[i], carry, TT_LIGHT, &most);
        }
    }
    return most;
}

/* Largest height of a place over, or under, the stand nearest in height. */
static double reach(const tt_piece *piece)
{
    double most = 0.0;
    for (size_t p = 0; p < piece->points.n; p++) {
        double near = INFINITY;
        for (size_t s = 0; s < piece->stands.n; s++) {
            near = fmin(near, fabs(piece->points.at[p].at.z - piece->points.at[piece->stands.at[s].at].at.z));
        }
        most = fmax(most, near);
    }
    return most;
}

static tt_status run(const tt_check_input *in, tt_findings *out)
{
    const tt_limits *limits = &in->piece->limits;
    const furthest most = search(in);
    const double height = reach(in->piece);
    if (!limits->has_sway) return tt_inapplicable_add(out, name, "no limits.sway is given; the movement is told") ? TT_OK : TT_E_NOMEM;
    if (!most.together || height <= 0.0) return tt_inapplicable_add(out, name, "no service loads, or no height") ? TT_OK : TT_E_NOMEM;
    tt_steps steps = tt_steps_start(out);
    tt_step_add(&steps, "sway", "u/h", most.move / height, "", tt_source_of(TT_S_statics), "%.5g/%.5g", most.move, height);
    tt_finding finding = tt_finding_of(in, name, most.move / height, limits->sway.is, "", NULL);
    finding.where = in->piece->points.at[most.point].name;
    finding.combination = most.together->name;
    finding.pattern = tt_pattern_name[most.pattern];
    finding.model = tt_model_name[most.carry];
    return tt_finding_add(out, finding, &steps) ? TT_OK : TT_E_NOMEM;
}

const tt_check tt_check_sway = {.name = name,
                                .title = "sway",
                                .explain = "The largest level movement of any place under service loads, over the "
                                           "height of the piece above (or below) its stand, against limits.sway.",
                                .source = TT_S_statics,
                                .run = run};
