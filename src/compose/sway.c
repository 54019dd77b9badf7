/* compose/sway.c - how far the piece sways, and how it swings by itself. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

enum { TOLD = 3 };
static const double SHARE_TOLD = 0.1;  /* of the weight: a mode that carries less is not told */
static const double ALIKE = 1e-3;      /* of a frequency: two ways of swinging as fast */
static const double LEAST_TOLD = 1e-9; /* m: less is what rounding leaves where nothing sways */

static const char *rate(double frequency, tt_report *out)
{
    const int decimals = frequency < 1.0 ? 2 : frequency < 10.0 ? 1 : 0;
    return tt_report_text(out, "%.*f times a second", decimals, frequency);
}

/* Where the front is: 0 along x, 1 along y, else -1. */
static int front(const tt_piece *piece)
{
    return fabs(piece->faces.x) > 0.999 ? 0 : fabs(piece->faces.y) > 0.999 ? 1 : -1;
}

/* Of a mode's shares of the weight along x, y, z: the words, and the share along whichever of them
 * it is largest. */
static const char *motion(const tt_piece *piece, const double share[3], double *carried)
{
    const double level = share[0] + share[1];
    *carried = share[2] > level ? share[2] : fmax(share[0], share[1]);
    if (*carried < 0.01) return "twists";
    if (share[2] > level) return "nods up and down";
    const int along = front(piece);
    if (along < 0) return "sways";
    if (share[along] >= 0.75 * level) return "sways forward";
    return share[along] <= 0.25 * level ? "sways sideways" : "sways aslant";
}

/* Shares of the whole weight: the frame gives them of what can move. */
static void shares(const tt_assessment *a, const tt_modes *modes, const tt_mode *mode,
                   double share[3])
{
    const double whole = tt_model_mass(a->model, TT_NOMINAL);
    for (int k = 0; k < 3; k++) {
        share[k] = whole > 0.0 ? mode->mass_fraction[k] * modes->free_mass[k] / whole : 0.0;
    }
}

static bool say_mode(const tt_assessment *a, const tt_modes *modes, size_t i, bool always,
                     tt_report *out)
{
    double share[3], carried;
    shares(a, modes, &modes->at[i], share);
    const char *how = motion(a->piece, share, &carried);
    if (!always && carried < SHARE_TOLD) return false;
    tt_report_run(out, false,
                  tt_report_text(out, " It %s %s, carrying %.0f %% of the weight.", how,
                                 rate(modes->at[i].frequency, out), carried * 100.0));
    return true;
}

/* Two ways of swinging that differ in their direction alone, as those of a round post: level, as
 * fast, under one name. */
static bool a_pair(const tt_assessment *a, const tt_modes *modes, size_t i)
{
    double first[3], second[3], carried[2];
    if (i + 1 >= modes->n) return false;
    shares(a, modes, &modes->at[i], first);
    shares(a, modes, &modes->at[i + 1], second);
    const char *how = motion(a->piece, first, &carried[0]);
    const bool same = strcmp(how, motion(a->piece, second, &carried[1])) == 0;
    const double apart = modes->at[i + 1].frequency - modes->at[i].frequency;
    return same && strncmp(how, "sways", 5) == 0 && fmin(carried[0], carried[1]) >= SHARE_TOLD &&
           apart <= ALIKE * modes->at[i].frequency;
}

/* Of a pair together: along x and along y each carries what the other does not. */
static void say_pair(const tt_assessment *a, const tt_modes *modes, size_t i, tt_report *out)
{
    double first[3], second[3];
    shares(a, modes, &modes->at[i], first);
    shares(a, modes, &modes->at[i + 1], second);
    const double least = fmin(first[0] + second[0], first[1] + second[1]);
    tt_report_run(out, false,
                  tt_report_text(out, " It sways both ways %s, carrying %.0f %% of the weight.",
                                 rate(modes->at[i].frequency, out), least * 100.0));
}

/* How many ways of swinging were told. */
static size_t say_modes(const tt_assessment *a, const tt_modes *modes, tt_report *out)
{
    size_t told = 0;
    for (size_t i = 0; i < modes->n && i < TOLD; i++) {
        const bool pair = a_pair(a, modes, i);
        if (pair)
            say_pair(a, modes, i++, out);
        else if (!say_mode(a, modes, i, i == 0, out))
            continue;
        told++;
    }
    return told;
}

/* The lowest modes of the softer carry model. */
static void swings(const tt_assessment *a, tt_report *out)
{
    const tt_modes *both = a->solution.modes;
    const int soft = both[TT_ALONE].at[0].frequency <= both[TT_TOGETHER].at[0].frequency
                         ? TT_ALONE
                         : TT_TOGETHER;
    const bool two = tt_two_models(a);
    tt_report_paragraph(out);
    if (two) {
        tt_report_run(out, false,
                      tt_report_text(out, "In the softer carry model (%s):", tt_model_name[soft]));
    }
    if (say_modes(a, &both[soft], out) > 1) {
        tt_report_run(out, false,
                      " Each share is along the direction in which that way of swinging "
                      "carries most: they do not add up.");
    }
    if (!two) return;
    tt_report_run(out, false,
                  tt_report_text(out, " In the stiffer one the lowest is %s.",
                                 rate(both[TT_MODELS - 1 - soft].at[0].frequency, out)));
}

/* By how much the loads must grow for it to buckle. */
static void buckling(const tt_assessment *a, tt_report *out)
{
    for (size_t i = 0; i < a->findings.list.n; i++) {
        const tt_finding *f = &a->findings.list.at[i];
        if (strcmp(f->check, "stability") != 0) continue;
        const double down =
            f->resistance < 10.0 ? floor(100.0 * f->resistance) / 100.0 : floor(f->resistance);
        const char *times = tt_report_text(out, "%.3g", down);
        tt_report_say(out,
                      tt_report_text(out, "It would buckle under %s times %s (%s weight, %s).%s",
                                     times, f->combination, f->pattern, f->model,
                                     f->resistance < 1.0    ? " It buckles."
                                     : !f->holds            ? " Under 3 falls short."
                                     : f->resistance < 10.0 ? " Under 10 what leaning adds "
                                                              "to the forces matters."
                                                            : ""));
    }
}

static bool can_swing(const tt_assessment *a)
{
    return a->solution.modes[TT_ALONE].n && a->solution.modes[TT_TOGETHER].n;
}

static void farthest(const tt_assessment *a, tt_report *out)
{
    const tt_sway *worst = &a->sway;
    const bool two = tt_two_models(a);
    tt_report_say(out, tt_report_text(out, "Sways most at %s: %s level, under %s%s%s%s.",
                                      a->piece->points.at[worst->point].name,
                                      tt_say(out, worst->move, "m", a->piece->report),
                                      tt_say_tied(out, worst->together->name), two ? " (" : "",
                                      two ? tt_model_name[worst->carry] : "", two ? ")" : ""));
}

void tt_compose_sway(const tt_assessment *a, tt_report *out)
{
    const tt_sway *worst = &a->sway;
    const bool moves = worst->together && worst->move > LEAST_TOLD;
    if (worst->together && !moves && !can_swing(a)) return;
    tt_report_heading(out, 2, "Sway");
    if (worst->buckles)
        tt_report_say(out, tt_report_text(out, "It buckles under %s: no movement can be told.",
                                          tt_say_tied(out, worst->together->name)));
    else if (moves)
        farthest(a, out);
    if (!worst->together)
        tt_report_say(out, "No place moves level under any loads together of the service level.");
    buckling(a, out);
    if (can_swing(a)) swings(a, out);
}
