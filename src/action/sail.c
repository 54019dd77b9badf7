/* action/sail.c - what the wind meets at a strip or a lump: width across it and force coefficient.
 */
#include "action/wind.h"

#include <math.h>

/* A box with rounded corners is drawn as a trace and blows as a box: that its corners shed the wind
 * more easily is not counted. */
static tt_shape shape_of(const tt_outline *outline)
{
    if (outline->kind == TT_OUTLINE_BOX || outline->corner > 0.0) return TT_SHAPE_BOX;
    if (outline->kind != TT_OUTLINE_ELLIPSE) return TT_SHAPE_OTHER;
    const bool round = fabs(outline->wide - outline->deep) <= 1e-9 * outline->wide;
    return round ? TT_SHAPE_ROUND : TT_SHAPE_OVAL;
}

tt_wind_cut tt_wind_on_strip(const tt_basis *basis, const tt_segment *segment,
                             const tt_strip *strip, tt_vec3 wind)
{
    const tt_vec3 across = tt_sub(wind, tt_scale(strip->axes.x, tt_dot(wind, strip->axes.x)));
    tt_wind_cut on = {.sine = tt_length(across), .across = across};
    if (segment->wind == TT_WIND_NONE || on.sine < 1e-12) return on;
    const tt_vec3 n = tt_scale(across, 1.0 / on.sine);
    const double ny = tt_dot(n, strip->axes.y), nz = tt_dot(n, strip->axes.z);
    on.width = tt_outline_width(&strip->outline, -nz, ny);
    const double along = tt_outline_width(&strip->outline, ny, nz);
    on.drag = segment->wind == TT_WIND_OWN_DRAG
                  ? segment->drag
                  : basis->drag(shape_of(&strip->outline), on.width, along, NULL);
    return on;
}

double tt_wind_lump_drag(const tt_basis *basis, const tt_lump *lump)
{
    return lump->drag > 0.0 ? lump->drag : basis->drag(TT_SHAPE_OTHER, 1.0, 1.0, NULL);
}
