/* publish/publish.c - the public door of the results: an assessment, a built-in table, a word
 * explained or a piece file to begin with, composed or recorded, rendered, and handed to the
 * caller's sink as a whole. */
#include "compose/compose.h"
#include "compose/start.h"
#include "record/record.h"
#include "render/render.h"
#include "tiptoe/report.h"
#include "tiptoe/weigh.h"

static tt_status hand_over(const tt_text *text, tt_sink *sink, void *user)
{
    return sink(user, tt_text_of(text), text->n) == 0 ? TT_OK : TT_E_WRITE;
}

/* The text that was made when all is well, and gives it back. */
static tt_status finish_text(tt_status status, tt_text *text, tt_sink *sink, void *user)
{
    if (status == TT_OK) status = hand_over(text, sink, user);
    tt_text_clear(text);
    return status;
}

static tt_status render(const tt_report *report, const tt_text_options *options, tt_sink *sink,
                        void *user)
{
    tt_text_style style = {.width = TT_TEXT_WIDTH};
    if (options && options->width > 0) style.width = (size_t)options->width;
    if (options) style.bold = options->bold != 0;
    tt_text text = {0};
    return finish_text(tt_render_text(report, &style, &text), &text, sink, user);
}

/* Likewise a document. */
static tt_status finish(tt_status status, tt_report *report, const tt_text_options *options,
                        tt_sink *sink, void *user)
{
    if (status == TT_OK) status = render(report, options, sink, user);
    tt_report_clear(report);
    return status;
}

tt_status tt_write_text(const tt_assessment *assessment, const tt_text_options *options,
                        tt_sink *sink, void *user)
{
    tt_report report = {0};
    return finish(tt_compose_check(assessment, options && options->steps, &report), &report,
                  options, sink, user);
}

tt_status tt_write_json(const tt_assessment *assessment, tt_sink *sink, void *user)
{
    tt_text text = {0};
    return finish_text(tt_record_json(assessment, &text), &text, sink, user);
}

tt_status tt_write_stock(const char *table, const char *name, const char *units,
                         const tt_data *data, tt_diags *diags, tt_sink *sink, void *user)
{
    tt_report report = {0};
    return finish(tt_compose_stock(table, name, units, data, diags, &report), &report, NULL, sink,
                  user);
}

tt_status tt_write_explain(const char *word, tt_diags *diags, tt_sink *sink, void *user)
{
    tt_report report = {0};
    return finish(tt_compose_explain(word, diags, &report), &report, NULL, sink, user);
}

tt_status tt_write_start(const tt_start_options *options, tt_diags *diags, tt_sink *sink,
                         void *user)
{
    tt_text text = {0};
    return finish_text(tt_compose_start(options, diags, &text), &text, sink, user);
}

tt_status tt_write_weights_text(const tt_weights *weights, const tt_text_options *options,
                                tt_sink *sink, void *user)
{
    tt_report report = {0};
    return finish(tt_compose_weights(weights, &report), &report, options, sink, user);
}

tt_status tt_write_weights_json(const tt_weights *weights, tt_sink *sink, void *user)
{
    tt_text text = {0};
    return finish_text(tt_record_weights(weights, &text), &text, sink, user);
}
