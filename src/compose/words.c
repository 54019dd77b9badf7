/* compose/words.c - numbers and names in the words of the report. */
#include "compose/parts.h"

#include <math.h>
#include <string.h>

enum { DIGITS = 3 };

static tt_kind kind_of(const char *unit)
{
    int kind = 0;
    while (kind < TT_Q_COUNT && strcmp(tt_kind_si((tt_kind)kind), unit) != 0) kind++;
    return (tt_kind)kind;
}

const char *tt_say(tt_report *out, double value, const char *unit, tt_unit_system system)
{
    const tt_kind kind = kind_of(unit ? unit : "");
    out->not_finite |= !isfinite(value);
    if (kind == TT_Q_COUNT) return tt_report_text(out, "%.*g %s", DIGITS, value, unit);
    tt_text words = {0};
    tt_quantity_write(&words, value, kind, system, DIGITS);
    if (words.failed) out->failed = true;
    const char *text = tt_report_text(out, "%s", tt_text_of(&words));
    tt_text_clear(&words);
    return text;
}

const char *tt_say_beside(tt_report *out, double value, double largest, const char *unit,
                          tt_unit_system system)
{
    const tt_kind kind = kind_of(unit);
    if (kind == TT_Q_COUNT || !isfinite(value) || !isfinite(largest))
        return tt_say(out, value, unit, system);
    tt_text words = {0}, one = {0};
    tt_quantity_write(&words, largest, kind, system, DIGITS);
    const char *blank = strchr(tt_text_of(&words), ' ');
    const char *name = blank ? tt_report_text(out, "%s", blank + 1) : "";
    tt_text_format(&one, "1 %s", name);
    const double factor = *name ? tt_quantity_read(tt_text_of(&one), kind, 0.0).value : 1.0;
    if (words.failed) out->failed = true;
    tt_text_clear(&words);
    tt_quantity_write(&words, factor > 0.0 ? value / factor : value, TT_Q_PURE, system, DIGITS);
    if (words.failed || one.failed) out->failed = true;
    const char *text = tt_report_text(out, "%s%s%s", tt_text_of(&words), *name ? " " : "", name);
    tt_text_clear(&words);
    tt_text_clear(&one);
    return text;
}

static const char *quantity(tt_report *out, double value, tt_kind kind, tt_unit_system system,
                            int digits, bool *same)
{
    tt_text words = {0};
    tt_quantity_write(&words, value, kind, system, digits);
    const double again = tt_quantity_read(tt_text_of(&words), kind, 0.0).value;
    *same = words.failed || fabs(again - value) <= 1e-9 * fabs(value);
    if (words.failed) out->failed = true;
    const char *text = tt_report_text(out, "%s", tt_text_of(&words));
    tt_text_clear(&words);
    return text;
}

const char *tt_say_exactly(tt_report *out, double value, const char *unit, tt_unit_system system,
                           int least)
{
    enum { MOST = 6, OTHERWISE = 4 };
    const tt_kind kind = kind_of(unit);
    out->not_finite |= !isfinite(value);
    bool same = false;
    const char *text = "";
    for (int digits = least; !same && digits <= MOST; digits++)
        text = quantity(out, value, kind, system, digits, &same);
    return same ? text : quantity(out, value, kind, system, OTHERWISE, &same);
}

const char *tt_say_source(tt_report *out, const tt_source *source)
{
    tt_text words = {0};
    tt_source_words(&words, source);
    if (words.failed) out->failed = true;
    const char *text =
        tt_report_text(out, "%s (%s)", tt_text_of(&words), tt_mark_word(source->mark));
    tt_text_clear(&words);
    return text;
}

static bool digit(char c)
{
    return c >= '0' && c <= '9';
}

const char *tt_say_tied(tt_report *out, const char *text)
{
    static const char wind[] = "wind ";
    enum { LENGTH = sizeof wind - 1 };
    char *tied = tt_pool_text(&out->pool, text);
    if (!tied) out->failed = true;
    for (char *at = tied ? strstr(tied, wind) : NULL; at; at = strstr(at + LENGTH, wind)) {
        if (!digit(at[LENGTH])) continue;
        at[LENGTH - 1] = *TT_TIE;
        if (at > tied + 1 && at[-1] == ' ' && digit(at[-2])) at[-1] = *TT_TIE;
    }
    return tied ? tied : "";
}

const char *tt_say_wind_in(tt_report *out, const char *together)
{
    static const char wind[] = "wind ";
    enum { LENGTH = sizeof wind - 1 };
    const char *at = together ? strstr(together, wind) : NULL;
    while (at && !digit(at[LENGTH])) at = strstr(at + LENGTH, wind);
    if (!at) return NULL;
    const int digits = (int)strspn(at + LENGTH, "0123456789");
    return tt_report_text(out, "wind" TT_TIE "%.*s", digits, at + LENGTH);
}

