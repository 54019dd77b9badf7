/* piecefile/head.c - the head of the file: units, scale, basis and edition, date, front. */
#include "piecefile/reader.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { LENGTH_WORDS = 64, HINT = 160 };
#define LIKELY 100.0 /* a larger scale is not proposed: assumption of this program */

static void read_unit(tt_reader *reader, const tt_node *node)
{
    const tt_key *key = tt_key_named(&tt_units_map, "length");
    const char *name = tt_take_text(reader, node, key);
    if (!name[0]) return;
    reader->unit = tt_length_unit(name);
    reader->unit_name = tt_keep(reader, name);
    if (reader->unit > 0) {
        if (strcmp(name, "in") == 0 || strcmp(name, "ft") == 0) reader->piece->report = TT_IMPERIAL;
        return;
    }
    reader->unit = 1e-3; /* so that not every bare length is told as well */
    reader->unit_name = "mm";
    char one[LENGTH_WORDS];
    snprintf(one, sizeof one, "1 %.40s", name);
    const tt_quantity q = tt_quantity_read(one, TT_Q_LENGTH, 0);
    const bool told = strncmp(q.hint, "write ", 6) == 0 && tt_length_unit(q.hint + 6) > 0;
    if (told) reader->unit = tt_length_unit(q.hint + 6);
    tt_wrong(reader, TT_D_UNIT_UNKNOWN, node,
             told ? q.hint : "for example: units: mm, or units: in",
             "`%.40s` is not a unit of length", name);
}

void tt_read_units(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    if (node->kind == TT_SCALAR) {
        read_unit(reader, node);
    } else if (node->kind == TT_MAPPING) {
        const tt_node *length = tt_tree_find(node, "length");
        if (length) read_unit(reader, length);
        tt_walk(reader, node, key->map, reader->piece);
    } else {
        tt_wrong_shape(reader, node, key);
    }
}

/* The length as written, with its unit: "400 mm". */
static void in_words(const tt_reader *reader, const tt_node *node, char words[LENGTH_WORDS])
{
    const tt_node *is = tt_tree_find(node, "is"), *value = is ? is : node;
    const tt_quantity q = tt_quantity_read(value->text, TT_Q_LENGTH, reader->unit);
    const bool needs = q.bare && reader->unit_name;
    snprintf(words, LENGTH_WORDS, "%.40s%s%.10s", value->text, needs ? " " : "",
             needs ? reader->unit_name : "");
}

/* "1.8 mm" from 400 mm was meant as 1.8 m: the same number in a larger unit that makes a scale. */
static void meant(const char *wanted, double measured, const tt_key *key, char hint[HINT])
{
    static const char *const larger[][2] = {{"mm", "m"}, {"cm", "m"}, {"in", "ft"}};
    const size_t number = strcspn(wanted, " ");
    snprintf(hint, HINT, "measured is the size of the maquette, wanted the full size");
    for (size_t i = 0; i < sizeof larger / sizeof *larger; i++) {
        char text[LENGTH_WORDS];
        if (strcmp(wanted + number + strspn(wanted + number, " "), larger[i][0]) != 0) continue;
        snprintf(text, sizeof text, "%.*s %s", (int)number, wanted, larger[i][1]);
        const double scale = tt_quantity_read(text, TT_Q_LENGTH, 0).value / measured;
        if (scale >= key->least && scale <= LIKELY) snprintf(hint, HINT, "did you mean %s?", text);
    }
}

static void too_small(tt_reader *reader, const tt_node *node, const tt_key *key, double measured)
{
    char wanted[LENGTH_WORDS], as_measured[LENGTH_WORDS], hint[HINT];
    in_words(reader, tt_tree_find(node, "wanted"), wanted);
    in_words(reader, tt_tree_find(node, "measured"), as_measured);
    meant(wanted, measured, key, hint);
    tt_wrong(reader, TT_D_SCALE, node, hint, "wanted %s is smaller than measured %s", wanted,
             as_measured);
}

static double ratio(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    tt_vec3 size = {NAN, NAN, NAN}; /* x measured, y wanted */
    tt_walk(reader, node, key->map, &size);
    const double scale = size.y / size.x;
    if (scale < key->least)
        too_small(reader, node, key, size.x);
    else if (scale > key->most)
        tt_wrong(reader, TT_D_SCALE, node, "check the units of both", "the scale is over %g",
                 key->most);
    else
        tt_origin_add(reader, node, "wanted over measured", NULL);
    return scale;
}

