/* render/render.h - a document into text for a terminal or a file. */
#ifndef TT_RENDER_RENDER_H
#define TT_RENDER_RENDER_H

#include "base/text.h"
#include "report/report.h"
#include "tiptoe/status.h"

enum { TT_TEXT_WIDTH = 96 };

typedef struct {
    size_t width; /* columns; lines are wrapped there, a longer word is broken */
    bool bold;    /* bold runs by the escape sequences of a terminal */
} tt_text_style;

/** TT_E_NOMEM when the document or the text is not whole. */
tt_status tt_render_text(const tt_report *report, const tt_text_style *style, tt_text *out);

#endif
