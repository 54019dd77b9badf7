/* piecefile/keys_works.c - the key table, third part: how the piece is made and set up. Nothing
 * here follows the scale. Fields of the records of piece/works.h and of the drafts of works.h. */
#include "piecefile/works.h"

#define COUNTED(keys) (keys), sizeof(keys) / sizeof *(keys)
#define ROOM .least = -TT_LONGEST, .most = TT_LONGEST
#define SIZE .least = TT_SHORTEST, .most = TT_LONGEST
#define A_LENGTH .dimension = TT_Q_LENGTH
#define HEAVIEST 1e7 /* kg */
#define IN(record, field) offsetof(record, field)

static const char *const seam_words[] = {"unknown", "none", "partial", "full", NULL};
/* One that is welded in part has an efficiency of its own, and so an entry. */
static const char *const default_words[] = {"unknown", "none", "full", NULL};
static const char *const tie_words[] = {"lug", "pin", "fill", "saddle", NULL};
static const char *const hole_words[] = {"bronze", "armature", NULL};
static const char *const anchor_words[] = {"concrete", "stone", NULL};

/* ---- what would use a key, and is not built yet ---- */

static const tt_consumer no_hole = {"holes", "the hole was not taken off the section that it is in",
                                    NULL, true, NULL};
static const tt_consumer no_weld = {
    "splice.weld", "welded joints of the armature are not computed yet", NULL, true, NULL};
static const tt_consumer no_socket = {"splice.socket", "sockets are not computed yet", NULL, true,
                                      NULL};
static const tt_consumer no_flange = {"splice.flange", "flanges are not computed yet", NULL, true,
                                      NULL};
static const tt_consumer no_lug = {"splice.lug", "lugs of the armature are not computed yet", NULL,
                                   true, NULL};
static const tt_consumer no_tie = {
    "transfer", "what ties bronze and armature here is not computed yet", NULL, true, NULL};
static const tt_consumer no_plate = {"plate", "the plate and the welds to it are not computed yet",
                                     NULL, true, NULL};
static const tt_consumer no_anchors = {"anchors", "rods and what they sit in are not computed yet",
                                       NULL, true, NULL};
static const tt_consumer no_pedestal = {"pedestal", "the pedestal is not computed yet", NULL, true,
                                        NULL};
static const tt_consumer no_footing = {"footing", "footing and soil are not computed yet", NULL,
                                       true, NULL};
static const tt_consumer no_hang = {
    "balance", "how it hung was not compared with the centre of mass", NULL, false, NULL};

/* ---- the bronze ---- */

static const tt_key seam[] = {
    {"default", TT_KEY_WORD, IN(tt_seam_draft, at_large), .words = default_words,
     .doc = "how every seam is welded that no other entry names", .example = "default: unknown"},
    {"at", TT_KEY_PLACE, IN(tt_seam_draft, seam.at), .doc = "the place of the seam",
     .example = "at: ankle"},
    {"between", TT_KEY_LATER, IN(tt_seam_draft, between), .form = TT_FORM_NAMES,
     .doc = "beside `at`, which is needed too: the two segments that the seam joins, where more "
            "than two meet at that place",
     .example = "between: [toe-hock, hock-body]"},
    {"bronze", TT_KEY_WORD, IN(tt_seam_draft, kind), .words = seam_words,
     .doc = "welded through, in part (with its efficiency), cast in one (none), or unknown",
     .example = "bronze: full"},
    {"efficiency", TT_KEY_GIVEN, IN(tt_seam_draft, seam.efficiency), TT_Q_PURE, 0, 1,
     .why = "by the alloy",
     .doc = "share of the strength of the casting; more than the alloy's table "
            "needs a reason",
     .example = "efficiency: 0.6"},
    {"filler", TT_KEY_TEXT, IN(tt_seam_draft, seam.filler),
     .doc = "the rod it is welded with, from the table or own", .example = "filler: ERCuSi-A"},
    {"because", TT_KEY_TEXT, IN(tt_seam_draft, seam.because), .doc = "the reason",
     .example = "because: \"TIG, all round\""},
};
const tt_map tt_seam_map = {"a seam", COUNTED(seam), NULL};

