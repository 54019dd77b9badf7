/* check/works.c - what is described of how the piece is made and set up, and what no check of this
 * version computes from it: told by name and place. */
#include "check/parts.h"

static const char *at(const tt_check_input *in, size_t point)
{
    return in->piece->points.at[point].name;
}

static bool tell(tt_findings *out, const char *check, const char *where, const char *why)
{
    return where &&
           tt_unchecked_add(
               out, (tt_unchecked){.check = check, .where = where, .why = why, .needed = true});
}

static bool joints(const tt_check_input *in, tt_findings *out)
{
    static const char *const kinds[] = {
        [TT_SPLICE_WELD] = "a welded joint of the armature: this version does not compute it",
        [TT_SPLICE_SOCKET] = "a socket of the armature: this version does not compute it",
        [TT_SPLICE_FLANGE] = "a flange of the armature: this version does not compute it",
        [TT_SPLICE_LUG] = "a lug of the armature: this version does not compute it"};
    const tt_works *works = in->piece->works;
    bool fits = true;
    for (size_t i = 0; i < works->splices.n && fits; i++)
        fits =
            tell(out, "splices", at(in, works->splices.at[i].at), kinds[works->splices.at[i].kind]);
    for (size_t i = 0; i < works->ties.n && fits; i++)
        fits = tell(out, "transfer", at(in, works->ties.at[i].at),
                    "what ties bronze and armature here: this version does not compute it");
    for (size_t i = 0; i < works->holes.n && fits; i++) {
        const tt_hole *hole = &works->holes.at[i];
        fits = tell(out, "holes", tt_piece_where(in->piece, &out->pool, hole->segment, hole->x),
                    hole->in_armature
                        ? "a hole in the armature: this version does not take it off the section"
                        : "a hole in the bronze: this version does not take it off the section");
    }
    return fits;
}

static bool base(const tt_check_input *in, tt_findings *out)
{
    const tt_base *of = &in->piece->works->base;
    const struct {
        bool there;
        const char *check, *why;
    } rows[] = {
        {of->has_plate, "plate",
         "the plate and the welds to it: this version does not compute them"},
        {of->has_anchors, "anchors",
         of->anchors.in == TT_IN_STONE
             ? "rods in stone: no standard covers them; this version does not compare them with "
               "tests"
             : "rods and the concrete round them: this version does not compute them"},
        {of->has_pedestal, "pedestal", "the pedestal: this version does not compute it"},
        {of->has_footing, "footing", "footing and soil: this version does not compute them"},
    };
    bool fits = true;
    for (size_t i = 0; i < sizeof rows / sizeof *rows && fits; i++)
        fits = !rows[i].there || tell(out, rows[i].check, "the base", rows[i].why);
    return fits;
}

bool tt_unchecked_works(const tt_check_input *in, tt_findings *out)
{
    return joints(in, out) && base(in, out);
}
