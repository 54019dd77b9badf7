/* piece/works.c - look-ups in what is said of how the piece is made; the mass of its base. kg. */
#include "piece/works.h"

#include <string.h>

void tt_works_clear(tt_works *works)
{
    tt_list_clear(&works->rack);
    tt_list_clear(&works->seam);
    tt_list_clear(&works->splices);
    tt_list_clear(&works->ties);
    tt_list_clear(&works->holes);
    tt_list_clear(&works->panels);
    tt_list_clear(&works->weighings);
}

const tt_seam *tt_piece_seam(const tt_piece *piece, size_t segment, bool at_end)
{
    const tt_works *works = piece->works;
    const size_t point = at_end ? piece->segments.at[segment].to : piece->segments.at[segment].from;
    const tt_seam *at_large = NULL;
    for (size_t i = 0; i < works->seam.n; i++) {
        const tt_seam *seam = &works->seam.at[i];
        if (seam->at != point) continue;
        if (seam->between[0] == segment || seam->between[1] == segment) return seam;
        if (seam->between[0] == TT_NONE) at_large = seam;
    }
    return at_large;
}

size_t tt_piece_panel(const tt_piece *piece, const char *name)
{
    for (size_t i = 0; i < piece->works->panels.n; i++) {
        if (strcmp(piece->works->panels.at[i].name, name) == 0) return i;
    }
    return TT_NONE;
}

static bool ends_at(const tt_segment *segment, size_t point)
{
    return segment->from == point || segment->to == point;
}

bool tt_segments_meet(const tt_piece *piece, size_t a, size_t b, size_t point)
{
    return a != b && ends_at(&piece->segments.at[a], point) &&
           ends_at(&piece->segments.at[b], point);
}

double tt_weighing_net(const tt_weighing *weighing)
{
    return weighing->mass.is - weighing->tare.is - weighing->gates.is;
}

/* The heavy end of general figures for building stones; plain concrete of 24 kN/m3, EN 1991-1-1
 * (FROM MEMORY). */
static const double densities[] = {3000, 2700, 2700, 2600, 2447};
const char *const tt_pedestal_words[] = {"granite",   "marble",   "limestone",
                                         "sandstone", "concrete", NULL};

double tt_pedestal_density(int material)
{
    return densities[material];
}

double tt_base_mass(const tt_piece *piece)
{
    const tt_base *base = &piece->works->base;
    const tt_plate *plate = &base->plate;
    double mass = 0.0;
    if (base->has_plate && plate->metal != TT_NONE)
        mass += piece->metals.at[plate->metal].fact[TT_P_DENSITY].value * plate->wide *
                plate->deep * plate->thickness;
    if (base->has_pedestal)
        mass += tt_pedestal_density(base->pedestal.material) * base->pedestal.wide *
                base->pedestal.deep * base->pedestal.high;
    return mass;
}
