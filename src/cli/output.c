/* cli/output.c - where a result goes. It is gathered whole; a file is then written beside its place
 * and renamed, so that it is never there half; a stream, device or pipe is written straight. */
#define _XOPEN_SOURCE 700 /* realpath */
#include "cli/parts.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { NUMBER_OPTION = 1501, NUMBER_EXISTS = 1504, NAME_MOST = 4096 };

/* Does the file begin as our results do? */
static bool ours(const char *name)
{
    static const char *const begins[] = {"tiptoe check:", "tiptoe weigh:", "tiptoe stock",
                                         "tiptoe explain", "{\"schema\": \"tiptoe-"};
    char head[64] = {0};
    FILE *file = fopen(name, "rb");
    const size_t n = file ? fread(head, 1, sizeof head - 1, file) : 0;
    if (file) fclose(file);
    for (size_t i = 0; i < sizeof begins / sizeof *begins; i++) {
        if (n >= strlen(begins[i]) && memcmp(head, begins[i], strlen(begins[i])) == 0) return true;
    }
    return false;
}

int tt_output_refuse(const tt_output *output, bool force, FILE *err)
{
    struct stat found;
    if (!output->name || tt_is_stream(output->name) || force || stat(output->name, &found) != 0)
        return TT_EXIT_HOLDS;
    if (!S_ISREG(found.st_mode) || found.st_size == 0 || ours(output->name)) return TT_EXIT_HOLDS;
    tt_say_error(err, output->name, NUMBER_EXISTS,
                 "the file is already there and is not a result of tiptoe",
                 "choose another name, or say --force");
    return TT_EXIT_INPUT;
}

static bool same_file(const char *input, FILE *in, const struct stat *output)
{
    struct stat found;
    const bool there =
        tt_is_stream(input) ? fstat(fileno(in), &found) == 0 : stat(input, &found) == 0;
    return there && found.st_dev == output->st_dev && found.st_ino == output->st_ino;
}

int tt_output_refuse_input(const tt_output *output, const char *const *input, size_t inputs,
                           FILE *in, FILE *err)
{
    struct stat found;
    if (!output->name || tt_is_stream(output->name) || stat(output->name, &found) != 0 ||
        !S_ISREG(found.st_mode))
        return TT_EXIT_HOLDS;
    for (size_t i = 0; i < inputs; i++) {
        if (!same_file(input[i], in, &found)) continue;
        tt_say_error(err, output->name, NUMBER_OPTION,
                     "the result would be written over the file that it is read from",
                     "choose another name; --force does not help here");
        return TT_EXIT_INPUT;
    }
    return TT_EXIT_HOLDS;
}

int tt_output_sink(void *user, const char *bytes, size_t n)
{
    tt_output *output = user;
    if (output->cap - output->n < n) {
        const size_t cap = 2 * output->cap + n;
        char *more = realloc(output->at, cap);
        output->failed = output->failed || !more;
        if (!more) return 1;
        output->at = more;
        output->cap = cap;
    }
    if (n) memcpy(output->at + output->n, bytes, n);
    output->n += n;
    return 0;
}

void tt_output_clear(tt_output *output)
{
    free(output->at);
    output->at = NULL;
    output->n = output->cap = 0;
}

/* All of it through to the device, or errno says why not. */
static bool write_stream(const tt_output *output, FILE *stream)
{
    return (output->n == 0 || fwrite(output->at, 1, output->n, stream) == output->n) &&
           fflush(stream) == 0;
}

/* A new file beside `name`, of the rights that a new file there gets or an old one had. */
static FILE *open_beside(const char *name, char beside[NAME_MOST])
{
    struct stat old;
    int file = -1;
    errno = ENAMETOOLONG;
    for (int i = 0; file < 0 && i < 100; i++) {
        if (snprintf(beside, NAME_MOST, "%s.%ld-%d", name, (long)getpid(), i) >= NAME_MOST)
            return NULL;
        file = open(beside, O_WRONLY | O_CREAT | O_EXCL, 0666);
        if (file < 0 && errno != EEXIST) return NULL;
    }
    if (file >= 0 && stat(name, &old) == 0) (void)!fchmod(file, old.st_mode & 07777);
    FILE *stream = file < 0 ? NULL : fdopen(file, "wb");
    if (file >= 0 && !stream) close(file);
    return stream;
}

static bool write_beside(const tt_output *output, const char *name)
{
    char beside[NAME_MOST];
    FILE *stream = open_beside(name, beside);
    if (!stream) return false;
    bool good = write_stream(output, stream) && (fsync(fileno(stream)) == 0 || errno == EINVAL);
    int why = errno;
    if (fclose(stream) != 0 && good) {
        good = false;
        why = errno;
    }
    if (good && rename(beside, name) != 0) {
        good = false;
        why = errno;
    }
    if (!good) unlink(beside);
    errno = why;
    return good;
}

/* Through a link to what it names; a device or pipe straight. */
static bool write_file(const tt_output *output)
{
    struct stat found;
    const bool there = stat(output->name, &found) == 0;
    if (there && !S_ISREG(found.st_mode)) {
        FILE *stream = fopen(output->name, "wb");
        bool good = stream && write_stream(output, stream);
        const int why = errno;
        if (stream) fclose(stream);
        errno = why;
        return good;
    }
    char *real = there ? realpath(output->name, NULL) : NULL;
    const bool good = write_beside(output, real ? real : output->name);
    const int why = errno;
    free(real);
    errno = why;
    return good;
}

int tt_output_write(tt_output *output, FILE *err)
{
    if (!output->name) return TT_EXIT_HOLDS;
    const bool good =
        tt_is_stream(output->name) ? write_stream(output, output->stream) : write_file(output);
    if (!good && errno != EPIPE) {
        fprintf(err, "tiptoe: %s: %s: %s\n",
                tt_is_stream(output->name) ? "standard output" : output->name,
                tt_status_text(TT_E_WRITE), strerror(errno));
    }
    return good ? TT_EXIT_HOLDS : TT_EXIT_UNFINISHED;
}

int tt_output_told(tt_output *output, tt_status status, tt_diags *diags, const tt_args *args,
                   FILE *err)
{
    if (output->failed) status = TT_E_NOMEM;
    if (diags) tt_say_diags(diags, args->given[TT_OPTION_QUIET], err);
    if (status == TT_E_NOMEM || (status != TT_OK && !(diags && tt_diags_errors(diags))))
        fprintf(err, "tiptoe: %s\n", tt_status_text(status));
    tt_diags_free(diags);
    return status == TT_OK ? tt_output_write(output, err) : tt_exit_of(status);
}