static const tt_key hole[] = {
    {"segment", TT_KEY_OWN, IN(tt_hole, segment), .read = tt_read_segment_name, .required = true,
     .form = TT_FORM_WORDS, .doc = "the segment it is in", .example = "segment: toe-hock"},
    {"x", TT_KEY_NUMBER, IN(tt_hole, x), TT_Q_PURE, 0, 1, .required = true,
     .doc = "where along it, a fraction of its length", .example = "x: 0.1"},
    {"across", TT_KEY_NUMBER, IN(tt_hole, across), A_LENGTH, SIZE, .required = true,
     .consumer = &no_hole, .doc = "its diameter", .example = "across: 12 mm"},
    {"in", TT_KEY_WORD, IN(tt_hole, in_armature), .required = true, .words = hole_words,
     .doc = "bronze | armature", .example = "in: armature"},
    {"angle", TT_KEY_NUMBER, IN(tt_hole, angle), TT_Q_ANGLE, -6.3, 6.3, .why = "the worst angle",
     .doc = "round the limb, right-handed from local y", .example = "angle: 90 deg"},
};
const tt_map tt_hole_map = {"a hole", COUNTED(hole), NULL};

/* ---- the armature ---- */

static const tt_key rack[] = {
    {"grade", TT_KEY_OWN, IN(tt_rack_draft, grade), .read = tt_read_grade, .required = true,
     .form = TT_FORM_WORDS, .doc = "its steel", .example = "grade: \"1.4404\""},
    {"length", TT_KEY_NUMBER, IN(tt_rack_draft, item.length), A_LENGTH, SIZE, .required = true,
     .doc = "length of one", .example = "length: 6 m"},
    {"count", TT_KEY_COUNT, IN(tt_rack_draft, item.count), .least = 1, .most = 99999,
     .otherwise = "1", .why = "one lies there", .doc = "how many", .example = "count: 2"},
};
const tt_map tt_rack_map = {"an entry of the rack", COUNTED(rack), &tt_member_map};

static const tt_key weld[] = {
    {"throat", TT_KEY_NUMBER, IN(tt_splice, throat), A_LENGTH, SIZE, .required = true,
     .doc = "throat of the weld", .example = "throat: 4 mm"},
};
const tt_map tt_splice_weld_map = {"a welded splice", COUNTED(weld), NULL};
static const tt_key socket[] = {
    {"insert", TT_KEY_NUMBER, IN(tt_splice, insert), A_LENGTH, SIZE, .required = true,
     .doc = "how deep the one stands in the other", .example = "insert: 120 mm"},
    {"pin", TT_KEY_NUMBER, IN(tt_splice, pin), A_LENGTH, SIZE, .doc = "diameter of its pin",
     .example = "pin: 12 mm"},
    {"inner", TT_KEY_OWN, IN(tt_splice, inner), .read = tt_read_inner, .map = &tt_member_map,
     .doc = "the part that stands in both, where there is one", .example = "inner: {bar: 24 mm}"},
};
const tt_map tt_splice_socket_map = {"a socket", COUNTED(socket), NULL};
static const tt_key flange[] = {
    {"diameter", TT_KEY_NUMBER, IN(tt_splice, diameter), A_LENGTH, SIZE, .required = true,
     .doc = "of the flanges", .example = "diameter: 180 mm"},
    {"thickness", TT_KEY_NUMBER, IN(tt_splice, thickness), A_LENGTH, SIZE, .required = true,
     .doc = "of one", .example = "thickness: 15 mm"},
    {"bolts", TT_KEY_OWN, 0, .read = tt_read_bolts, .required = true,
     .doc = "number, size, diameter of their circle", .example = "bolts: [4, M12, 140 mm]"},
};
const tt_map tt_splice_flange_map = {"a flange", COUNTED(flange), NULL};
static const tt_key lug[] = {
    {"thickness", TT_KEY_NUMBER, IN(tt_splice, thickness), A_LENGTH, SIZE, .required = true,
     .doc = "of the lug", .example = "thickness: 12 mm"},
    {"hole", TT_KEY_NUMBER, IN(tt_splice, hole), A_LENGTH, SIZE, .required = true,
     .doc = "its diameter", .example = "hole: 18 mm"},
    {"edge", TT_KEY_NUMBER, IN(tt_splice, edge), A_LENGTH, SIZE, .required = true,
     .doc = "from the middle of the hole to the edge", .example = "edge: 30 mm"},
};
const tt_map tt_splice_lug_map = {"a lug", COUNTED(lug), NULL};