static const char *title_of(const char *name)
{
    for (size_t i = 0; i < tt_checks_count(); i++) {
        if (strcmp(tt_checks_at(i)->name, name) == 0) return tt_checks_at(i)->title;
    }
    return NULL;
}

const char *tt_say_check(const char *name)
{
    static const char *const words[][2] = {
#define TT_NAME(name, words) {name, words},
#include "compose/names.def"
#undef TT_NAME
    };
    const char *said = title_of(name);
    for (size_t i = 0; !said && i < sizeof words / sizeof *words; i++) {
        if (strcmp(words[i][0], name) == 0) said = words[i][1];
    }
    return said ? said : name;
}

/* Per cent rounded up with this many decimals; what floating point adds in the last digits is not
 * taken for more. */
static double up(double use, int decimals)
{
    const double ten = pow(10.0, decimals);
    return ceil(use * 100.0 * ten - 1e-7) / ten + 0.0; /* never -0 */
}

/* Does the printed figure say what the judgement says? */
static bool agrees(double percent, const tt_finding *finding, double allowed)
{
    const double limit = allowed * 100.0;
    return finding->holds ? percent <= limit + 1e-9 : percent > limit + 1e-9;
}

bool tt_margin_of_neck(const tt_assessment *a, const tt_finding *finding)
{
    if (!finding->has_use || strcmp(finding->check, "strength.bronze") != 0) return false;
    return (finding->margin + 1.0) * finding->use < a->piece->limits.use.is * (1.0 - 1e-9);
}

bool tt_never_fits(const tt_finding *finding)
{
    return strcmp(finding->check, "fit") == 0 && finding->has_use && !finding->holds;
}

const char *tt_say_misfit(tt_report *out, const tt_assessment *a, const tt_finding *finding)
{
    const tt_unit_system units = a->piece->report;
    const double more = fmax(finding->demand, finding->resistance);
    return tt_report_text(out, "needs %s, has %s",
                          tt_say_beside(out, finding->demand, more, finding->unit, units),
                          tt_say_beside(out, finding->resistance, more, finding->unit, units));
}

const char *tt_say_use(tt_report *out, const tt_finding *finding, double allowed)
{
    enum { MOST = 1000 };
    if (!finding->has_use) return "none";
    out->not_finite |= !isfinite(finding->use);
    int decimals = 0;
    if (finding->holds) {
        while (decimals < 3 && !agrees(up(finding->use, decimals), finding, allowed)) decimals++;
    }
    double percent = up(finding->use, decimals);
    if (!finding->holds && !agrees(percent, finding, allowed))
        percent = floor(allowed * 100.0) + 1.0;
    const char *use =
        percent > MOST ? "over 1000 %" : tt_report_text(out, "%.*f %%", decimals, percent);
    if (allowed == 1.0) return use;
    return tt_report_text(out, "%s of %g %% allowed", use, allowed * 100.0);
}

const char *tt_say_margin(tt_report *out, const tt_finding *finding)
{
    enum { MOST = 1000 };
    if (!finding->has_use) return "none";
    if (finding->use == 0.0 || finding->margin * 100.0 > MOST) return "over 1000 %";
    out->not_finite |= !isfinite(finding->margin);
    const double percent = floor(finding->margin * 100.0 + 1e-7);
    return tt_report_text(out, "%.0f %%", !finding->holds && percent >= 0.0 ? -1.0 : percent + 0.0);
}

bool tt_two_models(const tt_assessment *a)
{
    for (size_t i = 0; i < a->piece->segments.n; i++) {
        const tt_segment *segment = &a->piece->segments.at[i];
        if (segment->armature.form != TT_MEMBER_NONE && segment->alloy != TT_NONE) return true;
    }
    return false;
}

const char *tt_say_loads(tt_report *out, const tt_assessment *a, const tt_finding *finding)
{
    if (!finding->combination) return "";
    const char *together = tt_say_tied(out, finding->combination);
    if (!finding->pattern || !finding->model) return together;
    if (!tt_two_models(a)) return tt_report_text(out, "%s (%s weight)", together, finding->pattern);
    return tt_report_text(out, "%s (%s weight, %s)", together, finding->pattern, finding->model);
}

const char *tt_say_bearing(tt_report *out, tt_vec3 way)
{
    const double degrees = fmod(atan2(way.y, way.x) * 180.0 / acos(-1.0) + 360.0, 360.0);
    return tt_report_text(out, "%.0f deg", degrees >= 359.5 ? 0.0 : degrees);
}
