/* compose/site.c - what was put in of the site: its wind, as the basis reads it, and where the
 * piece stands. Items of a list. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

static const char *plain(const tt_given *given, tt_report *out)
{
    return tt_say_exactly(out, given->is, "", TT_METRIC, 1);
}

/* "3 m above", "level with". */
static const char *over(double m, tt_unit_system units, tt_report *out)
{
    if (m == 0.0) return "level with";
    return tt_report_text(out, "%s %s", tt_say_exactly(out, fabs(m), "m", units, 1),
                          m > 0.0 ? "above" : "below");
}

static const char *hill(const tt_site_wind *wind, tt_unit_system units, tt_report *out)
{
    static const char *const words[] = {"", "a ridge", "an escarpment", "a round hill"};
    if (!wind->hill) return tt_report_text(out, "orography %s", plain(&wind->orography, out));
    return tt_report_text(out, "%s of %s, half length %s, the crest %s away", words[wind->hill],
                          tt_say_exactly(out, wind->hill_height.is, "m", units, 1),
                          tt_say_exactly(out, wind->hill_half_length.is, "m", units, 1),
                          tt_say_exactly(out, wind->hill_from_crest.is, "m", units, 1));
}

static const char *european(const tt_site_wind *wind, const char *speed, tt_report *out)
{
    static const char *const terrains[] = {"0", "I", "II", "III", "IV"};
    const size_t terrain = (size_t)wind->exposure;
    const char *again = wind->once_in.origin ? tt_report_text(out, ", brought to once in %s years",
                                                              plain(&wind->once_in, out))
                                             : "";
    return tt_report_text(out,
                          "Wind: basic speed %s (mean of ten minutes, once in 50 years)%s, terrain "
                          "%s, orography %s, direction %s, season %s, air %s.",
                          speed, again, terrain < 5 ? terrains[terrain] : "none",
                          plain(&wind->orography, out), plain(&wind->direction_factor, out),
                          plain(&wind->season_factor, out),
                          tt_say_exactly(out, wind->air.is, "kg/m3", TT_METRIC, 1));
}

static const char *american(const tt_assessment *a, const char *speed, tt_report *out)
{
    const tt_site_wind *wind = &a->piece->site.wind;
    return tt_report_text(out,
                          "Wind: basic speed %s (gust of 3 s, %s level), exposure %c, "
                          "%s, directionality %s, %s the sea.",
                          speed, wind->speed_is == TT_SPEED_SERVICE ? "service" : "strength",
                          wind->exposure, hill(wind, a->piece->report, out),
                          plain(&wind->directionality, out),
                          over(wind->elevation.is, a->piece->report, out));
}

static const char *no_wind(const tt_site *site, tt_report *out)
{
    if (site->indoors) return "Wind: none, the piece stands indoors.";
    if (!site->wind.ruled_out) return "Wind: nothing was said of it, and none was computed.";
    const char *why = site->wind.none_because;
    return tt_report_text(out, "Wind: none, ruled out%s%s.", why ? ": " : "", why ? why : "");
}

void tt_compose_site(const tt_assessment *a, tt_report *out)
{
    const tt_site *site = &a->piece->site;
    const tt_unit_system units = a->piece->report;
    const bool blows = site->wind.given && !site->wind.ruled_out && !site->indoors;
    const char *speed =
        blows ? tt_say_exactly(out, site->wind.basic_speed.is, "m/s", units, 1) : "";
    if (!blows) tt_report_item(out, no_wind(site, out));
    if (blows && strcmp(a->basis->id, "us") == 0) tt_report_item(out, american(a, speed, out));
    if (blows && strcmp(a->basis->id, "us") != 0)
        tt_report_item(out, european(&site->wind, speed, out));
    tt_report_item(out, tt_report_text(out,
                                       "Site: %s, z = 0 lies %s the ground; damping %s "
                                       "(logarithmic decrement).",
                                       site->indoors ? "indoors" : "outdoors",
                                       over(site->base_height.is, units, out),
                                       plain(&site->damping, out)));
}
