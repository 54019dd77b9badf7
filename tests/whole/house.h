/* tests/whole/house.h - a piece text through the whole judgement, with its records open. */
#ifndef TT_TESTS_HOUSE_H
#define TT_TESTS_HOUSE_H

#include "assess/assessment.h"
#include "pieces.h"

typedef struct {
    tt_piece *piece;
    tt_assessment *a;
} house;

static inline house house_of(const char *text)
{
    house h = {tt_test_piece_of(text, NULL), NULL};
    tt_diags *diags = tt_diags_new(0);
    const tt_status status = tt_assess(h.piece, diags, &h.a);
    if (status != TT_OK) tt_test_print(diags);
    tt_diags_free(diags);
    assert_int_equal(status, TT_OK);
    return h;
}

static inline void house_close(house *h)
{
    tt_assessment_free(h->a);
    tt_piece_free(h->piece);
}

static inline tt_check_input house_input(const house *h)
{
    return (tt_check_input){h->piece,       h->a->model,         h->a->basis,
                            &h->a->actions, &h->a->combinations, &h->a->solution,
                            h->a->second};
}

static inline const tt_cut *house_cut(const house *h, const char *segment, double x)
{
    for (size_t i = 0; i < h->a->model->cuts.n; i++) {
        const tt_cut *cut = &h->a->model->cuts.at[i];
        if (strcmp(h->piece->segments.at[cut->segment].name, segment) == 0 &&
            fabs(cut->x - x) < 1e-9)
            return cut;
    }
    fail_msg("no cut of %s at %g", segment, x);
    return NULL;
}

#endif
