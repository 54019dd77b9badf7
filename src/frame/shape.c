/* frame/shape.c - the size of a shape in which a frame swings or buckles. */
#include "frame/parts.h"

#include <math.h>

static double sized(const double six[TT_SIX], int first)
{
    return sqrt(six[first] * six[first] + six[first + 1] * six[first + 1] +
                six[first + 2] * six[first + 2]);
}

/* The node that moves (first 0) or turns (first 3) most; its size with the sign of its largest
 * part, so that the shape is the same whatever sign the iteration left. */
static double largest(const tt_frame *frame, double (*shape)[TT_SIX], int first)
{
    double most = 0.0, sign = 1.0;
    for (size_t i = 0; i < frame->nodes.n; i++) {
        const double size = sized(shape[i], first);
        if (size <= most * (1.0 + 1e-9)) continue;
        most = size;
        int lead = first;
        for (int d = first + 1; d < first + 3; d++) {
            if (fabs(shape[i][d]) > fabs(shape[i][lead]) * (1.0 + 1e-9)) lead = d;
        }
        sign = shape[i][lead] < 0.0 ? -1.0 : 1.0;
    }
    return sign * most;
}

void tt_shape_normalize(const tt_frame *frame, double (*shape)[TT_SIX])
{
    const double move = largest(frame, shape, 0), turn = largest(frame, shape, 3);
    const double unit = fabs(move) > 1e-9 * fabs(turn) ? move : turn;
    for (size_t i = 0; i < frame->nodes.n && unit != 0.0; i++) {
        for (int d = 0; d < TT_SIX; d++) shape[i][d] /= unit;
    }
}
