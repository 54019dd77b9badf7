/* check/checks.c - the table of checks, from its registry. */
#include "check/check.h"

#define TT_CHECK(id) extern const tt_check tt_check_##id;
#include "check/checks.def"
#undef TT_CHECK

static const tt_check *const checks[] = {
#define TT_CHECK(id) &tt_check_##id,
#include "check/checks.def"
#undef TT_CHECK
};

size_t tt_checks_count(void)
{
    return sizeof checks / sizeof *checks;
}

const tt_check *tt_checks_at(size_t i)
{
    return checks[i];
}
