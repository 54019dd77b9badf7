/* frame/lever.c - forces on arms that turn: a force F at the arm r from its node moves by
 * theta x r + theta x (theta x r) / 2; of second order is F . that = ((F . theta) (r . theta) -
 * (F . r) theta^2) / 2. SI, global axes. */
#include "frame/parts.h"

tt_mat6 tt_lever_matrix(const double lever[3][3])
{
    tt_mat6 m = {{{0}}};
    const double trace = lever[0][0] + lever[1][1] + lever[2][2];
    for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) m.at[3 + i][3 + j] = 0.5 * (lever[i][j] + lever[j][i]);
        m.at[3 + i][3 + i] -= trace;
    }
    return m;
}

void tt_node_lever(const tt_frame *frame, const tt_frame_load *load, size_t node,
                   const double on_node[TT_SIX], double lever[3][3])
{
    const tt_vec3 at = tt_arm(frame, node);
    const double arm[3] = {at.x, at.y, at.z};
    for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
            lever[i][j] = on_node[i] * arm[j] - (load->lever ? load->lever[node][i][j] : 0.0);
        }
    }
}
