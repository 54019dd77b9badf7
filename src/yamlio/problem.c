/* yamlio/problem.c - libyaml's problem in our words, with its place and what it was reading. */
#include "yamlio/problem.h"
#include "base/text.h"
#include "yamlio/foreign.h"

#include <string.h>

static const struct {
    const char *begins, *text, *hint;
} problems[] = {
#define TT_PROBLEM(begins, text, hint) {begins, text, hint},
#include "yamlio/problems.def"
#undef TT_PROBLEM
};

const char *tt_text_line(const char *text, size_t length, size_t line)
{
    const char *at = text, *end = text + length;
    for (; line > 0 && at; line--) {
        at = memchr(at, '\n', (size_t)(end - at));
        if (at) at++;
    }
    return at;
}

/* The column of a # that begins a remark behind something else on the line; 0: none. */
static unsigned remark_in(const char *text, size_t length, size_t line)
{
    const char *at = tt_text_line(text, length, line), *start = at, *end = text + length;
    for (bool said = false; at && at < end && *at != '\n'; at++) {
        if (*at == '#' && said && at[-1] == ' ')
            return (unsigned)tt_text_width(start, (size_t)(at - start)) + 1;
        said = said || *at != ' ';
    }
    return 0;
}

/* A character of the line that looks like another: its name, NULL when there is none. */
static const char *lookalike_in(const char *text, size_t length, size_t line, const char **hint,
                                size_t *column)
{
    char copy[400];
    const char *at = tt_text_line(text, length, line), *end = text + length;
    const char *stop = at ? memchr(at, '\n', (size_t)(end - at)) : NULL;
    const size_t n = at ? (size_t)((stop ? stop : end) - at) : sizeof copy;
    if (n >= sizeof copy) return NULL;
    memcpy(copy, at, n);
    copy[n] = '\0';
    return tt_lookalike(copy, true, hint, column);
}

/* The tab in the indentation of a line, counted from 1; 0 when there is none. */
static unsigned tab_in(const char *text, size_t length, size_t line)
{
    const char *at = tt_text_line(text, length, line), *end = text + length;
    for (unsigned column = 1; at && at < end && (*at == ' ' || *at == '\t'); at++, column++) {
        if (*at == '\t') return column;
    }
    return 0;
}

/* Behind the last character that prints; what follows it is lines that hold nothing. */
static yaml_mark_t last_of(const char *text, size_t length)
{
    while (length > 0 && strchr(" \t\r\n", text[length - 1])) length--;
    yaml_mark_t mark = {0};
    size_t start = 0;
    for (size_t i = 0; i < length; i++) {
        if (text[i] != '\n') continue;
        mark.line++;
        start = i + 1;
    }
    mark.column = tt_text_width(text + start, length - start);
    return mark;
}

/* At the end of the text the place that is of use is where the unfinished thing began, if it is
 * known. */
static yaml_mark_t place_of(const yaml_parser_t *parser, const char *text, size_t length,
                            bool *began)
{
    const bool marked = parser->error == YAML_SCANNER_ERROR || parser->error == YAML_PARSER_ERROR;
    const yaml_mark_t mark = marked ? parser->problem_mark : parser->mark;
    const bool over = parser->eof &&
                      *parser->buffer.pointer == '\0' && /* no zero byte comes here */
                      mark.index >= parser->mark.index;
    *began = marked && parser->context && over && parser->context_mark.index < mark.index;
    return *began ? parser->context_mark : over ? last_of(text, length) : mark;
}

void tt_problem_tell(const yaml_parser_t *parser, const char *text, size_t length, tt_diags *diags)
{
    bool began = false;
    const yaml_mark_t mark = place_of(parser, text, length, &began);
    const tt_place place = {(unsigned)mark.line + 1, (unsigned)mark.column + 1, 1};
    const unsigned tab = tab_in(text, length, mark.line);
    if (tab) {
        tt_complain(diags, TT_D_YAML, ((tt_place){place.line, tab, 1}), "indent with blanks",
                    "a tab in the indentation");
        return;
    }
    const char *character, *type;
    size_t before;
    character = lookalike_in(text, length, mark.line, &type, &before);
    if (character) {
        tt_complain(diags, TT_D_YAML, ((tt_place){place.line, (unsigned)before + 1, 1}), type,
                    "%s %s where it is not read", strchr("aeiou", character[0]) ? "an" : "a",
                    character);
        return;
    }
    const char *said = parser->problem ? parser->problem : "unreadable", *hint = NULL;
    for (size_t i = 0; i < sizeof problems / sizeof *problems; i++) {
        if (strncmp(said, problems[i].begins, strlen(problems[i].begins)) != 0) continue;
        said = problems[i].text;
        hint = problems[i].hint;
        break;
    }
    const size_t open = parser->context ? parser->context_mark.line : mark.line;
    const unsigned remark = strstr(said, "not closed") ? remark_in(text, length, open) : 0;
    if (remark) {
        tt_complain(diags, TT_D_YAML, ((tt_place){(unsigned)open + 1, remark, 1}),
                    "take it out, put it in quotes, or close the bracket before it",
                    "# begins a remark, and the bracket before it is open");
        return;
    }
    const bool elsewhere = parser->context && !began && parser->context_mark.line < mark.line;
    if (elsewhere)
        tt_complain(diags, TT_D_YAML, place, hint, "%s; what it belongs to begins in line %zu",
                    said, parser->context_mark.line + 1);
    else
        tt_complain(diags, TT_D_YAML, place, hint, "%s", said);
}
