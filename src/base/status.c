/* base/status.c - texts and families of the status list. */
#include "tiptoe/status.h"

const char *tt_status_text(tt_status status)
{
    switch (status) {
    case TT_OK:
        return "done";
#define X(name, who, text)                                                                         \
    case name:                                                                                     \
        return text;
        TT_STATUS_LIST(X)
#undef X
    }
    return "unknown status";
}

tt_who tt_status_who(tt_status status)
{
    switch (status) {
    case TT_OK:
        return TT_WHO_NOBODY;
#define X(name, who, text)                                                                         \
    case name:                                                                                     \
        return TT_WHO_##who;
        TT_STATUS_LIST(X)
#undef X
    }
    return TT_WHO_HOST;
}