static const tt_key splice[] = {
    {"at", TT_KEY_PLACE, IN(tt_splice, at), .required = true, .doc = "the place of the joint",
     .example = "at: ankle"},
    {"between", TT_KEY_OWN, IN(tt_splice, between), .read = tt_read_between, .form = TT_FORM_NAMES,
     .doc = "the two segments, where more than two members meet",
     .example = "between: [toe-hock, hock-body]"},
    {"weld", TT_KEY_MAP, 0, .map = &tt_splice_weld_map, .consumer = &no_weld,
     .doc = "welded end to end", .example = "weld: {throat: 4 mm}"},
    {"socket", TT_KEY_MAP, 0, .map = &tt_splice_socket_map, .consumer = &no_socket,
     .doc = "one stands in the other", .example = "socket: {insert: 120 mm, pin: 12 mm}"},
    {"flange", TT_KEY_MAP, 0, .map = &tt_splice_flange_map, .consumer = &no_flange,
     .doc = "two flanges and bolts",
     .example = "flange: {diameter: 180 mm, thickness: 15 mm, bolts: [4, M12, 140 mm]}"},
    {"lug", TT_KEY_MAP, 0, .map = &tt_splice_lug_map, .consumer = &no_lug, .doc = "a lug and a pin",
     .example = "lug: {thickness: 12 mm, hole: 18 mm, edge: 30 mm}"},
};
const tt_map tt_splice_map = {"a splice", COUNTED(splice), NULL};

static const tt_key tie_weld[] = {
    {"throat", TT_KEY_NUMBER, IN(tt_tie, throat), A_LENGTH, SIZE, .required = true,
     .doc = "throat of the weld", .example = "throat: 3 mm"},
    {"length", TT_KEY_NUMBER, IN(tt_tie, length), A_LENGTH, SIZE, .required = true,
     .doc = "its length, of one", .example = "length: 40 mm"},
};
const tt_map tt_tie_weld_map = {"the weld of an attachment", COUNTED(tie_weld), NULL};
static const tt_key tie[] = {
    {"at", TT_KEY_PLACE, IN(tt_tie, at), .required = true, .doc = "the place where they are tied",
     .example = "at: hock"},
    {"kind", TT_KEY_WORD, IN(tt_tie, kind), .required = true, .words = tie_words,
     .consumer = &no_tie, .doc = "lug | pin | fill | saddle", .example = "kind: lug"},
    {"weld", TT_KEY_MAP, 0, .map = &tt_tie_weld_map, .doc = "its weld",
     .example = "weld: {throat: 3 mm, length: 40 mm}"},
    {"count", TT_KEY_COUNT, IN(tt_tie, count), .least = 1, .most = 99, .otherwise = "1",
     .why = "one at each place", .doc = "how many there", .example = "count: 2"},
};
const tt_map tt_tie_map = {"an attachment", COUNTED(tie), NULL};

/* ---- the base ---- */

