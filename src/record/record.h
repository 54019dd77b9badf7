/* record/record.h - an assessment as rows: the JSON result, schema tiptoe-check/1. SI; the unit
 * stands in the name of a key. */
#ifndef TT_RECORD_RECORD_H
#define TT_RECORD_RECORD_H

#include "assess/assessment.h"
#include "base/text.h"
#include "piece/ledger.h"

/** Words of the result by tt_verdict, tt_outline_kind, tt_member_form. */
extern const char *const tt_verdict_word[], *const tt_outline_word[], *const tt_member_word[];

/** Writes the JSON result, one line a key of the outermost object and a line a row of its lists.
 *  TT_E_NOT_FINITE when a number is none, and then out is not whole; TT_E_NOMEM. */
tt_status tt_record_json(const tt_assessment *assessment, tt_text *out);

/** The weights as JSON, schema tiptoe-weigh/1; likewise. */
tt_status tt_record_weights(const tt_weights *weights, tt_text *out);

/** A number as JSON text: 15 to 17 digits, the fewest that read back equal. The locale has no say.
 *  False for NaN and infinity. */
bool tt_record_number(double value, char text[32]);

#endif
