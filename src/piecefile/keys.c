/* piecefile/keys.c - the key table, first part: the head of the file, metals, limbs, segments.
 * Order is the order of reading. Bounds are SI; where no source is named a bound is an assumption
 * of this program, wide enough to let every real piece through and to catch a slip of unit or
 * digit. */
#include "piecefile/works.h"

#define COUNTED(keys) (keys), sizeof(keys) / sizeof *(keys)
#define ROOM .least = -TT_LONGEST, .most = TT_LONGEST
#define SIZE .least = TT_SHORTEST, .most = TT_LONGEST
#define A_SPREAD .spread_low = 0.8, .spread_high = 1.25
#define A_LENGTH .dimension = TT_Q_LENGTH
#define FACING .words = axes, .form = TT_FORM_WORD | TT_FORM_TRIPLE

#define EU_EDITIONS "EN 1990:2002"
#define US_EDITIONS "7-16", "7-22"
static const char *const editions[] = {EU_EDITIONS, US_EDITIONS, NULL};
static const char *const reports[] = {"metric", "imperial", NULL};
static const char *const lengths[] = {"mm", "cm", "dm", "m", "km", "in", "ft", NULL};
static const char *const bases[] = {"eu", "us", NULL};
static const char *const axes[] = {"+x", "-x", "+y", "-y", "+z", "-z", NULL};
static const char *const nones[] = {"none", NULL};
static const char *const members[] = {"none", "choose", NULL};
static const char *const forms[] = {"tube", "bar", NULL};
static const char *const methods[] = {"lrfd", "asd", NULL};
static const char *const inspections[] = {"looked at", "penetrant", "radiograph", NULL};

/* ---- the head ---- */

static const tt_consumer no_asd = {
    "strength.armature",
    "the steel was judged by load and resistance factors, not by allowable "
    "strength",
    "method: lrfd", true, "lrfd"};

static const tt_consumer no_handling = {
    "handling", "lifting, laying down, transport: kept, not computed yet", NULL, false, NULL};