static const tt_key plate[] = {
    {"size", TT_KEY_OWN, IN(tt_base, plate), A_LENGTH, SIZE, .read = tt_read_size, .required = true,
     .form = TT_FORM_PAIR, .doc = "along x and y", .example = "size: [450 mm, 350 mm]"},
    {"thickness", TT_KEY_NUMBER, IN(tt_base, plate.thickness), A_LENGTH, SIZE, .required = true,
     .doc = "of the plate", .example = "thickness: 25 mm"},
    {"grade", TT_KEY_OWN, IN(tt_base, plate.metal), .read = tt_read_plate_grade, .required = true,
     .form = TT_FORM_WORDS, .doc = "its steel", .example = "grade: S355"},
};
const tt_map tt_plate_map = {"the plate", COUNTED(plate), NULL};

static const tt_key tested[] = {
    {"tension", TT_KEY_NUMBER, IN(tt_base, anchors.tested_tension), TT_Q_FORCE, 1, 1e8,
     .required = true, .doc = "what one was pulled with", .example = "tension: 30 kN"},
    {"shear", TT_KEY_NUMBER, IN(tt_base, anchors.tested_shear), TT_Q_FORCE, 1, 1e8,
     .required = true, .doc = "what one was pushed with, level", .example = "shear: 20 kN"},
    {"by", TT_KEY_TEXT, IN(tt_base, anchors.tested_by), .required = true, .doc = "who tested",
     .example = "by: the quarry's laboratory"},
};
const tt_map tt_tested_map = {"the test of anchors", COUNTED(tested), NULL};

static const tt_key anchors[] = {
    {"rod", TT_KEY_OWN, IN(tt_base, anchors), .read = tt_read_rod, .required = true,
     .doc = "M and the diameter in mm, or a diameter", .example = "rod: M16"},
    {"grade", TT_KEY_TEXT, IN(tt_base, anchors.grade), .required = true, .doc = "its grade",
     .example = "grade: A4-70"},
    {"at", TT_KEY_OWN, IN(tt_base, anchors), A_LENGTH, ROOM, .read = tt_read_corners,
     .required = true, .form = TT_FORM_ANY,
     .doc = "where the rods stand, from the middle of the plate",
     .example = "at: [[-170 mm, -130 mm], [170 mm, -130 mm], [170 mm, 130 mm], [-170 mm, 130 mm]]"},
    {"embedment", TT_KEY_NUMBER, IN(tt_base, anchors.embedment), A_LENGTH, SIZE, .required = true,
     .doc = "how deep they are set", .example = "embedment: 200 mm"},
    {"in", TT_KEY_WORD, IN(tt_base, anchors.in), .required = true, .words = anchor_words,
     .doc = "concrete | stone", .example = "in: concrete"},
    {"standoff", TT_KEY_NUMBER, IN(tt_base, anchors.standoff), A_LENGTH, 0, 5, .otherwise = "0",
     .why = "the plate lies on grout or on what it is set in", .doc = "free length under the plate",
     .example = "standoff: 0"},
    {"tested", TT_KEY_MAP, 0, .map = &tt_tested_map, .doc = "a test in the stone itself",
     .example = "tested: {tension: 30 kN, shear: 20 kN, by: the quarry's laboratory}"},
};
const tt_map tt_anchors_map = {"the anchors", COUNTED(anchors), NULL};

static const tt_key concrete[] = {
    {"strength", TT_KEY_NUMBER, IN(tt_base, concrete.strength), TT_Q_PRESSURE, 5e6, 200e6,
     .required = true, .doc = "eu fck of a cylinder, us f'c", .example = "strength: 30 MPa"},
    {"thickness", TT_KEY_NUMBER, IN(tt_base, concrete.thickness), A_LENGTH, SIZE, .required = true,
     .doc = "of what the anchors are set in", .example = "thickness: 600 mm"},
    {"edge", TT_KEY_NUMBER, IN(tt_base, concrete.edge), A_LENGTH, SIZE,
     .doc = "from the outermost rod to the nearest edge", .example = "edge: 250 mm"},
    {"cracked", TT_KEY_FLAG, IN(tt_base_draft, cracked), .otherwise = "yes",
     .why = "concrete in the open cracks", .doc = "it may crack where the anchors are",
     .example = "cracked: yes"},
};
const tt_map tt_concrete_map = {"the concrete", COUNTED(concrete), NULL};

