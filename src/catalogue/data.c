/* catalogue/data.c - rows of one's own from the text of a file. */
#include "base/alloc.h"
#include "base/sha256.h"
#include "catalogue/read.h"

static bool whole(tt_data *data, const char *file, const char *text, size_t length, tt_diags *diags)
{
    char digest[65];
    tt_sha256_hex(text, length, digest);
    data->file = tt_pool_text(&data->pool, file);
    data->sha256 = tt_pool_text(&data->pool, digest);
    return data->file && data->sha256 && tt_rows_read(data, file, text, length, diags);
}

tt_status tt_data_read(const char *file, const char *text, size_t length, tt_diags *diags,
                       tt_data **data)
{
    *data = tt_alloc(1, sizeof **data);
    if (!*data) return TT_E_NOMEM;
    const size_t errors = tt_diags_errors(diags);
    tt_status status = whole(*data, file, text, length, diags) ? TT_OK : TT_E_NOMEM;
    if (status == TT_OK && !(*data)->metals.n && !(*data)->stock.n &&
        tt_diags_errors(diags) == errors)
        tt_complain(diags, TT_D_DATA_EMPTY, (tt_place){0},
                    "`tiptoe explain data` tells kinds of rows and fields, as data/README.md does",
                    "the table holds no row");
    if (status == TT_OK && tt_diags_errors(diags) > errors) status = TT_E_INPUT;
    tt_diags_about(diags, file, NULL, 0);
    if (status != TT_OK) *data = tt_data_free(*data);
    return status;
}

tt_data *tt_data_free(tt_data *data)
{
    if (!data) return NULL;
    tt_list_clear(&data->metals);
    tt_list_clear(&data->stock);
    tt_pool_clear(&data->pool);
    return tt_free(data);
}
