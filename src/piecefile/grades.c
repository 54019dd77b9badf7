/* piecefile/grades.c - the grade of the armature beside the forms that it is used in: a strength of
 * bar is not that of a pipe. */
#include "piecefile/reader.h"

#include <string.h>

typedef struct {
    tt_member_form form;
    const char *name;    /* for messages */
    const char *word[2]; /* any of them in the product form of a row will do */
} use;

static const use uses[] = {
    {TT_MEMBER_TUBE, "tube or pipe", {"tube", "tube"}},
    {TT_MEMBER_BOX, "box", {"box", "tube"}},
    {TT_MEMBER_BAR, "bar", {"bar", "rod"}},
    {TT_MEMBER_FLAT, "flat", {"plate", "bar"}},
};

static bool fits(const char *form, const use *as)
{
    return strstr(form, as->word[0]) || strstr(form, as->word[1]);
}

/* Does the table hold this grade in the form? One without product forms holds for all. */
static bool known(const tt_reader *reader, const tt_metal *grade, const use *as)
{
    for (size_t i = 0; i < tt_metals_count(reader->data); i++) {
        const tt_metal *row = tt_metals_at(reader->data, i);
        if (!row || row->kind != TT_STEEL || strcmp(row->name, grade->name) != 0) continue;
        if (!row->form[0] || fits(row->form, as)) return true;
    }
    return !grade->form[0];
}

/* The first segment whose armature is of this form; NULL: none. */
static const tt_segment *used(const tt_piece *piece, tt_member_form form)
{
    for (size_t s = 0; s < piece->segments.n; s++)
        if (piece->segments.at[s].armature.form == form) return &piece->segments.at[s];
    return NULL;
}

void tt_check_grade(tt_reader *reader)
{
    const tt_piece *piece = reader->piece;
    if (reader->grade.metal == TT_NONE || !reader->grade.node) return;
    const tt_metal *grade = &piece->metals.at[reader->grade.metal];
    for (size_t i = 0; i < sizeof uses / sizeof *uses; i++) {
        const tt_segment *at = used(piece, uses[i].form);
        if (!at || known(reader, grade, &uses[i])) continue;
        tt_diags_add(reader->diags, TT_WARNING, TT_D_GRADE_FORM, reader->grade.node->place,
                     "a certificate of what is bought, under materials or --data, or another grade",
                     "%.60s is known here as %.60s only, and `%.60s` is a %s", grade->name,
                     grade->form, at->name, uses[i].name);
    }
}
