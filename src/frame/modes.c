/* frame/modes.c - lowest modes of vibration, how much mass each sets in motion when the ground is
 * shaken, and the proof that none was missed. SI. */
#include "frame/parts.h"
#include "base/alloc.h"
#include "num/eigen.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846

/* Modes nearer than this (relative, of lambda) are one cluster: kept or left together. */
static const double cluster = 1e-4;

typedef struct {
    const tt_frame *frame;
    size_t least;
    double up_to;        /* lambda */
    double *push[3];     /* [unknowns] inertia force of all free unknowns, ground shaken by one */
    double free_mass[3]; /* kg */
    tt_eigen found;
    double (*bodies)[TT_SIX];     /* work, twice the bodies */
    long double (*moved)[TT_SIX]; /* work, nodes */
    double *product;              /* work, unknowns */
} search;

/* M times a move of the whole (held unknowns too), at the free unknowns. */
static void shake(search *s, int along)
{
    const size_t n = s->frame->bodies.n;
    memset(s->bodies, 0, n * sizeof *s->bodies);
    for (size_t b = 0; b < n; b++) s->bodies[b][along] = 1.0;
    tt_mass_times(s->frame, s->bodies, s->bodies + n);
    tt_gather(s->frame, s->bodies + n, s->push[along]);
}

static double largest_diagonal(const tt_sparse *m)
{
    double most = 0.0;
    for (int i = 0; i < m->n; i++) most = fmax(most, tt_sparse_diagonal(m, i));
    return most;
}

/* The mass that all modes together move: push' inverse(M) push. M may be singular; push lies in its
 * range, so that a trace of K (1e-13 by size) beside it changes nothing that counts. */
static tt_status weigh_free(search *s)
{
    const tt_sparse *k = &s->frame->stiffness, *m = &s->frame->mass;
    if (largest_diagonal(m) <= 0.0) return TT_OK;
    const double trace = 1e-13 * largest_diagonal(m) / largest_diagonal(k);
    tt_sparse sum = {0};
    tt_factor factor = {0};
    double *x = tt_alloc((size_t)m->n, sizeof *x);
    tt_status status = x ? tt_sparse_sum(m, trace, k, &sum) : TT_E_NOMEM;
    if (status == TT_OK) status = tt_factor_of(&sum, &factor);
    for (int d = 0; d < 3 && status == TT_OK; d++) {
        status = tt_sparse_solve(&sum, &factor, s->push[d], x, NULL);
        for (int i = 0; i < m->n && status == TT_OK; i++) s->free_mass[d] += s->push[d][i] * x[i];
    }
    tt_factor_free(&factor);
    tt_sparse_free(&sum);
    tt_free(x);
    return status;
}

/* (x' push)^2 / (x' M x), with x' K x = 1 and so x' M x = 1 / lambda. */
static double effective_mass(const search *s, size_t mode, int along)
{
    const size_t n = (size_t)s->frame->unknowns;
    double product = 0.0;
    for (size_t i = 0; i < n; i++) product += s->found.shape[mode * n + i] * s->push[along][i];
    return product * product * s->found.value[mode];
}

/* Of a direction in which nothing can move all is covered. */
static double mass_fraction(const search *s, size_t mode, int along)
{
    const double total = s->free_mass[along];
    return total > 0.0 ? effective_mass(s, mode, along) / total : 0.0;
}

static bool covered(const search *s, const double moved[3])
{
    for (int d = 0; d < 3; d++) {
        if (s->free_mass[d] > 0.0 && moved[d] < 0.9) return false;
    }
    return true;
}

/* How many modes to keep: 0 in `enough` when more must be found first. */
static bool keep_enough(const search *s, size_t *keep)
{
    const double *value = s->found.value;
    double moved[3] = {0};
    size_t n = 0;
    while (n < s->found.sure && (n < s->least || (value[n] <= s->up_to && !covered(s, moved)))) {
        for (int d = 0; d < 3; d++) moved[d] += mass_fraction(s, n, d);
        n++;
    }
    while (n > 0 && n < s->found.sure && value[n] < value[n - 1] * (1.0 + cluster)) n++;
    *keep = n;
    return n < s->found.sure || s->found.all;
}

static tt_status find(search *s, size_t width, size_t *keep)
{
    const tt_frame *frame = s->frame;
    for (size_t wanted = s->least + 3;; wanted *= 2) {
        tt_eigen_free(&s->found);
        const tt_status status =
            tt_eigen_lowest_wide(&frame->factor, &frame->mass, wanted, width, &s->found);
        if (status != TT_OK || keep_enough(s, keep)) return status;
    }
}

