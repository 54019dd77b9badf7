/* piecefile/piecefile.c - tt_piece_read: text to tree, changes of the command line, keys by their
 * table, drafts to segments, rules over the whole. */
#include "base/sha256.h"
#include "piecefile/works.h"

static void read_absent(tt_reader *reader, const char *name)
{
    if (tt_tree_find(reader->root, name)) return;
    const tt_key *key = tt_key_named(&tt_root_map, name);
    tt_enter(reader, name);
    key->read(reader, NULL, key, NULL);
    tt_leave(reader);
}

static void read_all(tt_reader *reader)
{
    tt_walk(reader, reader->root, &tt_root_map, reader->piece);
    if (reader->root->kind != TT_MAPPING) return;
    read_absent(reader, "site");
    read_absent(reader, "limits");
    tt_head_defaults(reader);
    tt_finish_segments(reader);
    tt_finish_joins(reader);
    tt_read_works(reader);
    tt_site_defaults(reader);
    tt_tell_bare(reader);
    if (!reader->no_memory) tt_rules(reader);
}

static tt_status start(tt_reader *reader, const tt_changes *changes)
{
    char digest[65];
    tt_sha256_hex(reader->text, reader->length, digest);
    reader->piece->file = tt_keep(reader, reader->file);
    reader->piece->sha256 = tt_keep(reader, digest);
    reader->piece->basis = "eu";
    reader->piece->data = reader->data = changes ? changes->data : NULL;
    reader->faces = (tt_vec3){1, 0, 0};
    tt_node *root = NULL;
    const tt_status status =
        tt_tree_read(reader->text, reader->length, &reader->trees, reader->diags, &root);
    if (status != TT_OK) return status;
    reader->root = root;
    tt_join_commas(reader, root);
    if (changes && changes->sets && !tt_apply_sets(reader, root, changes)) return TT_E_NOMEM;
    if (changes && changes->scale) tt_read_scale_option(reader, changes->scale);
    return TT_OK;
}

static void clear(tt_reader *reader)
{
    tt_list_clear(&reader->own);
    tt_list_clear(&reader->made);
    tt_list_clear(&reader->drafts);
    tt_list_clear(&reader->joins);
    tt_list_clear(&reader->sets);
    tt_list_clear(&reader->later);
    tt_list_clear(&reader->weighed);
    tt_pool_clear(&reader->trees);
}

tt_status tt_piece_read(const char *file, const char *text, size_t length,
                        const tt_changes *changes, tt_diags *diags, tt_piece **piece)
{
    *piece = NULL;
    tt_reader reader = {.piece = tt_piece_new(),
                        .diags = diags,
                        .file = file,
                        .text = text,
                        .length = length,
                        .own_scale = 1,
                        .changes = changes};
    if (!reader.piece) return TT_E_NOMEM;
    const size_t errors = tt_diags_errors(diags);
    reader.errors = errors;
    tt_diags_about(diags, file, text, length);
    tt_status status = start(&reader, changes);
    if (status == TT_OK) read_all(&reader);
    const bool good = status == TT_OK && tt_diags_errors(diags) == errors;
    if (good && changes && changes->rewritable) tt_write_again(&reader);
    if (reader.no_memory || tt_diags_short(diags))
        status = TT_E_NOMEM;
    else if (status == TT_OK && tt_diags_errors(diags) > errors)
        status = TT_E_INPUT;
    tt_diags_about(diags, file, NULL, 0);
    clear(&reader);
    if (status == TT_OK)
        *piece = reader.piece;
    else
        tt_piece_free(reader.piece);
    return status;
}