/* "1:3.6", "3.6 : 1", "1/3.6": the number that is meant, as it is written. */
static bool one_to(const char *text, char number[LENGTH_WORDS])
{
    char side[2][LENGTH_WORDS];
    const size_t left = strcspn(text, ":/");
    if (!text[left] || left >= LENGTH_WORDS) return false;
    snprintf(side[0], LENGTH_WORDS, "%.*s", (int)left, text);
    snprintf(side[1], LENGTH_WORDS, "%.60s", text + left + 1);
    double value[2];
    for (int i = 0; i < 2; i++) {
        const tt_quantity q = tt_quantity_read(side[i], TT_Q_PURE, 0);
        if (q.fault != TT_QUANTITY_OK || !(q.value > 0)) return false;
        value[i] = q.value;
    }
    snprintf(number, LENGTH_WORDS, "%.6g", fmax(value[0], value[1]) / fmin(value[0], value[1]));
    return true;
}

/* Told when the scale is written as a ratio and is none that is read. */
static bool told_ratio(tt_reader *reader, const tt_node *value, const tt_key *key)
{
    char number[LENGTH_WORDS], hint[HINT];
    if (value->kind != TT_SCALAR || !one_to(value->text, number)) return false;
    if (tt_quantity_read(value->text, TT_Q_PURE, 0).value >= key->least) return false;
    snprintf(hint, sizeof hint, "write %.40s: full size over measured size", number);
    tt_wrong(reader, TT_D_SCALE, value, hint, "the scale is one number; `%.40s` is two",
             value->text);
    return true;
}

static double factor(tt_reader *reader, const tt_node *node, const tt_key *key)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    tt_key wide = *key;
    wide.least = -INFINITY;
    if (told_ratio(reader, value, key)) return NAN;
    const double scale = tt_take_number(reader, value, &wide);
    if (scale < key->least)
        tt_wrong(reader, TT_D_SCALE, value, "a maquette grows: 1 or more, or {measured, wanted}",
                 "the scale is below one");
    return scale;
}

/* Under a scale that is refused every length that it touches is NaN: told once, here. */
void tt_read_scale(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    const bool map = node->kind == TT_MAPPING && !tt_tree_find(node, "is");
    const double scale = map ? ratio(reader, node, key) : factor(reader, node, key);
    reader->own_scale = scale >= key->least && scale <= key->most ? scale : NAN;
    if (!reader->scale_option) reader->piece->scale = reader->own_scale;
}

static void wrong_option(tt_reader *reader, const char *scale, const tt_quantity *q)
{
    const tt_key *key = &tt_set_scale;
    const bool read = q->fault == TT_QUANTITY_OK;
    char hint[HINT], number[LENGTH_WORDS];
    snprintf(hint, sizeof hint, "%.*s%sa maquette grows by %g to %g, as in `%s`",
             read ? 0 : (int)q->plain, q->hint, read ? "" : "; ", key->least, key->most,
             key->example);
    if (one_to(scale, number)) snprintf(hint, sizeof hint, "write %.40s", number);
    tt_diags_about(reader->diags, "--scale", scale, strlen(scale));
    tt_complain(reader->diags, read ? TT_D_SCALE : TT_D_NUMBER_BAD,
                ((tt_place){1, 1, (unsigned)strlen(scale)}), hint, "`%.40s` is not a scale", scale);
    tt_diags_about(reader->diags, reader->file, reader->text, reader->length);
}

void tt_read_scale_option(tt_reader *reader, const char *scale)
{
    const tt_quantity q = tt_quantity_read(scale, TT_Q_PURE, 0);
    const tt_key *key = &tt_set_scale;
    const bool good = q.fault == TT_QUANTITY_OK && q.value >= key->least && q.value <= key->most;
    reader->piece->scale = good ? q.value : NAN;
    reader->scale_option = true;
    if (!good) {
        wrong_option(reader, scale, &q);
        return;
    }
    const tt_node node = {.set = true};
    tt_enter(reader, "scale");
    tt_origin_add(reader, &node, scale, NULL);
    tt_leave(reader);
}

