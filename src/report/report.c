/* report/report.c - building a document block by block. */
#include "report/report.h"

#include <math.h>
#include <stdarg.h>

void tt_report_clear(tt_report *report)
{
    for (size_t i = 0; i < report->blocks.n; i++) {
        tt_list_clear(&report->blocks.at[i].runs);
        tt_list_clear(&report->blocks.at[i].columns);
        tt_list_clear(&report->blocks.at[i].cells);
    }
    tt_list_clear(&report->blocks);
    tt_pool_clear(&report->pool);
    *report = (tt_report){0};
}

const char *tt_report_text(tt_report *report, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    const char *text = tt_pool_vformat(&report->pool, format, args);
    va_end(args);
    if (!text) report->failed = true;
    return text ? text : "";
}

static void add(tt_report *report, tt_block block)
{
    if (!tt_list_push(&report->blocks, block)) report->failed = true;
}

/* The block that is being filled; NULL once memory has failed. */
static tt_block *last(tt_report *report)
{
    if (report->failed || report->blocks.n == 0) return NULL;
    return &report->blocks.at[report->blocks.n - 1];
}

void tt_report_heading(tt_report *report, int level, const char *text)
{
    add(report, (tt_block){.kind = TT_BLOCK_HEADING, .level = level});
    tt_report_run(report, false, text);
}

void tt_report_paragraph(tt_report *report)
{
    add(report, (tt_block){.kind = TT_BLOCK_PARAGRAPH});
}

void tt_report_run(tt_report *report, bool bold, const char *text)
{
    tt_block *block = last(report);
    if (block && !tt_list_push(&block->runs, (tt_run){text, bold})) report->failed = true;
}

void tt_report_say(tt_report *report, const char *text)
{
    tt_report_paragraph(report);
    tt_report_run(report, false, text);
}

void tt_report_table(tt_report *report, const tt_column *columns, size_t n)
{
    add(report, (tt_block){.kind = TT_BLOCK_TABLE});
    tt_block *block = last(report);
    for (size_t i = 0; block && i < n; i++) {
        if (!tt_list_push(&block->columns, columns[i])) report->failed = true;
    }
}

void tt_report_row(tt_report *report, const char *const *cells)
{
    const tt_block *block = last(report);
    for (size_t i = 0; block && i < block->columns.n; i++) tt_report_item(report, cells[i]);
}

void tt_report_list(tt_report *report, tt_block_kind kind)
{
    add(report, (tt_block){.kind = kind});
}

void tt_report_item(tt_report *report, const char *text)
{
    tt_block *block = last(report);
    if (block && !tt_list_push(&block->cells, text)) report->failed = true;
}

void tt_report_steps(tt_report *report, const tt_step *steps, size_t n)
{
    tt_step *kept = tt_pool_take(&report->pool, n, sizeof *kept);
    if (!kept) report->failed = true;
    for (size_t i = 0; i < n && kept; i++) {
        kept[i] = steps[i];
        report->not_finite |= !isfinite(steps[i].value);
    }
    if (kept) add(report, (tt_block){.kind = TT_BLOCK_STEPS, .step = kept, .steps = n});
}
