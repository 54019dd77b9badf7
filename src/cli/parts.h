/* cli/parts.h - what the files of the command line share. */
#ifndef TT_CLI_PARTS_H
#define TT_CLI_PARTS_H

#include "cli/cli.h"

#include <stdbool.h>
#include <stddef.h>

#include <tiptoe/data.h>
#include <tiptoe/diag.h>
#include <tiptoe/piece.h>
#include <tiptoe/status.h>

/** Exit status; of several the worst is the first of 2, 3, 1, 4, 0. */
enum {
    TT_EXIT_HOLDS = 0,
    TT_EXIT_SHORT = 1,
    TT_EXIT_INPUT = 2,
    TT_EXIT_UNFINISHED = 3,
    TT_EXIT_UNCHECKED = 4
};
int tt_exit_worse(int a, int b);
int tt_exit_of(tt_status status); /* of what is not TT_OK */

typedef enum {
#define TT_VERB(id, operands, words) TT_VERB_##id,
#include "cli/verbs.def"
#undef TT_VERB
    TT_VERBS
} tt_verb;

typedef enum {
#define TT_OPTION(id, name, argument, verbs, words) TT_OPTION_##id,
#include "cli/options.def"
#undef TT_OPTION
    TT_OPTIONS
} tt_option_id;

#define TT_V(id) (1u << TT_VERB_##id)

typedef struct {
    const char *name, *argument, *words;
    unsigned verbs;
} tt_option;
extern const tt_option tt_options[TT_OPTIONS];

typedef struct {
    const char *name, *operands, *words;
} tt_verb_row;
extern const tt_verb_row tt_verbs[TT_VERBS];

/** A command line, taken apart. Arrays hold as many entries as there are arguments. */
typedef struct {
    tt_verb verb; /* TT_VERBS: none */
    const char **operand;
    size_t operands;
    const char **set;
    size_t sets;
    const char *text, *json, *scale, *data; /* NULL: not given */
    const char *what, *basis, *units;       /* likewise */
    bool given[TT_OPTIONS];
} tt_args;

/** Takes it apart; complains on err. False: it is wrong, or memory ran out (then *status says 3).
 */
bool tt_args_read(int argc, char **argv, FILE *err, tt_args *args, int *status);
void tt_args_clear(tt_args *args);

/* Words on standard error. */
void tt_say_diags(const tt_diags *diags, bool quiet, FILE *err);
void tt_say_error(FILE *err, const char *file, unsigned number, const char *text, const char *hint);

/** Failures that no diagnostic told; the exit status. */
int tt_say_failed(tt_streams io, const char *file, tt_status status, const tt_diags *diags);
/** A file that could not be read, for the reason in errno; the exit status. */
int tt_say_unreadable(tt_streams io, const char *file);

/** The nearest of n words, NULL when none is near. `at` gives the i-th. */
const char *tt_nearest(const char *word, size_t n, const char *(*at)(size_t i));

void tt_help_short(FILE *out);
void tt_help(tt_verb verb, FILE *out); /* TT_VERBS: of everything */

/** Is this "-", the stream? And its name for messages: of "-" the words for it. */
bool tt_is_stream(const char *name);
const char *tt_name_in(const char *name);

/** Reads a file, "-" the stream, but not much more than a piece file may hold; *text is to be
 * freed. False: errno says why. */
bool tt_file_read(const char *name, FILE *in, char **text, size_t *length);

/** Reads a file beside the piece file: a tt_neighbour; user: the piece file's name. */
int tt_beside(void *user, const char *name, tt_sink *sink, void *to);
/** Reads the table that --data names; *data stays NULL without the option. Faults are told; the
 * exit status, TT_EXIT_HOLDS when all is well. */
int tt_data_open(const tt_args *args, tt_streams io, tt_data **data);

/** Where a result goes: a stream, or a file that is written beside and renamed. */
typedef struct {
    const char *name; /* "-": the stream; NULL: nowhere */
    FILE *stream;
    char *at;
    size_t n, cap;
    bool failed; /* memory ran out */
} tt_output;

/** Complains (2) about a file that exists and is not ours. */
int tt_output_refuse(const tt_output *output, bool force, FILE *err);
/** Complains (2) about a file that is one of the inputs by another name or the same. */
int tt_output_refuse_input(const tt_output *output, const char *const *input, size_t inputs,
                           FILE *in, FILE *err);
int tt_output_sink(void *user, const char *bytes, size_t n); /* a tt_sink; user: the output */
/** Writes what has gathered; complains (3) when that cannot be done. */
int tt_output_write(tt_output *output, FILE *err);
/** Says what there is to say of the writing of a result, gives diags back, and writes what has
 *  gathered when it came to TT_OK. */
int tt_output_told(tt_output *output, tt_status status, tt_diags *diags, const tt_args *args,
                   FILE *err);
void tt_output_clear(tt_output *output);

/** Where text and JSON of a piece go by the options, the text on standard output unless the JSON
 * is; complains (2) about a place where a result must not go. */
int tt_outputs_open(const tt_args *args, tt_streams io, tt_output *text, tt_output *json);
/** What the options change of the piece in a file. */
tt_changes tt_changes_of(const tt_args *args, const char *file, const tt_data *data);

/* The verbs. */
typedef int tt_verb_fn(const tt_args *args, tt_streams io);
#define TT_VERB(id, operands, words) tt_verb_fn tt_cli_##id;
#include "cli/verbs.def"
#undef TT_VERB

#endif
