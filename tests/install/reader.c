/* Another's program against the installed library: a piece from memory, judged, written as text. */
#include <stdio.h>
#include <string.h>
#include <tiptoe/report.h>
#include <tiptoe/version.h>

static const char peg[] = "piece: Peg\nbronze: {alloy: C87300, wall: 5 mm}\n"
                          "limbs: {peg: {solid: yes, rows: [[foot, 0, 0, 0, 0.3 m], [head, 0, 0, 1 m, 0.3 m]]}}\n"
                          "stands: [{at: foot, held: fixed}]\n";

static int put(void *file, const char *bytes, size_t n)
{
    return fwrite(bytes, 1, n, file) == n ? 0 : 1;
}

int main(void)
{
    tt_diags *diags = tt_diags_new(0);
    tt_piece *piece = NULL;
    tt_assessment *assessment = NULL;
    tt_status status = tt_piece_read("peg", peg, strlen(peg), NULL, diags, &piece);
    if (status == TT_OK) status = tt_assess(piece, diags, &assessment);
    if (status == TT_OK) status = tt_write_text(assessment, NULL, put, stdout);
    if (status != TT_OK) fprintf(stderr, "tiptoe " TIPTOE_VERSION ": %s\n", tt_status_text(status));
    tt_assessment_free(assessment);
    tt_piece_free(piece);
    tt_diags_free(diags);
    return status == TT_OK ? 0 : 1;
}
