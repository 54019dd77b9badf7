/* yamlio/builder.c - libyaml events to nodes. The open levels are a stack of fixed depth; their
 * finished children wait in one list until the level closes. */
#include "yamlio/builder.h"
#include "base/text.h"
#include "yamlio/encoding.h"
#include "yamlio/foreign.h"

#include <string.h>

tt_place tt_event_place(const yaml_event_t *event)
{
    const yaml_mark_t start = event->start_mark, end = event->end_mark;
    const bool wide = event->type == YAML_SCALAR_EVENT || event->type == YAML_ALIAS_EVENT;
    const size_t width =
        wide && end.line == start.line && end.column > start.column ? end.column - start.column : 1;
    return (tt_place){(unsigned)start.line + 1, (unsigned)start.column + 1, (unsigned)width};
}

/* Where the text of a scalar begins when an anchor or a tag stands before it on the line. */
static tt_place scalar_place(const yaml_event_t *event)
{
    tt_place place = tt_event_place(event);
    const bool block = event->data.scalar.style == YAML_LITERAL_SCALAR_STYLE ||
                       event->data.scalar.style == YAML_FOLDED_SCALAR_STYLE;
    if ((!event->data.scalar.anchor && !event->data.scalar.tag) || block) return place;
    const size_t marks = event->data.scalar.style == YAML_PLAIN_SCALAR_STYLE ? 0 : 2;
    const size_t width =
        tt_text_width((const char *)event->data.scalar.value, event->data.scalar.length) + marks;
    if (width == 0 || width >= place.width) return place;
    place.column += place.width - (unsigned)width;
    place.width = (unsigned)width;
    return place;
}

static tt_level *top(tt_builder *b)
{
    return b->depth ? &b->level[b->depth - 1] : NULL;
}

static bool key_is_due(tt_builder *b)
{
    const tt_level *level = top(b);
    return level && level->node->kind == TT_MAPPING && !level->key;
}

/* A new node, counted. */
static tt_status make(tt_builder *b, tt_node_kind kind, tt_place place, tt_node **node)
{
    if (++b->nodes > TT_TREE_NODES) {
        tt_complain(b->diags, TT_D_TOO_MUCH, place, "split the file",
                    "more than %d values in one file", TT_TREE_NODES);
        return TT_E_INPUT;
    }
    *node = tt_pool_take(b->pool, 1, sizeof **node);
    if (!*node) return TT_E_NOMEM;
    (*node)->kind = kind;
    (*node)->place = place;
    return TT_OK;
}

/* Hands a node, finished or open, to the level that it stands in. */
static tt_status attach(tt_builder *b, tt_node *node)
{
    tt_level *level = top(b);
    if (!level) {
        b->root = node;
        return TT_OK;
    }
    node->key = level->key;
    node->key_place = level->key_place;
    level->key = NULL;
    return tt_list_push(&b->pending, node) ? TT_OK : TT_E_NOMEM;
}

static bool tag_is_read(const yaml_char_t *tag, bool scalar)
{
    const char *text = (const char *)tag;
    return !text || (scalar && (strcmp(text, "!") == 0 || strcmp(text, YAML_STR_TAG) == 0));
}

static void check_tag(tt_builder *b, const yaml_char_t *tag, bool scalar, tt_place place)
{
    if (tag_is_read(tag, scalar)) return;
    tt_complain(b->diags, TT_D_YAML, place, "take out the word with the exclamation mark",
                "tags are not read here");
}

/* Escapes in double quotes may write what the text itself may not hold. */
static void check_characters(tt_builder *b, const yaml_event_t *event, tt_place place)
{
    tt_stray stray;
    const char *text = (const char *)event->data.scalar.value;
    if (tt_encoding_check(text, event->data.scalar.length, &stray)) return;
    tt_complain(b->diags, TT_D_ENCODING, place, "take the escape out",
                "an escape that stands for the control character U+%04lX", stray.code);
}

/* A plain text with a character that looks like another. */
static void doubt_characters(tt_builder *b, const yaml_event_t *event, tt_place place)
{
    const char *hint;
    size_t at;
    if (event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE) return;
    const char *name = tt_lookalike((const char *)event->data.scalar.value, false, &hint, &at);
    if (!name) return;
    place.column += (unsigned)at;
    place.width = 1;
    tt_diags_add(b->diags, TT_WARNING, TT_D_CHARACTER, place, hint, "%s %s stands in this text",
                 strchr("aeiou", name[0]) ? "an" : "a", name);
}

/* Behind the event in the text. Events come in order: the place is followed from the last one. */
static const char *behind(tt_builder *b, const yaml_event_t *event)
{
    for (; b->lines < event->end_mark.line; b->lines++, b->columns = 0) {
        const char *next = memchr(b->at, '\n', (size_t)(b->end - b->at));
        b->at = next ? next + 1 : b->end;
    }
    for (; b->columns < event->end_mark.column && b->at < b->end; b->columns++) {
        unsigned long code;
        const size_t n =
            tt_character((const unsigned char *)b->at, (size_t)(b->end - b->at), &code);
        b->at += n ? n : 1;
    }
    return b->at;
}

/* Words, a blank, # and a digit: "Dancer #3" without its quotes. */
static void doubt_remark(tt_builder *b, const yaml_event_t *event, tt_place place)
{
    const char *text = (const char *)event->data.scalar.value;
    const bool one_line = event->start_mark.line == event->end_mark.line;
    if (event->data.scalar.style != YAML_PLAIN_SCALAR_STYLE || !one_line) return;
    if (strchr("0123456789.-+", text[0])) return;
    const char *at = behind(b, event);
    if (b->end - at < 3 || at[0] != ' ' || at[1] != '#' || at[2] < '0' || at[2] > '9') return;
    tt_diags_add(b->diags, TT_WARNING, TT_D_REMARK, place, "put the text in quotes, with the #",
                 "# begins a remark: the text that is read is `%.60s`", text);
}

