/* piecefile/keys_acts.c - the key table, third part: what the site does to the piece beside the
 * wind. Bounds are SI, and assumptions of this program: see keys.c. */
#include "piecefile/reader.h"

#define COUNTED(keys) (keys), sizeof(keys) / sizeof *(keys)
#define A_LENGTH .dimension = TT_Q_LENGTH
#define STRONGEST 100000.0 /* N, of one person */

static const char *const grounds[] = {"A", "B", "C", "D", "E", NULL};
static const char *const methods[] = {"lateral", "spectrum", NULL};
static const char *const classes[] = {"A", "B", "BC", "C", "CD", "D", "DE", "E", "F", NULL};
static const char *const structures[] = {"other", "monument", NULL};

/* ---- earthquake: fields of tt_site_quake ---- */

#define QUAKE(field) offsetof(tt_site_quake, field)
#define OF_EU .basis = TT_EU
#define OF_US .basis = TT_US
static const tt_key soil[] = {
    {"s", TT_KEY_GIVEN, QUAKE(soil), TT_Q_PURE, 0.5, 5, .required = true,
     .doc = "S, the soil factor", .example = "s: 1.15"},
    {"tb", TT_KEY_GIVEN, QUAKE(tb), TT_Q_TIME, 0.001, 10, .required = true,
     .doc = "TB, where the plateau begins", .example = "tb: 0.2 s"},
    {"tc", TT_KEY_GIVEN, QUAKE(tc), TT_Q_TIME, 0.001, 10, .required = true,
     .doc = "TC, where it ends", .example = "tc: 0.6 s"},
    {"td", TT_KEY_GIVEN, QUAKE(td), TT_Q_TIME, 0.001, 20, .required = true,
     .doc = "TD, from where the movement is constant", .example = "td: 2 s"},
};
const tt_map tt_quake_soil_map = {"soil", COUNTED(soil), NULL};

static const tt_key building[] = {
    {"height", TT_KEY_GIVEN, QUAKE(building_at), A_LENGTH, 0, 1000, .required = true,
     .doc = "height over ground of the floor it stands on", .example = "height: 12 m"},
    {"roof", TT_KEY_GIVEN, QUAKE(building_roof), A_LENGTH, 0.1, 1000, .required = true,
     .doc = "height over ground of the building's roof", .example = "roof: 20 m"},
};
static const tt_map building_map = {"on_building", COUNTED(building), NULL};

static const tt_key earthquake[] = {
    {"ag", TT_KEY_GIVEN, QUAKE(ag), TT_Q_ACCELERATION, 0.001, 30, .required = true, OF_EU,
     .doc = "reference ground acceleration on rock; the importance factor is not in it",
     .example = "ag: 0.15 g"},
    {"ground", TT_KEY_WORD, QUAKE(ground), OF_EU, .words = grounds, .doc = "ground type",
     .example = "ground: C"},
    {"type", TT_KEY_COUNT, QUAKE(type), .least = 1, .most = 2, OF_EU,
     .doc = "type of the spectrum, 1 or 2", .example = "type: 1"},
    {"soil", TT_KEY_MAP, OF_EU, .map = &tt_quake_soil_map,
     .doc = "the spectrum in place of ground and type",
     .example = "soil: {s: 1.15, tb: 0.2 s, tc: 0.6 s, td: 2 s}"},
    {"q", TT_KEY_GIVEN, QUAKE(q), TT_Q_PURE, 1, 8, OF_EU, .otherwise = "1.5",
     .why = "an elastic cantilever: EN 1998-1 3.2.2.5 and 6.1 (from memory); bronze, seams and "
            "anchors take 1.0",
     .doc = "behaviour factor of the armature; over 1.5 needs detailing", .example = "q: 1.5"},
    {"ss", TT_KEY_GIVEN, QUAKE(ss), TT_Q_PURE, 0, 5, OF_US,
     .doc = "SS, mapped, short periods, in parts of gravity", .example = "ss: 1.5"},
    {"s1", TT_KEY_GIVEN, QUAKE(s1), TT_Q_PURE, 0, 5, OF_US, .doc = "S1, mapped, at one second",
     .example = "s1: 0.6"},
    {"site_class", TT_KEY_WORD, QUAKE(site_class), OF_US, .words = classes, .doc = "site class",
     .example = "site_class: D"},
    {"sds", TT_KEY_GIVEN, QUAKE(sds), TT_Q_PURE, 0, 5, OF_US,
     .doc = "SDS, in place of ss, s1 and site_class", .example = "sds: 1.0"},
    {"sd1", TT_KEY_GIVEN, QUAKE(sd1), TT_Q_PURE, 0, 5, OF_US, .doc = "SD1, with sds",
     .example = "sd1: 0.6"},
    {"row", TT_KEY_WORD, QUAKE(row), OF_US, .words = structures, .otherwise = "other",
     .why = "R 1.25, omega 2: ASCE 7 Table 15.4-2, all other (from memory)",
     .doc = "row of Table 15.4-2; monument needs detailing", .example = "row: other"},
    {"method", TT_KEY_WORD, QUAKE(method), .words = methods, .otherwise = "lateral",
     .why = "the simpler of the two was taken", .doc = "lateral forces, or mode by mode",
     .example = "method: lateral"},
    {"rigid", TT_KEY_OWN, QUAKE(rigid), .read = tt_read_yes_because,
     .doc = "it counts as rigid; with a reason",
     .example = "rigid: {is: yes, because: \"tapped: 25 Hz\"}"},
    {"detailing", TT_KEY_OWN, QUAKE(detailing), .read = tt_read_yes_because,
     .doc = "the armature is made to give without breaking; with a reason",
     .example = "detailing: {is: yes, because: \"drawn by the engineer\"}"},
    {"on_building", TT_KEY_OWN, QUAKE(on_building), .read = tt_read_on_building,
     .map = &building_map, .doc = "it stands on or in a building",
     .example = "on_building: {height: 12 m, roof: 20 m}"},
};
const tt_map tt_quake_map = {"earthquake", COUNTED(earthquake), NULL};