static const tt_key pedestal[] = {
    {"size", TT_KEY_OWN, IN(tt_base, pedestal), A_LENGTH, SIZE, .read = tt_read_size,
     .required = true, .form = TT_FORM_TRIPLE, .doc = "along x, y and z",
     .example = "size: [900 mm, 700 mm, 600 mm]"},
    {"material", TT_KEY_WORD, IN(tt_base, pedestal.material), .required = true,
     .words = tt_pedestal_words, .doc = "what it is of", .example = "material: granite"},
};
const tt_map tt_pedestal_map = {"the pedestal", COUNTED(pedestal), NULL};

static const tt_key soil[] = {
    {"bearing", TT_KEY_NUMBER, IN(tt_base, footing.bearing), TT_Q_PRESSURE, 1e3, 1e8,
     .required = true, .doc = "what the soil may be pressed with", .example = "bearing: 150 kPa"},
    {"friction", TT_KEY_NUMBER, IN(tt_base, footing.friction), TT_Q_PURE, 0, 2,
     .doc = "under the footing", .example = "friction: 0.45"},
};
const tt_map tt_soil_map = {"the soil", COUNTED(soil), NULL};
static const tt_key footing[] = {
    {"size", TT_KEY_OWN, IN(tt_base, footing), A_LENGTH, SIZE, .read = tt_read_size,
     .required = true, .form = TT_FORM_TRIPLE, .doc = "along x, y and z",
     .example = "size: [1500 mm, 1500 mm, 500 mm]"},
    {"soil", TT_KEY_MAP, 0, .map = &tt_soil_map, .doc = "what it lies on",
     .example = "soil: {bearing: 150 kPa, friction: 0.45}"},
};
const tt_map tt_footing_map = {"the footing", COUNTED(footing), NULL};

static const tt_key base[] = {
    {"plate", TT_KEY_MAP, 0, .map = &tt_plate_map, .consumer = &no_plate,
     .doc = "the steel plate under it",
     .example = "plate: {size: [450 mm, 350 mm], thickness: 25 mm, grade: S355}"},
    {"anchors", TT_KEY_MAP, 0, .map = &tt_anchors_map, .consumer = &no_anchors,
     .doc = "rods that hold it down",
     .example =
         "anchors: {rod: M16, grade: A4-70, at: [[-170 mm, 0], [170 mm, 0]], embedment: 200 mm, "
         "in: concrete}"},
    {"grout", TT_KEY_NUMBER, IN(tt_base, grout), A_LENGTH, 0, 1, .doc = "thickness under the plate",
     .example = "grout: 20 mm"},
    {"concrete", TT_KEY_MAP, 0, .map = &tt_concrete_map, .doc = "what the anchors are set in",
     .example = "concrete: {strength: 30 MPa, thickness: 600 mm, edge: 250 mm}"},
    {"pedestal", TT_KEY_MAP, 0, .map = &tt_pedestal_map, .consumer = &no_pedestal,
     .doc = "what it stands on",
     .example = "pedestal: {size: [900 mm, 700 mm, 600 mm], material: granite}"},
    {"footing", TT_KEY_MAP, 0, .map = &tt_footing_map, .consumer = &no_footing,
     .doc = "what is in the ground",
     .example = "footing: {size: [1500 mm, 1500 mm, 500 mm], soil: {bearing: 150 kPa}}"},
};
const tt_map tt_base_map = {"the base", COUNTED(base), NULL};

/* ---- weighing ---- */

static const tt_key hang[] = {
    {"at", TT_KEY_PLACE, IN(tt_hang, at), .required = true, .doc = "the place it hung from",
     .example = "at: body"},
    {"plumb", TT_KEY_OWN, IN(tt_hang, plumb), A_LENGTH, ROOM, .read = tt_read_plumb,
     .required = true, .form = TT_FORM_PAIR, .doc = "how far the plumb line missed, two ways",
     .example = "plumb: [12 mm, -4 mm]"},
};
const tt_map tt_hang_map = {"a hang", COUNTED(hang), NULL};