/* A word that is kept with its origin. */
static int word(tt_reader *reader, const tt_node *node, const tt_key *key, const char *const *words,
                unsigned *origin)
{
    const int found = tt_take_word(reader, node, key, words);
    if (found >= 0 && !reader->defaulting)
        *origin = tt_origin_add(reader, node, words[found], NULL);
    return found;
}

void tt_read_basis(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    const int found = word(reader, node, key, key->words, &reader->piece->basis_origin);
    reader->us = found == 1 || (found < 0 && tt_same_letters(value->text, "us"));
    reader->basis_lost = found < 0 && !reader->us && !tt_same_letters(value->text, "eu");
    reader->piece->basis = key->words[found == 1];
}

void tt_read_edition(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    const char *const *words = tt_editions(reader->us);
    const int found =
        reader->basis_lost ? -1 : word(reader, node, key, words, &reader->piece->edition_origin);
    if (found >= 0) reader->piece->edition = words[found];
}

static bool is_date(const char *text)
{
    static const char form[] = "dddd-dd-dd";
    size_t i = 0;
    for (; form[i] && text[i]; i++)
        if (form[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != form[i]) return false;
    if (form[i] || text[i]) return false;
    static const int days[] = {31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const int month = 10 * (text[5] - '0') + text[6] - '0',
              day = 10 * (text[8] - '0') + text[9] - '0';
    return month >= 1 && month <= 12 && day >= 1 && day <= days[month - 1];
}

void tt_read_date(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    const char *text = tt_take_text(reader, node, key);
    if (is_date(text))
        *(const char **)field = tt_keep(reader, text);
    else if (text[0])
        tt_wrong_shape(reader, node, key);
}

static bool axis(const char *text, tt_vec3 *out)
{
    const double s = text[0] == '-' ? -1 : 1;
    if ((text[0] != '+' && text[0] != '-') || !text[1] || text[2]) return false;
    *out = (tt_vec3){text[1] == 'x' ? s : 0, text[1] == 'y' ? s : 0, text[1] == 'z' ? s : 0};
    return text[1] >= 'x' && text[1] <= 'z';
}

static bool direction(tt_reader *reader, const tt_node *node, const tt_key *key, tt_vec3 *out)
{
    const char *because;
    const tt_node *value = tt_value(reader, node, &because);
    if (value->kind == TT_SCALAR && axis(value->text, out)) return true;
    if (value->kind != TT_SEQUENCE) {
        tt_wrong(reader, TT_D_WORD, value,
                 "it reads +x, -x, +y, -y, +z, -z or a vector such as "
                 "[1, 0.5, 0]",
                 "`%s` is a direction", key->name);
        return false;
    }
    tt_vec3 to;
    if (!tt_take_triple(reader, value, &tt_direction, &to)) return false;
    if (tt_length(to) > 0)
        *out = tt_unit(to);
    else
        tt_wrong(reader, TT_D_RANGE, value, "for example: faces: [1, 0.5, 0]",
                 "`faces` points nowhere");
    return tt_length(to) > 0;
}

void tt_read_front(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    (void)field;
    direction(reader, node, key, &reader->faces);
    reader->piece->faces = reader->faces;
}

void tt_read_faces(tt_reader *reader, const tt_node *node, const tt_key *key, void *field)
{
    tt_said_faces *faces = field;
    faces->said = direction(reader, node, key, &faces->to);
}

static unsigned newest(const tt_reader *reader)
{
    return (unsigned)(reader->piece->origins.n - 1);
}

void tt_head_defaults(tt_reader *reader)
{
    const tt_map *map = &tt_root_map;
    tt_piece *piece = reader->piece;
    tt_default(reader, reader->root, map, "basis", piece);
    if (!tt_tree_find(reader->root, "basis")) piece->basis_origin = newest(reader);
    if (!tt_tree_find(reader->root, "edition")) {
        piece->edition = tt_editions(reader->us)[0];
        piece->edition_origin =
            tt_origin_default(reader, "edition", piece->edition, tt_key_named(map, "edition")->why);
    }
    tt_default(reader, reader->root, map, "risk", piece);
    tt_default(reader, reader->root, map, "faces", piece);
    if (!reader->scale_option) tt_default(reader, reader->root, map, "scale", piece);
}
