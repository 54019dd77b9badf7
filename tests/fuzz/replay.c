/* fuzz/replay.c - the kept inputs again, as an ordinary test: replay FILE|FOLDER...
 * Fails when there is no input, when one takes over a second, or when the program's memory goes
 * beyond 256 MiB (sanitizers, which need more, are let off both). */
#include "fuzz/fuzz.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <time.h>

#if defined(__SANITIZE_ADDRESS__)
enum { SANITIZED = 1 };
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
enum { SANITIZED = 1 };
#else
enum { SANITIZED = 0 };
#endif
#else
enum { SANITIZED = 0 };
#endif

enum { LARGEST = 1 << 24, MOST_KIB = 256 * 1024 };

typedef struct {
    size_t inputs, slow;
} count;

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static void replay_file(const char *name, count *all)
{
    FILE *file = fopen(name, "rb");
    uint8_t *bytes = malloc(LARGEST);
    if (!file || !bytes) {
        fprintf(stderr, "cannot read %s\n", name);
        exit(1);
    }
    const size_t size = fread(bytes, 1, LARGEST, file);
    fclose(file);
    uint8_t *exact = malloc(size ? size : 1); /* so that a byte read too far is seen */
    if (!exact) exit(1);
    memcpy(exact, bytes, size);
    free(bytes);
    const double start = now();
    LLVMFuzzerTestOneInput(exact, size);
    const double took = now() - start;
    free(exact);
    if (took > 1.0 && !SANITIZED) {
        fprintf(stderr, "%s took %.1f s\n", name, took);
        all->slow++;
    }
    all->inputs++;
}

static void replay(const char *name, count *all)
{
    DIR *folder = opendir(name);
    if (!folder) {
        replay_file(name, all);
        return;
    }
    for (const struct dirent *entry = readdir(folder); entry; entry = readdir(folder)) {
        char path[4096];
        struct stat of;
        snprintf(path, sizeof path, "%s/%s", name, entry->d_name);
        if (stat(path, &of) == 0 && S_ISREG(of.st_mode)) replay_file(path, all);
    }
    closedir(folder);
}

int main(int argc, char **argv)
{
    count all = {0, 0};
    struct rusage used;
    for (int i = 1; i < argc; i++) replay(argv[i], &all);
    getrusage(RUSAGE_SELF, &used);
    printf("%zu inputs, %zu slow, %ld KiB\n", all.inputs, all.slow, used.ru_maxrss);
    return all.inputs == 0 || all.slow > 0 || (!SANITIZED && used.ru_maxrss > MOST_KIB);
}