static const tt_key root[] = {
    {"units", TT_KEY_OWN, .read = tt_read_units, .map = &tt_units_map, .words = lengths,
     .doc = "unit of bare lengths, and of the report", .example = "units: mm"},
    {"scale", TT_KEY_OWN, .read = tt_read_scale, .map = &tt_scale_map, .dimension = TT_Q_PURE,
     .least = 1, .most = 1000, .otherwise = "1", .why = "the places are full size",
     .doc = "full size over measured size", .example = "scale: {measured: 600 mm, wanted: 2.1 m}"},
    {"piece", TT_KEY_TEXT, offsetof(tt_piece, name), .required = true,
     .doc = "the name of the piece", .example = "piece: Heron at the Weir"},
    {"revision", TT_KEY_TEXT, offsetof(tt_piece, revision), .doc = "revision of this description",
     .example = "revision: B"},
    {"basis", TT_KEY_OWN, .read = tt_read_basis, .words = bases, .otherwise = "eu",
     .why = "no basis was named", .doc = "design basis: eu | us", .example = "basis: eu"},
    {"edition", TT_KEY_OWN, .read = tt_read_edition, .words = editions,
     .doc = "edition of the basis", .why = "the first edition of that basis here",
     .example = "edition: 7-16"},
    {"method", TT_KEY_WORD, offsetof(tt_piece, method), .basis = TT_US, .words = methods,
     .consumer = &no_asd, .doc = "design of the steel: lrfd | asd", .example = "method: lrfd"},
    {"date", TT_KEY_OWN, offsetof(tt_piece, date), .read = tt_read_date, .form = TT_FORM_DATE,
     .doc = "date of the calculation", .example = "date: 2026-11-25"},
    {"risk", TT_KEY_COUNT, offsetof(tt_piece, risk), .least = 1, .most = 4, .otherwise = "2",
     .why = "ordinary consequences of a failure: eu CC2, us risk category II",
     .doc = "1 to 4: eu CC1, CC2, CC3, CC3; us risk category", .example = "risk: 2"},
    {"height", TT_KEY_NUMBER, offsetof(tt_piece, height), A_LENGTH, SIZE, .power = 1,
     .doc = "height of the tallest place over the underside", .example = "height: 1650 mm"},
    {"faces", TT_KEY_OWN, .read = tt_read_front, FACING, .otherwise = "+x",
     .why = "the front was not named", .doc = "where the front is", .example = "faces: +x"},
    {"site", TT_KEY_OWN, .read = tt_read_site, .map = &tt_site_map, .doc = "where it stands",
     .example = "site: {indoors: no}"},
    {"materials", TT_KEY_NAMES, .read = tt_read_materials, .map = &tt_material_map,
     .doc = "metals with one's own numbers", .example = "materials: {mill cert bar: {...}}"},
    {"bronze", TT_KEY_OWN, .read = tt_read_bronze, .map = &tt_bronze_map,
     .doc = "the bronze at large", .example = "bronze: {alloy: C87300, wall: 5 mm}"},
    {"armature", TT_KEY_OWN, .read = tt_read_armature_head, .map = &tt_armature_map,
     .doc = "defaults of the armature", .example = "armature: {grade: \"1.4462\"}"},
    {"points", TT_KEY_NAMES, .read = tt_read_points, A_LENGTH, ROOM, .power = 1,
     .form = TT_FORM_TRIPLE, .doc = "places, for the long form",
     .example = "points: {beak: [420, 60, 1600]}"},
    {"limbs", TT_KEY_NAMES, A_LENGTH, .read = tt_read_limbs, .map = &tt_limb_map,
     .form = TT_FORM_ROWS | TT_FORM_MAP, .doc = "chains of places",
     .example = "limbs: {leg: [[toe, 0, 0, 0, 46], [hip, 0, 0, 620, 90]]}"},
    {"segments", TT_KEY_LIST, .read = tt_read_segments, .map = &tt_segment_map,
     .doc = "segments in the long form, or what differs in a segment of a limb",
     .example = "segments: [{name: toe-hock, wall: 7 mm}]"},
    {"rigid", TT_KEY_LIST, .read = tt_read_rigid, .form = TT_FORM_NAMES,
     .doc = "pairs of places that move as one", .example = "rigid: [[chest, left shoulder]]"},
    {"lumps", TT_KEY_LIST, .read = tt_read_lumps, .map = &tt_lump_map, .doc = "masses at a place",
     .example = "lumps: [{name: fish, at: beak, mass: 3.5 kg}]"},
    {"stands", TT_KEY_LIST, .read = tt_read_stands, .map = &tt_stand_map, .doc = "where it is held",
     .example = "stands: [{at: toe, held: fixed}]"},
    {"loads", TT_KEY_LIST, .read = tt_read_loads, .map = &tt_load_map, .doc = "one's own loads",
     .example = "loads: [{case: banner, kind: variable, at: hand, force: [0, 0.4 kN, 0]}]"},
    {"limits", TT_KEY_OWN, .read = tt_read_limits, .map = &tt_limits_map,
     .doc = "what the piece must keep to", .example = "limits: {mass: 140 kg, sway: 1/100}"},
    {"combinations", TT_KEY_LIST, .read = tt_read_combinations, .map = &tt_combination_map,
     .doc = "one's own loads together",
     .example = "combinations: [{name: E1, level: strength, sum: {weight: 1.2, wind 90: 0.5}}]"},
    {"rack", TT_KEY_LIST, .read = tt_read_later, .map = &tt_rack_map,
     .doc = "tubes and bars that lie ready; choosing the armature is not in this version: kept, "
            "not used",
     .example = "rack: [{tube: [48.3 mm, 5 mm], grade: \"1.4404\", length: 6 m}]"},
    {"seams", TT_KEY_LIST, .read = tt_read_later, .map = &tt_seam_map, .doc = "seams of the bronze",
     .example = "seams: [{at: ankle, bronze: full}]"},
    {"splices", TT_KEY_LIST, .read = tt_read_later, .map = &tt_splice_map,
     .doc = "joints of the armature", .example = "splices: [{at: ankle, weld: {throat: 4 mm}}]"},
    {"attach", TT_KEY_LIST, .read = tt_read_later, .map = &tt_tie_map,
     .doc = "how bronze and armature are tied", .example = "attach: [{at: hock, kind: lug}]"},
    {"holes", TT_KEY_LIST, .read = tt_read_later, .map = &tt_hole_map,
     .doc = "holes in bronze or armature",
     .example = "holes: [{segment: toe-hock, x: 0.1, across: 12 mm, in: armature}]"},
    {"base", TT_KEY_OWN, .read = tt_read_later, .map = &tt_base_map,
     .doc = "plate, anchors, grout, pedestal, footing", .example = "base: {grout: 20 mm}"},
    {"panels", TT_KEY_NAMES, .read = tt_read_later,
     .doc = "parts of the bronze that are cast as one: segments, or shares of them",
     .example = "panels: {P3: [body-neck, {hock-body: 40 %}]}"},
    {"weighed", TT_KEY_OWN, .read = tt_read_later, .map = &tt_weighing_map,
     .form = TT_FORM_MAP | TT_FORM_TABLE,
     .doc = "what was weighed: later goes before earlier, bronze before wax",
     .example = "weighed: [{segment: toe-hock, wax: 0.42 kg}]"},
    {"handling", TT_KEY_OWN, .read = tt_read_later, .consumer = &no_handling,
     .doc = "lifting, laying down, carrying: kept as it is written", .example = "handling: []"},
};
const tt_map tt_root_map = {"the piece", COUNTED(root), NULL};

