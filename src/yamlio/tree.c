/* yamlio/tree.c - YAML text to a tree: the text is checked, then parsed event by event. */
#include "yamlio/tree.h"
#include "yamlio/builder.h"
#include "yamlio/encoding.h"
#include "yamlio/foreign.h"
#include "yamlio/problem.h"

static const tt_place beginning = {1, 1, 1};

bool tt_text_is_read(const char *text, size_t length, tt_diags *diags)
{
    tt_stray stray;
    if (length > TT_TREE_BYTES) {
        tt_complain(diags, TT_D_TOO_MUCH, beginning, "split the file",
                    "the file is larger than 4 MiB");
        return false;
    }
    if (tt_encoding_check(text, length, &stray)) return true;
    const tt_place place = {stray.line, stray.column, 1};
    const char *hint, *foreign = tt_foreign(text, length, &hint);
    if (foreign)
        tt_complain(diags, TT_D_ENCODING, beginning, hint, "%s", foreign);
    else if (stray.utf8)
        tt_complain(diags, TT_D_ENCODING, place, "retype this character or take it out",
                    "the control character U+%04lX", stray.code);
    else
        tt_complain(diags, TT_D_ENCODING, place, "save the file as UTF-8 text",
                    "the byte 0x%02X is not UTF-8 text", (unsigned char)text[stray.at]);
    return false;
}

static tt_status parse(yaml_parser_t *parser, tt_builder *b, const char *text, size_t length)
{
    tt_status status = TT_OK;
    for (bool more = true; more && status == TT_OK;) {
        yaml_event_t event;
        if (!yaml_parser_parse(parser, &event)) {
            if (parser->error == YAML_MEMORY_ERROR) return TT_E_NOMEM;
            tt_problem_tell(parser, text, length, b->diags);
            return TT_E_INPUT;
        }
        more = event.type != YAML_STREAM_END_EVENT;
        status = tt_builder_take(b, &event);
        yaml_event_delete(&event);
    }
    return status;
}

static tt_status build(tt_builder *b, const char *text, size_t length)
{
    yaml_parser_t parser;
    if (!yaml_parser_initialize(&parser)) return TT_E_NOMEM;
    yaml_parser_set_input_string(&parser, (const unsigned char *)(length ? text : ""), length);
    const tt_status status = parse(&parser, b, text, length);
    yaml_parser_delete(&parser);
    return status;
}

static bool says_nothing(const tt_node *root)
{
    return !root || (root->kind == TT_SCALAR && root->text[0] == '\0');
}

tt_status tt_tree_read(const char *text, size_t length, tt_pool *pool, tt_diags *diags,
                       tt_node **root)
{
    const size_t errors = tt_diags_errors(diags);
    *root = NULL;
    if (!tt_text_is_read(text, length, diags)) return TT_E_INPUT;
    tt_builder b = {.pool = pool, .diags = diags, .at = text, .end = text + length};
    tt_status status = build(&b, text, length);
    tt_list_clear(&b.pending);
    tt_list_clear(&b.anchors);
    if (status == TT_OK && says_nothing(b.root))
        tt_complain(diags, TT_D_EMPTY, beginning, tt_number_cure(TT_D_EMPTY), "the file is empty");
    if (status == TT_OK && tt_diags_errors(diags) > errors) status = TT_E_INPUT;
    if (tt_diags_short(diags)) status = TT_E_NOMEM;
    if (status == TT_OK) *root = b.root;
    return status;
}
