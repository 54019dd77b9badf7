/* compose/explain_data.c - what `explain` tells of a table of one's own (--data): kinds of rows
 * with their fields in order, properties with their units and bounds, marks, an example that is
 * read. */
#include "catalogue/catalogue.h"
#include "compose/explain.h"
#include "compose/parts.h"

#include <string.h>

#define SIZED "outside diameter,wall,unit,mass,its unit,carbon | stainless"
#define SOURCED ",document,edition,place,mark"

static const struct {
    const char *name, *fields, *words;
} kinds[] = {
    {"metal", "name,title,what the yield is,cast | steel,stainless: yes | no",
     "A metal begins; its `figure` rows follow. `cast` is a bronze, `steel` is for armature, "
     "plates "
     "and rods. What the yield is: Rp0.2, ReH, 0.5 % extension, or not stated. A cast metal must "
     "have DENSITY, YIELD, ULTIMATE, POISSON, YOUNG_LOW, YOUNG_HIGH, LEAD and SEAM; a steel "
     "DENSITY, YIELD, ULTIMATE, POISSON, YOUNG_EU, YOUNG_US and EXPANSION."},
    {"filler", "name,title,what the yield is",
     "A filler metal begins; it must have ULTIMATE or ULTIMATE_TYPICAL, of the weld metal."},
    {"material", "name,title",
     "Stone, concrete, wax and the like begin; they must have DENSITY_LOW and DENSITY_HIGH."},
    {"form", "product form",
     "A product form of the metal above: figures below it belong to that form alone, figures above "
     "the first form to all."},
    {"figure", "property,value,unit" SOURCED,
     "One figure of the metal, filler or material above. A unit is MPa, GPa, kPa, ksi, psi, kg/m3, "
     "lb/in3, 1/K or 1/F; a ratio has none, and reads 0.2 or 20 %. A figure that nobody has a "
     "source for is left out."},
    {"tube", "name,series," SIZED SOURCED,
     "A round tube. Mass per length may be left empty; unit is mm or in, of the mass kg/m or "
     "lb/ft. Sizes may be written as 1 1/2."},
    {"pipe", "name,series," SIZED SOURCED,
     "A pipe by its nominal size in inches and its schedule, as `1 1/4 sch 80S`."},
    {"bar", "name,series,diameter,,unit,mass,its unit,carbon | stainless" SOURCED,
     "A round bar; mass, and carbon or stainless, may be left empty."},
    {"flat", "name,series,width,thickness,unit,mass,its unit,carbon | stainless" SOURCED,
     "A flat or square bar, no thicker than wide; mass, and carbon or stainless, may be left "
     "empty."},
    {"box",
     "name,series,width,depth,wall,outside corner,inside corner,unit,mass,its unit,carbon | "
     "stainless" SOURCED,
     "A square or rectangular hollow section."},
    {"rod", "name,series,diameter,pitch,unit,stress area,its unit" SOURCED,
     "A threaded rod of coarse thread; in inches the pitch is given by its threads per inch."},
};
enum { KINDS = sizeof kinds / sizeof *kinds };

static const struct {
    const char *name, *words, *unit;
    double least, most;
} properties[] = {
#define TT_PROPERTY(id, words, unit, least, most) {#id, words, unit, least, most},
#include "catalogue/properties.def"
#undef TT_PROPERTY
};
enum { PROPERTIES = sizeof properties / sizeof *properties };

/* A bronze, a steel tube and a bar, all invented. */
static const char *const example[] = {
    "# The bronze as it was poured, and what lies in the yard.",
    "metal,C87300,\"silicon bronze, melt 7\",Rp0.2,cast,no",
    "figure,DENSITY,8359,kg/m3,alloy property sheet,,C87300,read",
    "figure,YIELD,131,MPa,mill certificate 4711,2026,melt 7,read",
    "figure,ULTIMATE,345,MPa,mill certificate 4711,2026,melt 7,read",
    "figure,YOUNG_LOW,103,GPa,alloy property sheet,,C87300,read",
    "figure,YOUNG_HIGH,103,GPa,alloy property sheet,,C87300,read",
    "figure,POISSON,0.34,,assumption of the engineer,,cast bronze,common practice",
    "figure,LEAD,0.002,,mill certificate 4711,2026,melt 7,read",
    "figure,SEAM,0.8,,assumption of the engineer,,silicon bronze,common practice",
    "bar,bar 17,yard stock,17,,mm,,,,callipers,,,read",
    "tube,40 x 3,yard stock,40,3,mm,,,carbon,callipers,,,read",
};