/* Units and scale are read by hand; their rows say what stands in them. */
static const tt_key units[] = {
    {"length", TT_KEY_OWN, .words = lengths, .doc = "unit of bare lengths",
     .example = "length: mm"},
    {"report", TT_KEY_WORD, offsetof(tt_piece, report), .words = reports,
     .doc = "units of the report", .example = "report: metric"},
};
const tt_map tt_units_map = {"units", COUNTED(units), NULL};

static const tt_key scale[] = {
    {"measured", TT_KEY_NUMBER, offsetof(tt_vec3, x), A_LENGTH, SIZE, .required = true,
     .doc = "a size as measured on the maquette", .example = "measured: 600 mm"},
    {"wanted", TT_KEY_NUMBER, offsetof(tt_vec3, y), A_LENGTH, SIZE, .required = true,
     .doc = "the same at full size", .example = "wanted: 2.1 m"},
};
const tt_map tt_scale_map = {"scale", COUNTED(scale), NULL};
const tt_key tt_set_scale = {
    .name = "--scale", .dimension = TT_Q_PURE, .least = 1, .most = 1000, .example = "--scale 3.5"};

static const char *const eu_editions[] = {EU_EDITIONS, NULL};
static const char *const us_editions[] = {US_EDITIONS, NULL};
const char *const *tt_editions(bool us)
{
    return us ? us_editions : eu_editions;
}

/* ---- metals; the fields of an own metal are its facts ---- */

#define FACT(id) offsetof(tt_own_metal, metal.fact[TT_P_##id].value)
static const tt_key material[] = {
    {"density", TT_KEY_NUMBER, FACT(DENSITY), TT_Q_DENSITY, 100, 30000, .required = true,
     .doc = "density", .example = "density: 7800 kg/m3"},
    {"young", TT_KEY_NUMBER, FACT(YOUNG_LOW), TT_Q_PRESSURE, 1e9, 2000e9, .required = true,
     .doc = "modulus of elasticity", .example = "young: 200 GPa"},
    {"poisson", TT_KEY_NUMBER, FACT(POISSON), TT_Q_PURE, 0, 0.49, .required = true,
     .doc = "Poisson's ratio", .example = "poisson: 0.3"},
    {"yield", TT_KEY_NUMBER, FACT(YIELD), TT_Q_PRESSURE, 1e6, 3000e6, .required = true,
     .doc = "yield strength, minimum", .example = "yield: 450 MPa"},
    {"ultimate", TT_KEY_NUMBER, FACT(ULTIMATE), TT_Q_PRESSURE, 1e6, 4000e6, .required = true,
     .doc = "tensile strength, minimum", .example = "ultimate: 640 MPa"},
    {"expansion", TT_KEY_NUMBER, FACT(EXPANSION), TT_Q_EXPANSION, 1e-7, 1e-4,
     .doc = "expansion by heat", .example = "expansion: 10.8e-6 1/K"},
    {"stainless", TT_KEY_FLAG, offsetof(tt_own_metal, stainless), .otherwise = "no",
     .why = "a steel that is not said to be stainless rusts",
     .doc = "a stainless steel: it loses nothing to rust, and has factors of its own",
     .example = "stainless: yes"},
};
const tt_map tt_material_map = {"a material", COUNTED(material), NULL};