/* ---- people, ice, snow, heat ---- */

static const tt_key people[] = {
    {"climb", TT_KEY_GIVEN, offsetof(tt_site_people, climb), TT_Q_FORCE, 0, STRONGEST,
     .otherwise = "1.0 kN", .why = "one person: assumption of this program",
     .doc = "weight of one who hangs on it; where it is over 0.5 m high",
     .example = "climb: 1.0 kN"},
    {"push", TT_KEY_GIVEN, offsetof(tt_site_people, push), TT_Q_FORCE, 0, STRONGEST,
     .otherwise = "0.5 kN", .why = "one person: assumption of this program",
     .doc = "force of one who pushes, level", .example = "push: 0.5 kN"},
    {"reach", TT_KEY_GIVEN, offsetof(tt_site_people, reach), A_LENGTH, 0, 20, .otherwise = "2.5 m",
     .why = "a tall person's hand: assumption of this program",
     .doc = "how high a hand gets over what can be stood on", .example = "reach: 2.5 m"},
    {"count", TT_KEY_COUNT, offsetof(tt_site_people, count), .least = 1, .most = 100,
     .otherwise = "1", .why = "one at a time: assumption of this program",
     .doc = "how many at once", .example = "count: 1"},
};
const tt_map tt_people_map = {"people", COUNTED(people), NULL};

static const tt_key ice[] = {
    {"thickness", TT_KEY_GIVEN, offsetof(tt_site_ice, thickness), A_LENGTH, 0.0001, 0.5,
     .required = true, .doc = "of the ice, all round", .example = "thickness: 10 mm"},
    {"wind", TT_KEY_GIVEN, offsetof(tt_site_ice, wind), TT_Q_SPEED, 0, 80, .required = true,
     .doc = "the wind that goes with it", .example = "wind: 15 m/s"},
};
const tt_map tt_ice_map = {"ice", COUNTED(ice), NULL};

static const tt_key snow[] = {
    {"ground", TT_KEY_GIVEN, offsetof(tt_site_snow, ground), TT_Q_PRESSURE, 1, 1e5,
     .required = true, .doc = "snow on the ground", .example = "ground: 0.8 kN/m2"},
};
const tt_map tt_snow_map = {"snow", COUNTED(snow), NULL};

#define HEAT(field) offsetof(tt_site_heat, field)
static const char by_sun[] = "outdoors, near EN 1991-1-5: assumption of this program";
static const tt_key cold[] = {
    {"bronze", TT_KEY_GIVEN, HEAT(bronze[1]), TT_Q_TEMPERATURE, -150, 0, .otherwise = "-30 K",
     .why = by_sun, .doc = "fall of the bronze", .example = "bronze: -30 K"},
    {"armature", TT_KEY_GIVEN, HEAT(armature[1]), TT_Q_TEMPERATURE, -150, 0, .otherwise = "-15 K",
     .why = by_sun, .doc = "fall of the armature", .example = "armature: -15 K"},
};
const tt_map tt_cold_map = {"cold", COUNTED(cold), NULL};
static const tt_key heat[] = {
    {"bronze", TT_KEY_GIVEN, HEAT(bronze[0]), TT_Q_TEMPERATURE, 0, 150, .otherwise = "35 K",
     .why = by_sun, .doc = "rise of the bronze", .example = "bronze: 35 K"},
    {"armature", TT_KEY_GIVEN, HEAT(armature[0]), TT_Q_TEMPERATURE, 0, 150, .otherwise = "15 K",
     .why = by_sun, .doc = "rise of the armature", .example = "armature: 15 K"},
    {"cold", TT_KEY_MAP, .map = &tt_cold_map,
     .doc = "the same for cold; left out beside a heat of one's own: the same figures",
     .example = "cold: {bronze: -30 K, armature: -15 K}"},
};
const tt_map tt_heat_map = {"heat", COUNTED(heat), NULL};