static const tt_key weighing[] = {
    {"segment", TT_KEY_OWN, IN(tt_weighing_draft, segment), .read = tt_read_weighed_segment,
     .form = TT_FORM_WORDS, .doc = "the segment that was weighed", .example = "segment: toe-hock"},
    {"panel", TT_KEY_OWN, IN(tt_weighing_draft, panel), .read = tt_read_panel_name,
     .form = TT_FORM_WORDS, .doc = "the panel that was weighed", .example = "panel: P3"},
    {"whole", TT_KEY_FLAG, IN(tt_weighing_draft, whole),
     .doc = "all of it: bronze, armature and lumps together", .example = "whole: yes"},
    {"wax", TT_KEY_GIVEN, IN(tt_weighing_draft, wax), TT_Q_MASS, 1e-6, HEAVIEST,
     .doc = "what the wax weighs", .example = "wax: 0.42 kg"},
    {"bronze", TT_KEY_GIVEN, IN(tt_weighing_draft, bronze), TT_Q_MASS, 1e-6, HEAVIEST,
     .doc = "what the casting weighs", .example = "bronze: 61 kg"},
    {"tare", TT_KEY_GIVEN, IN(tt_weighing_draft, weighing.tare), TT_Q_MASS, 0, HEAVIEST,
     .otherwise = "0", .why = "where none is given: nothing else lay on the scales",
     .doc = "slings, cradle, core that were weighed with it", .example = "tare: 2 kg"},
    {"gates", TT_KEY_GIVEN, IN(tt_weighing_draft, weighing.gates), TT_Q_MASS, 0, HEAVIEST,
     .otherwise = "0", .why = "where none are given: they were cut off",
     .doc = "gates and sprues that are still to come off", .example = "gates: 0.3 kg"},
    {"wax_density", TT_KEY_GIVEN, IN(tt_weighing_draft, weighing.wax_density), TT_Q_DENSITY, 700,
     1300, .otherwise = "930 kg/m3", .why = "sculpture wax, 920 to 940 kg/m3 (from memory)",
     .doc = "density of the wax", .example = "wax_density: 960 kg/m3"},
    {"not_in_wax", TT_KEY_GIVEN, IN(tt_weighing_draft, weighing.not_in_wax), TT_Q_PURE, 0, 3,
     .otherwise = "0",
     .why = "where nothing is given: the wax was all of the part: assumption of this program",
     .share = true, .doc = "bronze that the wax does not show: ribs, welds, chasing",
     .example = "not_in_wax: 5 %"},
    {"day", TT_KEY_OWN, IN(tt_weighing_draft, weighing.day), .read = tt_read_date,
     .doc = "day of the weighing", .example = "day: 2026-03-02"},
    {"by", TT_KEY_TEXT, IN(tt_weighing_draft, weighing.by), .doc = "who weighed",
     .example = "by: foundry"},
    {"hangs", TT_KEY_LIST, IN(tt_weighing_draft, weighing), .read = tt_read_hangs,
     .map = &tt_hang_map, .consumer = &no_hang, .doc = "how it hung, for its centre of mass",
     .example = "hangs: [{at: body, plumb: [12 mm, -4 mm]}]"},
};
const tt_map tt_weighing_map = {"a weighing", COUNTED(weighing), NULL};

const tt_key tt_bolt_circle = {
    .name = "bolts", A_LENGTH, SIZE, .example = "bolts: [4, M12, 140 mm]"};
const tt_key tt_rod_diameter = {
    .name = "rod", A_LENGTH, .least = 0.003, .most = 0.2, .example = "rod: 5/8 in"};
const tt_key tt_panel_share = {.name = "share",
                               .dimension = TT_Q_PURE,
                               .least = 1e-4,
                               .most = 1,
                               .example = "panels: {P3: [body-neck, {hock-body: 40 %}]}"};