/* What may be said of bronze at large, of a limb, of a segment: fields of tt_said. */
static const tt_key metal[] = {
    {"alloy", TT_KEY_OWN, offsetof(tt_said, alloy), .read = tt_read_alloy, .form = TT_FORM_WORDS,
     .doc = "alloy of the bronze, from the table or own", .example = "alloy: C87300"},
    {"wall", TT_KEY_SPREAD, offsetof(tt_said, wall), A_LENGTH, SIZE, A_SPREAD,
     .doc = "thickness of the bronze: 5 mm or {is, low, high}; without spread 0.8 to 1.25 of it",
     .example = "wall: 5 mm"},
    {"surface", TT_KEY_SPREAD, offsetof(tt_said, surface), TT_Q_PURE, 1, 5, .otherwise = "1.15",
     .why = "texture adds skin: assumption of this program",
     .doc = "true surface over the smooth outline; weight only", .example = "surface: 1.15"},
    {"extra", TT_KEY_SPREAD, offsetof(tt_said, extra), TT_Q_PURE, 0, 3, .otherwise = "10 %",
     .why = "ribs, sprue ends, chasing: assumption of this program", .share = true,
     .doc = "bronze beyond shell and texture; weight only", .example = "extra: 10 %"},
    {"casting_quality", TT_KEY_GIVEN, offsetof(tt_said, casting_quality), TT_Q_PURE, 0.01, 1,
     .why = "by how the castings are inspected and whether bronze alone carries",
     .reason = "above 0.8", .doc = "factor on the strength of the casting",
     .example = "casting_quality: 0.8"},
};
static const tt_map metal_map = {"bronze", COUNTED(metal), NULL};

static const tt_key bronze[] = {
    {"inspection", TT_KEY_WORD, offsetof(tt_bronze_draft, inspection), .words = inspections,
     .otherwise = "looked at", .why = "no inspection was named",
     .doc = "how the castings are inspected; at a neck that the bronze carries alone it decides the "
            "casting quality from half use on",
     .example = "inspection: looked at"},
};
const tt_map tt_bronze_map = {"bronze", COUNTED(bronze), &metal_map};

/* Fields of tt_reader. */
static const tt_key armature[] = {
    {"grade", TT_KEY_OWN, offsetof(tt_reader, grade), .read = tt_read_grade, .form = TT_FORM_WORDS,
     .doc = "steel of the armature, from the table or own", .example = "grade: \"1.4462\""},
    {"loss", TT_KEY_GIVEN, offsetof(tt_reader, loss), A_LENGTH, 0, 0.05,
     .reason = "when carbon steel outdoors loses nothing",
     .doc = "wall lost to rust, from the outside", .example = "loss: 1 mm"},
    {"wall_factor", TT_KEY_GIVEN, offsetof(tt_reader, wall_factor), TT_Q_PURE, 0.5, 1,
     .doc = "least wall of a tube over its nominal wall", .example = "wall_factor: 1.0"},
    {"form", TT_KEY_WORD, offsetof(tt_reader, form), .words = forms,
     .doc = "what shall be chosen; choosing the armature is not in this version: kept, not used",
     .example = "form: tube"},
    {"sealed", TT_KEY_FLAG, offsetof(tt_reader, sealed), .doc = "it is closed against water",
     .example = "sealed: no"},
};
const tt_map tt_armature_map = {"armature", COUNTED(armature), NULL};

/* ---- limbs and segments ---- */

static const tt_consumer no_open_shell = {
    "open.shell",
    "torsion counts as that of an open strip; where it turns about, how it warps and "
    "what a window's corners bear is not computed by this version",
    "what the opening is stiffened with is for an engineer", true, "no"};
static const tt_consumer no_seam_along = {
    "seam.along",
    "whether the lengthwise seam bears the shear in it is not computed by this version", NULL, true,
    NULL};
