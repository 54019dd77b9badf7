/* bench/ratio.c - the whole-process time of one command as a ratio to another's, run in turn.
 *     ratio RUNS BASE -- COMMAND [ARGUMENT...]
 * Prints the least and the median time of both, and the ratio of each pair of those. */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { MOST = 2000 };

static double now(void)
{
    struct timespec t;
    clock_gettime(CLOCK_MONOTONIC, &t);
    return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

static double once(char **command)
{
    const double start = now();
    const pid_t child = fork();
    if (child == 0) {
        const int nowhere = open("/dev/null", O_WRONLY);
        dup2(nowhere, STDOUT_FILENO);
        dup2(nowhere, STDERR_FILENO);
        execv(command[0], command);
        _exit(127);
    }
    int status = 0;
    if (child < 0 || waitpid(child, &status, 0) < 0 || (WIFEXITED(status) && WEXITSTATUS(status) == 127) || !WIFEXITED(status)) {
        fprintf(stderr, "cannot run %s\n", command[0]);
        exit(1);
    }
    return now() - start;
}

static int ascending(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

int main(int argc, char **argv)
{
    if (argc < 5 || strcmp(argv[3], "--") != 0) {
        fprintf(stderr, "usage: ratio RUNS BASE -- COMMAND [ARGUMENT...]\n");
        return 2;
    }
    static double base[MOST], command[MOST];
    const int runs = atoi(argv[1]) < 1 ? 1 : atoi(argv[1]) > MOST ? MOST : atoi(argv[1]);
    char *base_command[] = {argv[2], NULL};
    for (int i = 0; i < 5; i++) once(i % 2 ? base_command : &argv[4]);
    for (int i = 0; i < runs; i++) {
        base[i] = once(base_command);
        command[i] = once(&argv[4]);
    }
    qsort(base, (size_t)runs, sizeof *base, ascending);
    qsort(command, (size_t)runs, sizeof *command, ascending);
    const int middle = runs / 2;
    printf("base    least %.3f ms, median %.3f ms\n", 1e3 * base[0], 1e3 * base[middle]);
    printf("command least %.3f ms, median %.3f ms\n", 1e3 * command[0], 1e3 * command[middle]);
    printf("ratio   least %.2f, median %.2f\n", command[0] / base[0], command[middle] / base[middle]);
    return 0;
}
