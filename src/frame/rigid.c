/* frame/rigid.c - six moves or six forces carried along a rigid arm, and turned between axes; the
 * same for the rows and columns of matrices. SI. */
#include "frame/parts.h"

#include <string.h>

tt_vec3 tt_six_first(const double six[TT_SIX])
{
    return (tt_vec3){six[0], six[1], six[2]};
}

tt_vec3 tt_six_last(const double six[TT_SIX])
{
    return (tt_vec3){six[3], six[4], six[5]};
}

static void put(tt_vec3 a, tt_vec3 b, double out[TT_SIX])
{
    const double six[TT_SIX] = {a.x, a.y, a.z, b.x, b.y, b.z};
    memcpy(out, six, sizeof six);
}

/* u + theta x arm */
void tt_six_moved(tt_vec3 arm, const double six[TT_SIX], double out[TT_SIX])
{
    put(tt_add(tt_six_first(six), tt_cross(tt_six_last(six), arm)), tt_six_last(six), out);
}

/* M + arm x F */
void tt_six_brought(tt_vec3 arm, const double six[TT_SIX], double sum[TT_SIX])
{
    put(tt_add(tt_six_first(sum), tt_six_first(six)),
        tt_add(tt_six_last(sum), tt_add(tt_six_last(six), tt_cross(arm, tt_six_first(six)))), sum);
}

static bool nil(tt_vec3 v)
{
    return v.x == 0.0 && v.y == 0.0 && v.z == 0.0;
}

void tt_rigid_rows(tt_mat6 *m, tt_vec3 arm)
{
    if (nil(arm)) return;
    for (int c = 0; c < TT_SIX; c++) {
        const double x = m->at[0][c], y = m->at[1][c], z = m->at[2][c];
        m->at[3][c] += arm.y * z - arm.z * y;
        m->at[4][c] += arm.z * x - arm.x * z;
        m->at[5][c] += arm.x * y - arm.y * x;
    }
}

void tt_rigid_columns(tt_mat6 *m, tt_vec3 arm)
{
    if (nil(arm)) return;
    for (int r = 0; r < TT_SIX; r++) {
        double *row = m->at[r];
        row[3] += arm.y * row[2] - arm.z * row[1];
        row[4] += arm.z * row[0] - arm.x * row[2];
        row[5] += arm.x * row[1] - arm.y * row[0];
    }
}

/* F = mass (u + theta x arm), M = inertia theta + arm x F, for each column. */
void tt_rigid_mass(double mass, tt_vec3 arm, const double inertia[3], tt_mat6 *m)
{
    for (int c = 0; c < TT_SIX; c++) {
        const tt_vec3 move = {m->at[0][c], m->at[1][c], m->at[2][c]};
        const tt_vec3 turn = {m->at[3][c], m->at[4][c], m->at[5][c]};
        const tt_vec3 force = tt_scale(tt_add(move, tt_cross(turn, arm)), mass);
        const tt_vec3 moment = tt_cross(arm, force);
        m->at[0][c] = force.x;
        m->at[1][c] = force.y;
        m->at[2][c] = force.z;
        m->at[3][c] = inertia[0] * turn.x + moment.x;
        m->at[4][c] = inertia[1] * turn.y + moment.y;
        m->at[5][c] = inertia[2] * turn.z + moment.z;
    }
}

tt_mat6 tt_unit_matrix(void)
{
    tt_mat6 one = {{{0}}};
    for (int i = 0; i < TT_SIX; i++) one.at[i][i] = 1.0;
    return one;
}

void tt_six_global(const tt_axes *axes, const double local[TT_SIX], double out[TT_SIX])
{
    put(tt_to_global(axes, tt_six_first(local)), tt_to_global(axes, tt_six_last(local)), out);
}

void tt_six_local(const tt_axes *axes, const double global[TT_SIX], double out[TT_SIX])
{
    put(tt_to_local(axes, tt_six_first(global)), tt_to_local(axes, tt_six_last(global)), out);
}

/* R' m R: the rows first, then the columns. */
tt_mat6 tt_turned(const tt_axes *axes, const tt_mat6 *local)
{
    tt_mat6 rows, out;
    for (int r = 0; r < TT_SIX; r++) tt_six_global(axes, local->at[r], rows.at[r]);
    for (int r = 0; r < TT_SIX; r += 3) {
        const double *x = rows.at[r], *y = rows.at[r + 1], *z = rows.at[r + 2];
        for (int c = 0; c < TT_SIX; c++) {
            out.at[r][c] = axes->x.x * x[c] + axes->y.x * y[c] + axes->z.x * z[c];
            out.at[r + 1][c] = axes->x.y * x[c] + axes->y.y * y[c] + axes->z.y * z[c];
            out.at[r + 2][c] = axes->x.z * x[c] + axes->y.z * y[c] + axes->z.z * z[c];
        }
    }
    return out;
}