static const tt_consumer no_climbing = {
    "people", "people who climb, hang or push: this version does not compute it",
    "a load of your own there: loads: [{case: ..., kind: variable, at: ..., force: ...}]", false,
    "no"};
static const tt_key shape[] = {
    {"solid", TT_KEY_FLAG, offsetof(tt_said, solid), .doc = "cast solid", .example = "solid: yes"},
    {"faces", TT_KEY_OWN, offsetof(tt_said, faces), .read = tt_read_faces, FACING,
     .doc = "where its front is", .example = "faces: +x"},
    {"armature", TT_KEY_OWN, offsetof(tt_said, armature), .read = tt_read_armature,
     .words = members, .map = &tt_member_map,
     .doc = "steel inside, or none, or choose: choosing the armature is not in this version",
     .example = "armature: {tube: [33.7 mm, 4 mm]}"},
    {"wind", TT_KEY_OWN, offsetof(tt_said, wind), .read = tt_read_segment_wind, .words = nones,
     .map = &tt_drag_map, .doc = "own drag, or none",
     .example = "wind: {drag: 1.2, because: \"tested\"}"},
    {"open", TT_KEY_FLAG, offsetof(tt_said, open), .consumer = &no_open_shell,
     .doc = "a shell with a window or an unwelded lengthwise seam: no closed section for torsion",
     .example = "open: no"},
    {"seam_along", TT_KEY_GIVEN, offsetof(tt_said, seam_along), TT_Q_PURE, 0, 1,
     .consumer = &no_seam_along,
     .doc = "efficiency of a lengthwise seam; under 0.5 the shell counts as open",
     .example = "seam_along: 0.8"},
    {"climbable", TT_KEY_FLAG, offsetof(tt_said, climbable), .consumer = &no_climbing,
     .doc = "people can climb on it", .example = "climbable: yes"},
};
static const tt_map shape_map = {"a limb", COUNTED(shape), &metal_map};

static const tt_key limb[] = {
    {"rows", TT_KEY_LATER, offsetof(tt_limb_draft, rows), A_LENGTH, .power = 1, .required = true,
     .form = TT_FORM_ROWS, .doc = "its places: name, x, y, z, then girth, or wide and deep",
     .example = "rows: [[toe, 0, 0, 0, 46 mm], [hock, -15 mm, 60 mm, 620 mm, 58 mm]]"},
    {"joins", TT_KEY_LATER, offsetof(tt_limb_draft, joins), .form = TT_FORM_PLACE,
     .doc = "a rigid arm from that place to the first row", .example = "joins: chest"},
};
const tt_map tt_limb_map = {"a limb", COUNTED(limb), &shape_map};

static const tt_key segment[] = {
    {"name", TT_KEY_TEXT, offsetof(tt_draft, name), .required = true, .doc = "its name",
     .example = "name: bill"},
    {"from", TT_KEY_LATER, offsetof(tt_draft, from_node), .form = TT_FORM_PLACE,
     .doc = "its first place", .example = "from: crown"},
    {"to", TT_KEY_LATER, offsetof(tt_draft, to_node), .form = TT_FORM_PLACE,
     .doc = "its last place", .example = "to: beak"},
    {"outline", TT_KEY_LATER, offsetof(tt_draft, outline_node), .words = nones,
     .map = &tt_outline_map, .doc = "outside of the bronze at `from`",
     .example = "outline: {oval: [46 mm, 40 mm]}"},
    {"outline_to", TT_KEY_LATER, offsetof(tt_draft, outline_to_node), .words = nones,
     .map = &tt_outline_map, .doc = "the same at `to`; linear between",
     .example = "outline_to: {oval: [20 mm, 16 mm]}"},
    {"wall_to", TT_KEY_SPREAD, offsetof(tt_said, wall_to), A_LENGTH, SIZE, A_SPREAD,
     .doc = "thickness at `to`", .example = "wall_to: 4 mm"},
    {"turn", TT_KEY_GIVEN, offsetof(tt_said, turn), TT_Q_ANGLE, -6.3, 6.3,
     .doc = "turns wide and deep, right-handed about the axis", .example = "turn: 30 deg"},
    {"turn_to", TT_KEY_GIVEN, offsetof(tt_said, turn_to), TT_Q_ANGLE, -6.3, 6.3,
     .doc = "the same at `to`", .example = "turn_to: 30 deg"},
    {"armature_to", TT_KEY_OWN, offsetof(tt_said, armature_to), .read = tt_read_armature,
     .words = nones, .map = &tt_member_map, .doc = "steel at `to`",
     .example = "armature_to: {tube: [26.9 mm, 4 mm]}"},
};
const tt_map tt_segment_map = {"a segment", COUNTED(segment), &shape_map};