static const char *const whole[] = {"data", "--data", "data table", "csv"};
enum { WHOLE = sizeof whole / sizeof *whole };

static void list_kinds(tt_report *out)
{
    tt_report_list(out, TT_BLOCK_LIST);
    for (size_t i = 0; i < KINDS; i++)
        tt_report_item(out, tt_report_text(out, "`%s,%s`: %s", kinds[i].name, kinds[i].fields,
                                           kinds[i].words));
}

/* "from 50 MPa to 1300 MPa". */
static const char *bounds(size_t i, tt_report *out)
{
    return tt_report_text(
        out, "%s to %s", tt_say_exactly(out, properties[i].least, properties[i].unit, TT_METRIC, 1),
        tt_say_exactly(out, properties[i].most, properties[i].unit, TT_METRIC, 1));
}

static void list_properties(tt_report *out)
{
    static const tt_column columns[] = {
        {"property", TT_LEFT}, {"what it is", TT_LEFT}, {"read between", TT_LEFT}};
    tt_report_table(out, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < PROPERTIES; i++) {
        const char *const cells[] = {properties[i].name, properties[i].words, bounds(i, out)};
        tt_report_row(out, cells);
    }
}

static void explain_whole(const char *word, tt_report *out)
{
    tt_report_heading(out, 2, tt_report_text(out, "%s, a table of your own", word));
    tt_report_say(out, "A plain text file that `--data FILE` lays over the built-in tables, for "
                       "`check`, `weigh` and `stock`. Fields stand between commas; one that holds "
                       "a comma stands in double quotes; `#` begins a remark line; empty fields at "
                       "the end may be left out. The first field says what the row is:");
    list_kinds(out);
    tt_report_say(out,
                  "Behind each figure stands where it comes from: the document (never empty), "
                  "its edition, the place in it, and the mark: `read` (somebody saw it there), "
                  "`from memory` (to be checked), `common practice` (an assumption). YIELD and "
                  "ULTIMATE are specified minimums, never what a good sample gives.");
    list_properties(out);
    tt_report_say(out, "A row takes the place of all built-in rows of its name and kind. An "
                       "example that is read as it stands; figures in it are invented:");
    tt_report_list(out, TT_BLOCK_LINES);
    for (size_t i = 0; i < sizeof example / sizeof *example; i++) tt_report_item(out, example[i]);
    tt_report_say(out, "`tiptoe stock alloys --data FILE` shows how it was read.");
}

static size_t explain_kind(const char *word, tt_report *out)
{
    for (size_t i = 0; i < KINDS; i++) {
        if (strcmp(kinds[i].name, word) != 0) continue;
        tt_report_heading(out, 2, tt_report_text(out, "%s, a row of a table of your own", word));
        tt_report_say(out, tt_report_text(out,
                                          "`%s,%s`. %s `tiptoe explain data` tells of the "
                                          "whole table.",
                                          word, kinds[i].fields, kinds[i].words));
        return 1;
    }
    return 0;
}

static size_t explain_property(const char *word, tt_report *out)
{
    for (size_t i = 0; i < PROPERTIES; i++) {
        if (strcmp(properties[i].name, word) != 0) continue;
        tt_report_heading(out, 2, tt_report_text(out, "%s, a figure of a table of your own", word));
        tt_report_say(out,
                      tt_report_text(out,
                                     "%s; read between %s. It stands in a row `figure,%s,...`: "
                                     "`tiptoe explain data` tells of the whole table.",
                                     properties[i].words, bounds(i, out), word));
        return 1;
    }
    return 0;
}

size_t tt_explain_data(const char *word, tt_report *out)
{
    for (size_t i = 0; i < WHOLE; i++) {
        if (strcmp(whole[i], word) != 0) continue;
        explain_whole(word, out);
        return 1;
    }
    return explain_kind(word, out) + explain_property(word, out);
}

bool tt_explain_data_words(tt_words *out)
{
    bool room = true;
    for (size_t i = 0; i < WHOLE; i++) room = room && tt_words_add(out, whole[i]);
    for (size_t i = 0; i < KINDS; i++) room = room && tt_words_add(out, kinds[i].name);
    for (size_t i = 0; i < PROPERTIES; i++) room = room && tt_words_add(out, properties[i].name);
    return room;
}