static tt_status take_key(tt_builder *b, const yaml_event_t *event)
{
    const tt_place place = scalar_place(event);
    const char *text = (const char *)event->data.scalar.value;
    if (event->data.scalar.anchor)
        tt_complain(b->diags, TT_D_YAML, place, "set the anchor behind the colon",
                    "an anchor before a key");
    if (strcmp(text, "<<") == 0 && event->data.scalar.style == YAML_PLAIN_SCALAR_STYLE)
        tt_complain(b->diags, TT_D_YAML, place,
                    "write the keys out; an alias may stand for one whole value",
                    "the merge key << is not read");
    tt_level *level = top(b);
    level->key = tt_pool_copy(b->pool, text, event->data.scalar.length);
    level->key_place = place;
    return level->key ? TT_OK : TT_E_NOMEM;
}

static tt_status take_scalar(tt_builder *b, const yaml_event_t *event)
{
    const tt_place place = scalar_place(event);
    const yaml_scalar_style_t style = event->data.scalar.style;
    check_tag(b, event->data.scalar.tag, true, tt_event_place(event));
    check_characters(b, event, place);
    doubt_characters(b, event, place);
    if (!key_is_due(b)) doubt_remark(b, event, place);
    if (key_is_due(b)) return take_key(b, event);
    tt_node *node = NULL;
    tt_status status = make(b, TT_SCALAR, place, &node);
    if (status) return status;
    node->text =
        tt_pool_copy(b->pool, (const char *)event->data.scalar.value, event->data.scalar.length);
    if (!node->text) return TT_E_NOMEM;
    node->quoted =
        style == YAML_SINGLE_QUOTED_SCALAR_STYLE || style == YAML_DOUBLE_QUOTED_SCALAR_STYLE;
    size_t anchor = 0;
    status = tt_builder_anchor(b, event, (const char *)event->data.scalar.anchor, node, &anchor);
    if (status) return status;
    if (anchor) b->anchors.at[anchor - 1].nodes = 1;
    return attach(b, node);
}

static tt_status no_scalar_key(tt_builder *b, const yaml_event_t *event)
{
    tt_complain(b->diags, TT_D_YAML, tt_event_place(event), "a key is a plain word, such as wall",
                "a key that is no plain text");
    return TT_E_INPUT;
}

static tt_status open_level(tt_builder *b, const yaml_event_t *event, tt_node_kind kind,
                            const yaml_char_t *anchor, const yaml_char_t *tag)
{
    const tt_place place = tt_event_place(event);
    if (key_is_due(b)) return no_scalar_key(b, event);
    if (b->depth == TT_TREE_DEPTH) {
        tt_complain(b->diags, TT_D_TOO_DEEP, place, NULL, "nested more than %d deep",
                    TT_TREE_DEPTH);
        return TT_E_INPUT;
    }
    check_tag(b, tag, false, place);
    tt_level level = {.before = b->nodes};
    tt_status status = make(b, kind, place, &level.node);
    if (!status)
        status = tt_builder_anchor(b, event, (const char *)anchor, level.node, &level.anchor);
    if (!status) status = attach(b, level.node);
    if (status) return status;
    level.first = b->pending.n;
    b->level[b->depth++] = level;
    return TT_OK;
}

static tt_status close_level(tt_builder *b)
{
    tt_level *level = &b->level[--b->depth];
    tt_node *node = level->node;
    node->n = b->pending.n - level->first;
    node->child = tt_pool_take(b->pool, node->n, sizeof *node->child);
    if (!node->child) return TT_E_NOMEM;
    if (node->n) memcpy(node->child, b->pending.at + level->first, node->n * sizeof *node->child);
    b->pending.n = level->first;
    if (level->anchor) b->anchors.at[level->anchor - 1].nodes = b->nodes - level->before;
    return node->kind == TT_MAPPING ? tt_builder_keys(b, node) : TT_OK;
}

static tt_status take_alias(tt_builder *b, const yaml_event_t *event)
{
    if (key_is_due(b)) return no_scalar_key(b, event);
    tt_node *copy = NULL;
    const tt_status status = tt_builder_alias(b, event, &copy);
    return status ? status : attach(b, copy);
}

static tt_status take_document(tt_builder *b, const yaml_event_t *event)
{
    if (b->documents++ == 0) return TT_OK;
    tt_complain(b->diags, TT_D_SECOND_DOCUMENT, tt_event_place(event),
                tt_number_cure(TT_D_SECOND_DOCUMENT), "a second document begins here");
    return TT_E_INPUT;
}

tt_status tt_builder_take(tt_builder *b, const yaml_event_t *event)
{
    switch (event->type) {
    case YAML_DOCUMENT_START_EVENT:
        return take_document(b, event);
    case YAML_SCALAR_EVENT:
        return take_scalar(b, event);
    case YAML_ALIAS_EVENT:
        return take_alias(b, event);
    case YAML_SEQUENCE_START_EVENT:
        return open_level(b, event, TT_SEQUENCE, event->data.sequence_start.anchor,
                          event->data.sequence_start.tag);
    case YAML_MAPPING_START_EVENT:
        return open_level(b, event, TT_MAPPING, event->data.mapping_start.anchor,
                          event->data.mapping_start.tag);
    case YAML_SEQUENCE_END_EVENT:
    case YAML_MAPPING_END_EVENT:
        return close_level(b);
    default:
        return TT_OK;
    }
}
