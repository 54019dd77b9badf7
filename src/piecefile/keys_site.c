/* piecefile/keys_site.c - the key table, second part: lumps, stands, the site, loads, limits. */
#include "piecefile/reader.h"

#define COUNTED(keys) (keys), sizeof(keys) / sizeof *(keys)
#define ROOM .least = -TT_LONGEST, .most = TT_LONGEST
#define A_LENGTH .dimension = TT_Q_LENGTH
#define HEAVIEST 1e7            /* kg */
#define FASTEST (250 * 0.44704) /* m/s: 250 mph; no map has a faster wind */
#define STIFFEST 1e15           /* N/m, N.m/rad: no real thing is stiffer */

static const char *const nones[] = {"none", NULL};
static const char *const yes_no[] = {"yes", "no", NULL};
static const char *const helds[] = {"fixed", "pinned", "rests", NULL};
static const char *const ways[] = {"x", "y", "z", NULL};
static const char *const terrains[] = {"0", "I", "II", "III", "IV", NULL};
static const char *const speeds[] = {"mean", "gust", "service", NULL};
static const char *const hills[] = {"ridge", "escarpment", "hill", NULL};
static const char *const exposures[] = {"B", "C", "D", NULL};
static const char *const kinds[] = {"permanent", "variable", "accidental", NULL};
static const char *const levels[] = {"strength",   "allowable", "equilibrium", "service",
                                     "accidental", "seismic",   NULL};

static const tt_consumer no_flats = {
    "wind.flats", "wind square to a flat, off its middle: this version does not compute it", NULL,
    true, "no"};

/* Fields of tt_lump. A key of kind OWN without a reader is read by the code of its map. */
static const tt_key lump[] = {
    {"name", TT_KEY_TEXT, offsetof(tt_lump, name), .required = true, .doc = "its name",
     .example = "name: fish"},
    {"at", TT_KEY_PLACE, offsetof(tt_lump, at), .required = true, .doc = "the place it hangs on",
     .example = "at: beak"},
    {"mass", TT_KEY_SPREAD, offsetof(tt_lump, mass), TT_Q_MASS, 0, HEAVIEST, .doc = "its mass",
     .example = "mass: 3.5 kg"},
    {"skin", TT_KEY_OWN, 0, TT_Q_AREA, 0, 1e4, .power = 2,
     .doc = "bronze of bronze/wall over this area, in place of a mass; surface and extra are not "
            "added",
     .example = "skin: 0.4 m2"},
    {"offset", TT_KEY_TRIPLE, offsetof(tt_lump, offset), A_LENGTH, ROOM, .power = 1,
     .doc = "its centre from the place, global axes", .example = "offset: [0, 60 mm, -40 mm]"},
    {"wind_area", TT_KEY_NUMBER, offsetof(tt_lump, wind_area), TT_Q_AREA, 0, 1e4, .power = 2,
     .doc = "area that the wind meets, from every side alike", .example = "wind_area: 0.02 m2"},
    {"drag", TT_KEY_OWN, 0, TT_Q_PURE, 0.01, 5, .doc = "drag coefficient on its wind area",
     .example = "drag: 1.3"},
    {"inertia", TT_KEY_OWN, 0, TT_Q_INERTIA, 0, 1e9, .form = TT_FORM_TRIPLE,
     .doc = "about global axes through the lump", .example = "inertia: [0.1 kg.m2, 0.1 kg.m2, 0]"},
    {"plate", TT_KEY_OWN, .words = yes_no, .consumer = &no_flats,
     .doc = "the wind meets a flat: a cape, a wing", .example = "plate: yes"},
};
const tt_map tt_lump_map = {"a lump", COUNTED(lump), NULL};