static const tt_key outline[] = {
    {"round", TT_KEY_OWN, A_LENGTH, SIZE, .power = 1, .doc = "outside diameter",
     .example = "round: 46 mm"},
    {"oval", TT_KEY_OWN, A_LENGTH, SIZE, .power = 1, .form = TT_FORM_PAIR,
     .doc = "outside widths of an ellipse", .example = "oval: [46 mm, 40 mm]"},
    {"box", TT_KEY_OWN, A_LENGTH, SIZE, .power = 1, .form = TT_FORM_PAIR,
     .doc = "outside widths of a rectangle", .example = "box: [46 mm, 40 mm]"},
    {"girth", TT_KEY_OWN, A_LENGTH, SIZE, .power = 1, .doc = "a tape around the limb",
     .example = "girth: 140 mm"},
    {"depth", TT_KEY_OWN, A_LENGTH, SIZE, .power = 1, .doc = "with girth: front to back",
     .example = "depth: 40 mm"},
    {"corner", TT_KEY_OWN, A_LENGTH, .least = 0, .most = TT_LONGEST, .power = 1,
     .doc = "with box: radius of its corners", .example = "corner: 5 mm"},
    {"trace", TT_KEY_OWN, A_LENGTH, ROOM, .power = 1, .form = TT_FORM_CORNERS | TT_FORM_TABLE,
     .doc = "a closed polygon of [y, z]; may be concave",
     .example = "trace: [[-20 mm, -15 mm], [25 mm, -15 mm], [0, 30 mm]]"},
    {"numbers", TT_KEY_OWN, .map = &tt_numbers_map, .doc = "an engineer's own properties",
     .example = "numbers: {area: 1800 mm2, iy: 42 cm4, ...}"},
};
const tt_map tt_outline_map = {"an outline", COUNTED(outline), NULL};

#define NUMBER(field) offsetof(tt_numbers_draft, field)
#define AN_AREA .dimension = TT_Q_AREA, .least = 1e-8, .most = 100
#define A_SECOND_MOMENT .dimension = TT_Q_SECOND_MOMENT, .least = 1e-16, .most = 1e4
static const tt_key numbers[] = {
    {"area", TT_KEY_NUMBER, NUMBER(is.area), AN_AREA, .required = true,
     .doc = "area of the metal, as it is", .example = "area: 1800 mm2"},
    {"iy", TT_KEY_NUMBER, NUMBER(is.iy), A_SECOND_MOMENT, .required = true,
     .doc = "second moment about local y: of z^2", .example = "iy: 42 cm4"},
    {"iz", TT_KEY_NUMBER, NUMBER(is.iz), A_SECOND_MOMENT, .required = true,
     .doc = "second moment about local z: of y^2", .example = "iz: 58 cm4"},
    {"iyz", TT_KEY_NUMBER, NUMBER(is.iyz), .dimension = TT_Q_SECOND_MOMENT, .least = -1e4,
     .most = 1e4, .doc = "product moment, + integral of y z; left out: none",
     .example = "iyz: -6 cm4"},
    {"j", TT_KEY_NUMBER, NUMBER(is.j), A_SECOND_MOMENT, .required = true,
     .doc = "torsion constant of St-Venant", .example = "j: 71 cm4"},
    {"shear_y", TT_KEY_NUMBER, NUMBER(is.shear_y), AN_AREA,
     .doc = "shear area for a force along y; left out: no shear strain that way",
     .example = "shear_y: 900 mm2"},
    {"shear_z", TT_KEY_NUMBER, NUMBER(is.shear_z), AN_AREA, .doc = "the same along z",
     .example = "shear_z: 800 mm2"},
    {"reach_y", TT_KEY_NUMBER, NUMBER(is.reach_y), A_LENGTH, SIZE, .required = true,
     .doc = "largest |y| of a fibre", .example = "reach_y: 40 mm"},
    {"reach_z", TT_KEY_NUMBER, NUMBER(is.reach_z), A_LENGTH, SIZE, .required = true,
     .doc = "largest |z| of a fibre", .example = "reach_z: 35 mm"},
    {"width_y", TT_KEY_NUMBER, NUMBER(width_y), A_LENGTH, SIZE, .required = true,
     .doc = "extent along y, for wind and fit", .example = "width_y: 80 mm"},
    {"width_z", TT_KEY_NUMBER, NUMBER(width_z), A_LENGTH, SIZE, .required = true,
     .doc = "extent along z", .example = "width_z: 70 mm"},
};
const tt_map tt_numbers_map = {"numbers of an outline", COUNTED(numbers), NULL};

