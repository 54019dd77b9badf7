/* assess/cautions.c - what every result says, whatever it found. No option turns these off. */
#include "assess/assessment.h"

static const char *const cautions[] = {
    "These figures are for a licensed engineer of record to check and decide on, under the local "
    "codes. They do not replace that engineer.",
    "The piece was computed as an idealised frame of limbs. What the file does not describe was "
    "not computed.",
    "Castings scatter, and the strengths are those of test bars: ask the foundry for a poured test "
    "bar, and for a dye check at the necks and seams.",
    "How much the bronze carries beside its armature is unknown: both ends were computed and each "
    "part is judged by the worse of the two.",
    "Weigh the piece, and check again with its dimensions as built.",
    "The base was taken as held as described; if it turns, sway and buckling are worse. Ask who "
    "guarantees the setting.",
    "One support means no second chance: one crack or one loose anchor brings it down. Inspect "
    "yearly and after every gale, quake, crowd.",
    "A poised figure's ankle moment depends on where the metal went: weigh the parts on each side "
    "and find the balance point before the last panel closes.",
    "Wings and capes: coefficients are estimates; over 2 m2 of flat, or for a public place, ask "
    "for a wind specialist.",
    "Damping of bronze figures has not been measured; a tap test on the finished piece settles "
    "frequency and damping in an hour.",
    "The force between shell and armature goes through somebody's weld or pin: if it is not on the "
    "drawing it is not there.",
    "Leaded bronze seams carry nothing here; tin and silicon bronze seams only as well as they are "
    "welded and looked at.",
    "Carbon steel in a damp shell rusts unseen. Drain it, or do not use it.",
    "No standard covers pins in stone: have them pulled.",
    "People climb higher than anyone expects once they have a foothold.",
    "Vehicles, theft and sawing at the ankle are not computed.",
    "In a loop (two legs, two hands joined) the two carry models need not bound what happens: a "
    "limb may work alone while another works together.",
    "Lifting is for a competent rigger, with nobody under the load.",
    "Figures marked 'from memory' must be checked against the standard by the engineer before they "
    "are relied on.",
    NULL};

const char *const *tt_cautions(void)
{
    return cautions;
}
