/* piecefile/keys_site.c - the key table, second part: lumps, stands, the site, loads, limits. */
#include "piecefile/reader.h"

#define COUNTED(keys) (keys), sizeof(keys) / sizeof *(keys)
#define UNREAD(word, words)                                                                        \
    {                                                                                              \
        .name = word, .kind = TT_KEY_UNREAD, .doc = words                                          \
    }
#define ROOM .least = -TT_LONGEST, .most = TT_LONGEST
#define A_LENGTH .dimension = TT_Q_LENGTH
#define HEAVIEST 1e7 /* kg */

static const char *const nones[] = {"none", NULL};
static const char *const helds[] = {"fixed", "pinned", NULL};
static const char *const terrains[] = {"0", "I", "II", "III", "IV", NULL};
static const char *const exposures[] = {"B", "C", "D", NULL};
static const char *const kinds[] = {"permanent", "variable", "accidental", NULL};
static const char *const levels[] = {"strength",   "allowable", "equilibrium", "service",
                                     "accidental", "seismic",   NULL};

/* Fields of tt_lump. A key of kind OWN without a reader is read by the code of its map. */
static const tt_key lump[] = {
    {"name", TT_KEY_TEXT, offsetof(tt_lump, name), .required = true, .doc = "its name",
     .example = "name: fish"},
    {"at", TT_KEY_PLACE, offsetof(tt_lump, at), .required = true, .doc = "the place it hangs on",
     .example = "at: beak"},
    {"mass", TT_KEY_SPREAD, offsetof(tt_lump, mass), TT_Q_MASS, 0, HEAVIEST, .doc = "its mass",
     .example = "mass: 3.5 kg"},
    {"skin", TT_KEY_OWN, 0, TT_Q_AREA, 0, 1e4, .power = 2,
     .doc = "bronze of bronze.wall over this area, in place of a mass", .example = "skin: 0.4 m2"},
    {"offset", TT_KEY_TRIPLE, offsetof(tt_lump, offset), A_LENGTH, ROOM, .power = 1,
     .doc = "its centre from the place, global axes", .example = "offset: [0, 60 mm, -40 mm]"},
    {"wind_area", TT_KEY_NUMBER, offsetof(tt_lump, wind_area), TT_Q_AREA, 0, 1e4, .power = 2,
     .doc = "area that the wind meets, from every side alike", .example = "wind_area: 0.02 m2"},
    {"drag", TT_KEY_OWN, 0, TT_Q_PURE, 0.01, 5, .doc = "drag coefficient on its wind area",
     .example = "drag: 1.3"},
    {"inertia", TT_KEY_OWN, 0, TT_Q_INERTIA, 0, 1e9, .form = TT_FORM_TRIPLE,
     .doc = "about global axes through the lump", .example = "inertia: [0.1 kg.m2, 0.1 kg.m2, 0]"},
    UNREAD("plate", "wind on a flat"),
};
const tt_map tt_lump_map = {"a lump", COUNTED(lump), NULL};

static const tt_key stand[] = {
    {"at", TT_KEY_PLACE, offsetof(tt_stand, at), .required = true, .doc = "the place that is held",
     .example = "at: toe"},
    {"held", TT_KEY_OWN, offsetof(tt_stand, held), .required = true, .words = helds,
     .doc = "fixed | pinned", .example = "held: fixed"},
    {"sole", TT_KEY_OWN, A_LENGTH, ROOM, .power = 1, .form = TT_FORM_CORNERS,
     .doc = "outline of what stands on the ground, from the place",
     .example = "sole: [[-60 mm, -40 mm], [90 mm, -30 mm], [90 mm, 30 mm], [-60 mm, 40 mm]]"},
};
const tt_map tt_stand_map = {"a stand", COUNTED(stand), NULL};
const tt_key tt_sole_x = {
    "sole", TT_KEY_NUMBER, A_LENGTH,
    ROOM,   .power = 1,    .example = "sole: [[-20 mm, -12 mm], [45 mm, -10 mm], [45 mm, 12 mm]]"};

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
    UNREAD("earthquake", "ground motion"),
    UNREAD("people", "climbing and pushing"),
    UNREAD("ice", "ice and the wind with it"),
    UNREAD("snow", "snow on upturned surfaces"),
    UNREAD("heat", "temperature differences"),
    UNREAD("water", "a limb that fills"),
};
const tt_map tt_site_map = {"site", COUNTED(site), NULL};

#define WIND(field) offsetof(tt_site_wind, field)
static const tt_key wind[] = {
    {"basic_speed", TT_KEY_GIVEN, WIND(basic_speed), TT_Q_SPEED, 1, 150, .required = true,
     .doc = "eu vb,0: 10 min mean once in 50 years; us V: 3 s gust, strength level",
     .example = "basic_speed: 24 m/s"},
    {"terrain", TT_KEY_WORD, WIND(exposure), .required = true, .basis = TT_EU, .words = terrains,
     .doc = "terrain category", .example = "terrain: II"},
    {"exposure", TT_KEY_WORD, WIND(exposure), .required = true, .basis = TT_US, .words = exposures,
     .doc = "exposure category", .example = "exposure: C"},
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
    UNREAD("speed_is", "which kind of speed it is"),
    UNREAD("once_in", "years between two such winds"),
    UNREAD("surface_roughness", "roughness of the bronze"),
    UNREAD("hill", "a hill by its shape"),
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
    {"imperfection", TT_KEY_OWN, .words = nones, .doc = "none", .example = "imperfection: none"},
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
