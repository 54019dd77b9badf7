/* render/text.c - a document as plain text: headings underlined, paragraphs wrapped, tables in
 * columns, one line of calculation a line. */
#include "quantity/quantity.h"
#include "render/lines.h"

#include <string.h>

static void put_runs(tt_text *line, const tt_block *block)
{
    for (size_t i = 0; i < block->runs.n; i++) {
        const tt_run *run = &block->runs.at[i];
        tt_text_format(line, "%s%s%s", run->bold ? TT_BOLD_ON : "", run->text,
                       run->bold ? TT_BOLD_OFF : "");
    }
}

static void heading(tt_text *out, const tt_block *block, const char *line,
                    const tt_text_style *style)
{
    const size_t width = tt_line_width(line, strlen(line));
    tt_lines_write(out, line, "", 0, style);
    if (block->level > 2) return;
    tt_text_fill(out, block->level == 1 ? '=' : '-', width < style->width ? width : style->width);
    tt_text_put(out, "\n");
}

static void items(tt_text *out, const tt_block *block, const tt_text_style *style)
{
    for (size_t i = 0; i < block->cells.n; i++) {
        tt_lines_write(out, block->cells.at[i], "- ", 2, style);
    }
}

static void put_value(tt_text *out, double value, const char *unit)
{
    tt_quantity_write(out, value, TT_Q_PURE, TT_METRIC, 4);
    if (unit && *unit) tt_text_format(out, " %s", unit);
}

enum { HANG = 8 }; /* indent of a line of calculation from its second line on */

/* "[document, place, mark]", on one line when it fits one. */
static void put_source(tt_text *line, const tt_source *source, size_t width)
{
    const size_t from = line->n;
    tt_text_put(line, " [");
    tt_source_words(line, source);
    tt_text_format(line, ", %s]", tt_mark_word(source->mark));
    if (line->failed || tt_text_width(line->at + from, line->n - from) + HANG > width) return;
    for (size_t i = from + 1; i < line->n; i++) {
        if (line->at[i] == ' ') line->at[i] = *TT_TIE;
    }
}

/* symbol = formula = numbers = value unit [source, mark] */
static void step(tt_text *out, const tt_step *step, const tt_text_style *style)
{
    tt_text line = {0};
    tt_text_format(&line, "%s = ", step->symbol);
    if (step->formula) tt_text_format(&line, "%s = ", step->formula);
    if (step->numbers) tt_text_format(&line, "%s = ", step->numbers);
    put_value(&line, step->value, step->unit);
    put_source(&line, &step->source, style->width);
    tt_lines_write(out, tt_text_of(&line), "    ", HANG, style);
    if (line.failed) out->failed = true;
    tt_text_clear(&line);
}

static void block_write(tt_text *out, const tt_block *block, const tt_text_style *style)
{
    tt_text line = {0};
    put_runs(&line, block);
    switch (block->kind) {
    case TT_BLOCK_HEADING:
        heading(out, block, tt_text_of(&line), style);
        break;
    case TT_BLOCK_PARAGRAPH:
        tt_lines_write(out, tt_text_of(&line), "", 0, style);
        break;
    case TT_BLOCK_TABLE:
        tt_table_write(out, block, style);
        break;
    case TT_BLOCK_LIST:
    case TT_BLOCK_CAUTIONS:
        items(out, block, style);
        break;
    case TT_BLOCK_LINES:
        for (size_t i = 0; i < block->cells.n; i++)
            tt_text_format(out, "    %s\n", block->cells.at[i]);
        break;
    case TT_BLOCK_STEPS:
        for (size_t i = 0; i < block->steps; i++) step(out, &block->step[i], style);
        break;
    }
    if (line.failed) out->failed = true;
    tt_text_clear(&line);
}

tt_status tt_render_text(const tt_report *report, const tt_text_style *style, tt_text *out)
{
    for (size_t i = 0; i < report->blocks.n; i++) {
        const tt_block *block = &report->blocks.at[i];
        const bool under = i > 0 && report->blocks.at[i - 1].kind == TT_BLOCK_HEADING;
        const bool close =
            block->kind == TT_BLOCK_STEPS || (under && block->kind != TT_BLOCK_HEADING);
        if (i > 0 && !close) tt_text_put(out, "\n");
        block_write(out, block, style);
    }
    return report->failed || out->failed ? TT_E_NOMEM : TT_OK;
}
