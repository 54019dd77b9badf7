/* tiptoe/status.h - what a call came to. Grouped by who must act: the writer of the piece file
 * (INPUT), the designer of the piece (MODEL), or the keeper of the machine (HOST). */
#ifndef TIPTOE_STATUS_H
#define TIPTOE_STATUS_H

#ifdef __cplusplus
extern "C" {
#endif

#define TT_STATUS_LIST(X)                                                                        \
    X(TT_E_INPUT, INPUT, "the piece file or the command line is wrong")                          \
    X(TT_E_MECHANISM, MODEL, "part of the piece is free to move")                                \
    X(TT_E_ILL_CONDITIONED, MODEL, "stiff and soft parts differ too much for a reliable answer") \
    X(TT_E_NOT_CONVERGED, MODEL, "the vibration modes could not be proved complete")             \
    X(TT_E_NOT_FINITE, MODEL, "a result is not a finite number")                                 \
    X(TT_E_NOMEM, HOST, "out of memory")                                                         \
    X(TT_E_READ, HOST, "a file could not be read")                                               \
    X(TT_E_WRITE, HOST, "a file could not be written")

typedef enum {
    TT_OK = 0,
#define TT_STATUS_ENUM(name, who, text) name,
    TT_STATUS_LIST(TT_STATUS_ENUM)
#undef TT_STATUS_ENUM
} tt_status;

typedef enum { TT_WHO_NOBODY, TT_WHO_INPUT, TT_WHO_MODEL, TT_WHO_HOST } tt_who;

/** One plain sentence for a status, without a full stop. Never NULL. */
const char *tt_status_text(tt_status status);

/** Who must act on a status. TT_WHO_NOBODY for TT_OK. */
tt_who tt_status_who(tt_status status);

#ifdef __cplusplus
}
#endif
#endif
