/* piecefile/neighbours.c - files that stand beside the piece file, handed in by the caller. What
 * comes from one keeps its place there, so that it is told with that file's name. */
#include "base/text.h"
#include "piecefile/reader.h"

#include <string.h>

enum { MOST = 4 * 1024 * 1024 + 1 }; /* bytes: one more than a table may have */

typedef struct {
    tt_text text;
    bool full;
} tt_gathered;

static int gather(void *user, const char *bytes, size_t n)
{
    tt_gathered *all = user;
    all->full = all->full || n > MOST - all->text.n;
    if (all->full) n = MOST - all->text.n;
    if (n) tt_text_add(&all->text, bytes, n);
    return all->full || all->text.failed;
}

/* A plain name, or one in a folder below: no way up, no way from the root. */
static bool beside(const char *name)
{
    return name[0] && name[0] != '/' && strcmp(name, "..") != 0 && strncmp(name, "../", 3) != 0 &&
           !strstr(name, "/../");
}

static bool ask(tt_reader *reader, const tt_node *node, tt_gathered *all)
{
    const tt_changes *changes = reader->changes;
    if (!beside(node->text)) {
        tt_wrong(reader, TT_D_NEIGHBOUR, node, "for example: scales.csv",
                 "`%.80s` is no file beside the piece file", node->text);
        return false;
    }
    if (!changes || !changes->neighbour) {
        tt_wrong(reader, TT_D_NEIGHBOUR, node, "write its rows into the piece file",
                 "files beside the piece file are not read here");
        return false;
    }
    if (changes->neighbour(changes->neighbour_user, node->text, gather, all) == 0 || all->full)
        return true;
    if (!all->text.failed)
        tt_wrong(reader, TT_D_NEIGHBOUR, node, tt_number_cure(TT_D_NEIGHBOUR),
                 "the file `%.80s` cannot be read", node->text);
    return false;
}

const char *tt_neighbour_text(tt_reader *reader, const tt_node *node, size_t *length)
{
    tt_gathered all = {0};
    const bool there = ask(reader, node, &all);
    const char *text = tt_pool_copy(&reader->trees, tt_text_of(&all.text), all.text.n);
    if (all.text.failed || !text) reader->no_memory = true;
    *length = all.text.n;
    tt_text_clear(&all.text);
    return there && !reader->no_memory ? text : NULL;
}

tt_node *tt_neighbour_table(tt_reader *reader, const tt_node *node)
{
    tt_node *root = NULL;
    size_t length;
    const char *text = tt_neighbour_text(reader, node, &length);
    if (!text) return NULL;
    tt_diags_about(reader->diags, node->text, text, length);
    if (tt_table_read(text, length, &reader->trees, reader->diags, &root) == TT_E_NOMEM)
        reader->no_memory = true;
    tt_diags_about(reader->diags, reader->file, reader->text, reader->length);
    if (root && !tt_list_push(&reader->sets, ((tt_set_entry){text, root, node->text})))
        reader->no_memory = true;
    return root;
}