/* Fields of tt_stand. */
static const tt_key spring[] = {
    {"move_x", TT_KEY_GIVEN, offsetof(tt_stand, spring[0]), TT_Q_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness along x", .example = "move_x: 500 kN/m"},
    {"move_y", TT_KEY_GIVEN, offsetof(tt_stand, spring[1]), TT_Q_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness along y", .example = "move_y: 500 kN/m"},
    {"move_z", TT_KEY_GIVEN, offsetof(tt_stand, spring[2]), TT_Q_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness up and down", .example = "move_z: 500 kN/m"},
    {"turn_x", TT_KEY_GIVEN, offsetof(tt_stand, spring[3]), TT_Q_TURN_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness about x", .example = "turn_x: 200 kN.m/rad"},
    {"turn_y", TT_KEY_GIVEN, offsetof(tt_stand, spring[4]), TT_Q_TURN_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness about y", .example = "turn_y: 200 kN.m/rad"},
    {"turn_z", TT_KEY_GIVEN, offsetof(tt_stand, spring[5]), TT_Q_TURN_STIFFNESS, 1e-3, STIFFEST,
     .doc = "stiffness about z", .example = "turn_z: 200 kN.m/rad"},
};
const tt_map tt_spring_map = {"a spring", COUNTED(spring), NULL};

static const tt_consumer no_friction = {
    "sliding", "whether it slides is not computed by this version; it is taken as held level",
    "held: fixed or pinned, where something holds it", true, NULL};
static const tt_key rests[] = {
    {"friction", TT_KEY_GIVEN, offsetof(tt_stand, friction), TT_Q_PURE, 0, 2,
     .consumer = &no_friction, .doc = "of the sole on what it rests on; left out: free to slide",
     .example = "friction: 0.4"},
};
static const tt_map rests_map = {"what rests", COUNTED(rests), NULL};

static const tt_key held[] = {
    {"move", TT_KEY_OWN, offsetof(tt_stand, way[0]), .read = tt_read_ways, .words = ways,
     .form = TT_FORM_ANY, .doc = "directions in which it cannot move",
     .example = "move: [x, y, z]"},
    {"turn", TT_KEY_OWN, offsetof(tt_stand, way[3]), .read = tt_read_ways, .words = ways,
     .form = TT_FORM_ANY, .doc = "directions about which it cannot turn",
     .example = "turn: [x, y]"},
    {"spring", TT_KEY_MAP, .map = &tt_spring_map, .doc = "what holds it but gives",
     .example = "spring: {turn_x: 200 kN.m/rad, turn_y: 200 kN.m/rad}"},
    {"rests", TT_KEY_MAP, .map = &rests_map,
     .doc = "it only presses; in this version nothing is computed of a piece that lifts off",
     .example = "rests: {friction: 0.4}"},
};
static const tt_map held_map = {"held", COUNTED(held), NULL};

static const tt_key stand[] = {
    {"at", TT_KEY_PLACE, offsetof(tt_stand, at), .required = true, .doc = "the place that is held",
     .example = "at: toe"},
    {"held", TT_KEY_OWN, .required = true, .read = tt_read_held, .words = helds, .map = &held_map,
     .doc = "what holds it: fixed (neither moves nor turns: welded to an anchored plate) | pinned "
            "(does not move, turns freely) | rests (only presses), or direction by direction",
     .example = "held: fixed"},
    {"sole", TT_KEY_OWN, A_LENGTH, ROOM, .power = 1, .form = TT_FORM_CORNERS,
     .doc = "outline of what stands on the ground, from the place",
     .example = "sole: [[-60 mm, -40 mm], [90 mm, -30 mm], [90 mm, 30 mm], [-60 mm, 40 mm]]"},
};
const tt_map tt_stand_map = {"a stand", COUNTED(stand), NULL};
const tt_key tt_sole_x = {
    "sole", TT_KEY_NUMBER, A_LENGTH,
    ROOM,   .power = 1,    .example = "sole: [[-20 mm, -12 mm], [45 mm, -10 mm], [45 mm, 12 mm]]"};

#define LATER "this version does not compute it"
static const tt_consumer no_earthquake = {"earthquake", LATER, NULL, true, "none"};
static const tt_consumer no_people = {
    "people", "people who climb, hang or push: " LATER,
    "a load of your own: loads: [{case: ..., kind: variable, at: ..., force: ...}]", true, "none"};
static const tt_consumer no_ice = {"ice", LATER, NULL, true, "none"};
static const tt_consumer no_snow = {"snow", LATER, NULL, true, "none"};
static const tt_consumer no_heat = {"heat", LATER, NULL, true, "none"};
static const tt_consumer no_water = {
    "water", "the weight of water in a limb, and what it does when it freezes: " LATER,
    "a lump for its weight, or drain it", true, "no"};

/* Fields of tt_site_draft, which begins with a tt_site. */
static const tt_key site[] = {
    {"wind", TT_KEY_OWN, .read = tt_read_wind, .words = nones, .map = &tt_wind_map,
     .doc = "the wind there; none rules it out",
     .example = "wind: {basic_speed: 24 m/s, terrain: II}"},
    {"indoors", TT_KEY_FLAG, offsetof(tt_site_draft, indoors), .otherwise = "no",
     .why = "taken as standing outdoors", .doc = "under a roof, without wind and frost",
     .example = "indoors: no"},
    {"public", TT_KEY_FLAG, offsetof(tt_site_draft, open_to_public), .otherwise = "yes",
     .why = "taken as within reach of everybody", .doc = "people can reach it",
     .example = "public: yes"},
    {"base_height", TT_KEY_GIVEN, offsetof(tt_site, base_height), A_LENGTH, 0, TT_LONGEST,
     .otherwise = "0", .why = "no plate or pedestal is described",
     .doc = "height of its underside over the ground", .example = "base_height: 0.9 m"},
    {"damping", TT_KEY_GIVEN, offsetof(tt_site, damping), TT_Q_PURE, 0.001, 1, .otherwise = "0.02",
     .why = "0.3 % of critical; bronze figures have not been measured: assumption of this program",
     .doc = "logarithmic decrement", .example = "damping: 0.02"},
    {"earthquake", TT_KEY_OWN, .read = tt_read_earthquake, .map = &tt_quake_map,
     .consumer = &no_earthquake, .doc = "ground motion; none rules it out",
     .example = "earthquake: {ag: 0.15 g, ground: C, type: 1}"},
    {"people", TT_KEY_OWN, .read = tt_read_people, .map = &tt_people_map, .consumer = &no_people,
     .doc = "climbing and pushing; none needs a reason",
     .example = "people: {climb: 1.0 kN, push: 0.5 kN}"},
    {"ice", TT_KEY_OWN, .read = tt_read_ice, .map = &tt_ice_map, .consumer = &no_ice,
     .doc = "ice and the wind with it; none rules it out",
     .example = "ice: {thickness: 10 mm, wind: 15 m/s}"},
    {"snow", TT_KEY_OWN, .read = tt_read_snow, .map = &tt_snow_map, .consumer = &no_snow,
     .doc = "snow on upturned surfaces; none rules it out", .example = "snow: {ground: 0.8 kN/m2}"},
    {"heat", TT_KEY_OWN, .read = tt_read_heat, .map = &tt_heat_map, .consumer = &no_heat,
     .doc = "bronze and armature warm and cold; none rules it out",
     .example = "heat: {bronze: 35 K, armature: 15 K, cold: {bronze: -30 K, armature: -15 K}}"},
    {"water", TT_KEY_FLAG, offsetof(tt_site_draft, water), .consumer = &no_water,
     .doc = "a limb can fill with water", .example = "water: no"},
};
const tt_map tt_site_map = {"site", COUNTED(site), NULL};

static const tt_consumer no_roughness = {
    "wind.drag", "the code's own coefficients by roughness and speed: " LATER, NULL, false, NULL};

#define WIND(field) offsetof(tt_site_wind, field)
static const tt_key hill[] = {
    {"kind", TT_KEY_WORD, WIND(hill), .required = true, .words = hills,
     .doc = "ridge (long), escarpment (one side), hill (round)", .example = "kind: ridge"},
    {"height", TT_KEY_GIVEN, WIND(hill_height), A_LENGTH, 0.1, 5000, .required = true,
     .doc = "over the land upwind", .example = "height: 100 ft"},
    {"half_length", TT_KEY_GIVEN, WIND(hill_half_length), A_LENGTH, 0.1, 50000, .required = true,
     .doc = "level distance from the crest to half its height, upwind",
     .example = "half_length: 250 ft"},
    {"from_crest", TT_KEY_GIVEN, WIND(hill_from_crest), A_LENGTH, 0, 50000, .required = true,
     .doc = "level distance of the piece from the crest", .example = "from_crest: 0"},
};
const tt_map tt_hill_map = {"a hill", COUNTED(hill), NULL};

static const tt_key wind[] = {
    {"basic_speed", TT_KEY_GIVEN, WIND(basic_speed), TT_Q_SPEED, 1, FASTEST, .required = true,
     .doc = "eu vb,0: 10 min mean once in 50 years; us V: 3 s gust, strength level; from the wind "
            "map of the national annex or the local code: the local building office knows it",
     .example = "basic_speed: 24 m/s"},
    {"terrain", TT_KEY_WORD, WIND(exposure), .required = true, .basis = TT_EU, .words = terrains,
     .doc =
         "terrain category: 0 open sea or its coast, I lakes and flat land without obstacles, II "
         "low growth and single obstacles at least 20 of their heights apart, III villages, "
         "suburbs, woods, IV towns with buildings over 15 m (EN 1991-1-4 Table 4.1, from "
         "memory)",
     .example = "terrain: II"},
    {"exposure", TT_KEY_WORD, WIND(exposure), .required = true, .basis = TT_US, .words = exposures,
     .doc = "exposure category: B towns, suburbs, woods; C open country with scattered obstacles "
            "under 30 ft; D flat open land or water upwind (ASCE 7 26.7, from memory)",
     .example = "exposure: C"},
    {"orography", TT_KEY_GIVEN, WIND(orography), TT_Q_PURE, 1, 5, .otherwise = "1.0",
     .why = "is the piece on a hill, a roof, a quay or between towers?",
     .doc = "eu co, us Kzt: 1 on flat ground", .example = "orography: 1.0"},
    {"direction_factor", TT_KEY_GIVEN, WIND(direction_factor), TT_Q_PURE, 0.1, 2, .basis = TT_EU,
     .otherwise = "1.0", .why = "every direction alike", .doc = "cdir",
     .example = "direction_factor: 1.0"},
    {"season_factor", TT_KEY_GIVEN, WIND(season_factor), TT_Q_PURE, 0.1, 2, .basis = TT_EU,
     .otherwise = "1.0", .why = "it stands all the year", .doc = "cseason",
     .example = "season_factor: 1.0"},
    {"air", TT_KEY_GIVEN, WIND(air), TT_Q_DENSITY, 0.5, 2, .basis = TT_EU,
     .otherwise = "1.25 kg/m3", .why = "recommended value of EN 1991-1-4 4.5 note 2 (from memory)",
     .doc = "density of the air", .example = "air: 1.25 kg/m3"},
    {"kd", TT_KEY_GIVEN, WIND(directionality), TT_Q_PURE, 0.5, 1, .basis = TT_US,
     .otherwise = "1.0", .why = "no reduction for direction is taken", .doc = "Kd",
     .example = "kd: 1.0"},
    {"elevation", TT_KEY_GIVEN, WIND(elevation), TT_Q_LENGTH, -500, 9000, .basis = TT_US,
     .otherwise = "0", .why = "air as dense as at the level of the sea",
     .doc = "of the ground above the sea", .example = "elevation: 0 ft"},
    {"speed_is", TT_KEY_OWN, WIND(speed_is), .words = speeds,
     .doc =
         "which speed it is: eu mean (of ten minutes); us gust (3 s, strength), or service (3 s, "
         "of a service map)",
     .example = "speed_is: mean"},
    {"once_in", TT_KEY_GIVEN, WIND(once_in), TT_Q_PURE, 2, 10000, .basis = TT_EU,
     .doc = "years between two such winds, when not 50", .example = "once_in: 100"},
    {"surface_roughness", TT_KEY_GIVEN, WIND(surface_roughness), TT_Q_LENGTH, 0, 0.05,
     .basis = TT_EU, .consumer = &no_roughness, .doc = "roughness of the bronze, for drag: code",
     .example = "surface_roughness: 0.2 mm"},
    {"hill", TT_KEY_OWN, WIND(hill), .read = tt_read_hill, .map = &tt_hill_map, .basis = TT_US,
     .doc = "a hill by its shape, in place of orography",
     .example = "hill: {kind: ridge, height: 100 ft, half_length: 250 ft, from_crest: 50 ft}"},
};
const tt_map tt_wind_map = {"wind", COUNTED(wind), NULL};

/* Fields of tt_own_load. */
static const tt_key load[] = {
    {"case", TT_KEY_TEXT, offsetof(tt_own_load, name), .required = true,
     .doc = "name of the load; entries of one name add up", .example = "case: banner"},
    {"kind", TT_KEY_OWN, offsetof(tt_own_load, kind), .required = true, .words = kinds,
     .doc = "permanent | variable | accidental", .example = "kind: variable"},
    {"at", TT_KEY_PLACE, offsetof(tt_own_load, at), .doc = "the place it acts on",
     .example = "at: hand"},
    {"along", TT_KEY_OWN, offsetof(tt_own_load, along), .form = TT_FORM_WORDS,
     .doc = "the segment it acts on", .example = "along: toe-hock"},
    {"force", TT_KEY_TRIPLE, offsetof(tt_own_load, force), TT_Q_FORCE, -1e9, 1e9,
     .doc = "global axes", .example = "force: [0, 0.4 kN, 0]"},
    {"moment", TT_KEY_TRIPLE, offsetof(tt_own_load, moment), TT_Q_MOMENT, -1e9, 1e9,
     .doc = "global axes, right-handed", .example = "moment: [0, 0, 30 N.m]"},
    {"force_per_length", TT_KEY_TRIPLE, offsetof(tt_own_load, line), TT_Q_LINE_FORCE, -1e9, 1e9,
     .doc = "along a segment, global axes", .example = "force_per_length: [0, 0, -0.2 kN/m]"},
    {"between", TT_KEY_OWN, .least = 0, .most = 1, .form = TT_FORM_PAIR,
     .doc = "fractions of the segment's length", .example = "between: [0.2, 0.7]"},
};
const tt_map tt_load_map = {"a load", COUNTED(load), NULL};
const tt_key tt_fraction = {"between",  TT_KEY_NUMBER, .dimension = TT_Q_PURE,
                            .least = 0, .most = 1,     .example = "between: [0.2, 0.7]"};

/* Fields of tt_own_combination. */
static const tt_key combination[] = {
    {"name", TT_KEY_TEXT, offsetof(tt_own_combination, name), .required = true, .doc = "its name",
     .example = "name: E1"},
    {"level", TT_KEY_WORD, offsetof(tt_own_combination, level), .required = true, .words = levels,
     .doc = "what it is for", .example = "level: strength"},
    {"sum", TT_KEY_OWN, .least = -1000, .most = 1000, .required = true, .form = TT_FORM_FACTORS,
     .doc = "loads and their factors", .example = "sum: {weight: 1.2, wind 90: 0.5}"},
    {"imperfection", TT_KEY_OWN, 0, TT_Q_PURE, 0, 0.1, .words = nones,
     .doc = "none, or how far it stands out of plumb, in the worst of eight directions",
     .example = "imperfection: 1/200"},
};
const tt_map tt_combination_map = {"a combination", COUNTED(combination), NULL};
const tt_key tt_factor = {
    "sum",          TT_KEY_NUMBER, .dimension = TT_Q_PURE,
    .least = -1000, .most = 1000,  .example = "sum: {weight: 1.2, wind 90: 0.5}"};

static const tt_key limits[] = {
    {"mass", TT_KEY_GIVEN, offsetof(tt_limits, mass), TT_Q_MASS, 0.001, HEAVIEST,
     .doc = "most that it may weigh", .example = "mass: 140 kg"},
    {"sway", TT_KEY_GIVEN, offsetof(tt_limits, sway), TT_Q_PURE, 1e-6, 1,
     .doc = "most that it may move, over its height", .example = "sway: 1/100"},
    {"frequency", TT_KEY_GIVEN, offsetof(tt_limits, frequency), TT_Q_FREQUENCY, 0.001, 1000,
     .doc = "least lowest frequency", .example = "frequency: 1.5 Hz"},
    {"use", TT_KEY_GIVEN, offsetof(tt_limits, use), TT_Q_PURE, 0.01, 1, .otherwise = "1.0",
     .why = "no margin beyond that of the basis was asked for", .doc = "most use allowed",
     .example = "use: 1.0"},
};
const tt_map tt_limits_map = {"limits", COUNTED(limits), NULL};