/* Just above the highest kept; when none is kept, half the first. */
static tt_status prove(const search *s, size_t keep, tt_mode_proof *proof)
{
    const double *value = s->found.value;
    if (s->found.n == 0) return TT_OK;
    const double shift = keep ? value[keep - 1] * (1.0 + 0.5 * cluster) : 0.5 * value[0];
    tt_sturm sturm;
    const tt_status status =
        tt_sturm_prove(&s->frame->stiffness, &s->frame->mass, value, s->found.n, shift, &sturm);
    *proof = (tt_mode_proof){sturm.shift, sturm.counted, sturm.found};
    return status;
}

/* A frequency that many equal parts share wants as many starting vectors: more, when some were
 * missed. */
static tt_status find_and_prove(search *s, size_t *keep, tt_mode_proof *proof)
{
    tt_status status = TT_E_NOT_CONVERGED;
    for (size_t width = 4; width <= 64 && status == TT_E_NOT_CONVERGED; width *= 4) {
        status = find(s, width, keep);
        if (status == TT_OK) status = prove(s, *keep, proof);
    }
    return status;
}

/* Lord Rayleigh's quotient with the energies of the bars: free of what rounding does to the
 * assembled stiffness, since an error of the shape counts by its square. */
static double frequency(const search *s, size_t mode)
{
    const size_t n = (size_t)s->frame->unknowns, bodies = s->frame->bodies.n;
    const double *x = s->found.shape + mode * n;
    double mass = 0.0;
    memset(s->bodies, 0, 2 * bodies * sizeof *s->bodies);
    tt_spread(s->frame, x, s->bodies);
    tt_long_moves(s->frame, &(tt_body_moves){s->bodies, s->bodies + bodies}, s->moved);
    tt_sparse_apply(&s->frame->mass, x, s->product);
    for (size_t i = 0; i < n; i++) mass += x[i] * s->product[i];
    return sqrt(tt_strain_energy(s->frame, s->moved) / mass) / (2.0 * PI);
}

/* Modes of one frequency may have changed places by rounding. */
static void sort(tt_modes *modes)
{
    for (size_t i = 1; i < modes->n; i++) {
        const tt_mode moving = modes->at[i];
        size_t k = i;
        for (; k > 0 && modes->at[k - 1].frequency > moving.frequency; k--) {
            modes->at[k] = modes->at[k - 1];
        }
        modes->at[k] = moving;
    }
}

static tt_status give(const search *s, size_t keep, tt_pool *pool, tt_modes *modes)
{
    const tt_frame *frame = s->frame;
    modes->at = tt_pool_take(pool, keep, sizeof *modes->at);
    if (!modes->at) return TT_E_NOMEM;
    for (size_t i = 0; i < keep; i++) {
        tt_mode *mode = &modes->at[i];
        mode->frequency = frequency(s, i);
        for (int d = 0; d < 3; d++) mode->mass_fraction[d] = mass_fraction(s, i, d);
        mode->shape = tt_pool_take(pool, frame->nodes.n, sizeof *mode->shape);
        if (!mode->shape) return TT_E_NOMEM;
        tt_spread(frame, s->found.shape + i * (size_t)frame->unknowns, s->bodies);
        tt_node_moves(frame, s->bodies, mode->shape);
        tt_shape_normalize(frame, mode->shape);
    }
    modes->n = keep;
    sort(modes);
    memcpy(modes->free_mass, s->free_mass, sizeof modes->free_mass);
    return TT_OK;
}

static tt_status run(search *s, tt_pool *pool, tt_modes *modes)
{
    size_t keep = 0;
    for (int d = 0; d < 3; d++) shake(s, d);
    tt_status status = weigh_free(s);
    if (status == TT_OK) status = find_and_prove(s, &keep, &modes->proof);
    if (status == TT_OK) status = give(s, keep, pool, modes);
    return status;
}

tt_status tt_frame_modes(const tt_frame *frame, size_t least, double up_to, tt_pool *pool,
                         tt_modes *modes)
{
    search s = {.frame = frame, .least = least, .up_to = 4.0 * PI * PI * up_to * up_to};
    const size_t n = (size_t)frame->unknowns;
    double *vectors = tt_alloc(4 * n, sizeof *vectors);
    *modes = (tt_modes){0};
    tt_status status = TT_E_NOMEM;
    s.bodies = tt_alloc(2 * frame->bodies.n, sizeof *s.bodies);
    s.moved = tt_alloc(frame->nodes.n, sizeof *s.moved);
    if (vectors && s.bodies && s.moved) {
        for (int d = 0; d < 3; d++) s.push[d] = vectors + (size_t)d * n;
        s.product = vectors + 3 * n;
        status = n ? run(&s, pool, modes) : TT_OK;
    }
    tt_eigen_free(&s.found);
    tt_free(s.bodies);
    tt_free(s.moved);
    tt_free(vectors);
    return status;
}