static const tt_key member[] = {
    {"tube", TT_KEY_OWN, A_LENGTH, SIZE, .form = TT_FORM_PAIR, .doc = "outside diameter and wall",
     .example = "tube: [33.7 mm, 4 mm]"},
    {"bar", TT_KEY_OWN, A_LENGTH, SIZE, .doc = "diameter", .example = "bar: 10 mm"},
    {"box", TT_KEY_OWN, A_LENGTH, SIZE, .form = TT_FORM_TRIPLE,
     .doc = "a rectangular tube: across, front to back, wall; its corners rounded, twice the wall",
     .example = "box: [40 mm, 30 mm, 3 mm]"},
    {"flat", TT_KEY_OWN, A_LENGTH, SIZE, .form = TT_FORM_PAIR,
     .doc = "a flat bar: across, front to back", .example = "flat: [40 mm, 10 mm]"},
    {"pipe", TT_KEY_OWN, .form = TT_FORM_WORDS,
     .doc = "a pipe of the table of stock by its size and schedule",
     .example = "pipe: 1 1/2 sch 40"},
    {"offset", TT_KEY_OWN, A_LENGTH, ROOM, .form = TT_FORM_PAIR,
     .doc = "its middle off the axis of the limb, along local y and z; full size",
     .example = "offset: [0, -3 mm]"},
    {"through", TT_KEY_OWN, .form = TT_FORM_ANY,
     .doc = "of a limb: one member from the first to the last of these places, none elsewhere",
     .example = "through: [toe, body]"},
};
const tt_map tt_member_map = {"an armature", COUNTED(member), NULL};

static const char *const codes[] = {"code", NULL};
static const tt_key drag[] = {
    {"drag", TT_KEY_OWN, .dimension = TT_Q_PURE, .least = 0.01, .most = 5, .words = codes,
     .reason = "always, here or in `because`",
     .doc = "own coefficient on the width across the wind", .example = "drag: 1.2"},
    {"because", TT_KEY_OWN, .form = TT_FORM_WORDS, .doc = "the reason",
     .example = "because: \"tested\""},
};
const tt_map tt_drag_map = {"wind of a segment", COUNTED(drag), NULL};

/* ---- quantities in lists ---- */

const tt_key tt_coordinate = {"x, y, z", TT_KEY_NUMBER, A_LENGTH,
                              ROOM,      .power = 1,    .example = "[toe, 0, 0, 620 mm, 46 mm]"};
const tt_key tt_row_girth = {"girth", TT_KEY_NUMBER, A_LENGTH,
                             SIZE,    .power = 1,    .example = "[toe, 0, 0, 0, 46 mm]"};
const tt_key tt_row_wide = {"wide", TT_KEY_NUMBER, A_LENGTH,
                            SIZE,   .power = 1,    .example = "[toe, 0, 0, 0, 46 mm, 40 mm]"};
const tt_key tt_row_deep = {"deep", TT_KEY_NUMBER, A_LENGTH,
                            SIZE,   .power = 1,    .example = "[toe, 0, 0, 0, 46 mm, 40 mm]"};
const tt_key tt_direction = {"faces",       TT_KEY_NUMBER, .dimension = TT_Q_PURE,
                             .least = -1e6, .most = 1e6,   .example = "faces: [1, 0.5, 0]"};
