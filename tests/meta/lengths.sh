#!/bin/sh
# A law has a test: no function over 70 lines, nine in ten under 40, half under 15; no file over 400
# lines. Tables apart: *.def and the key table. A function begins at its first line in column one and
# ends at the } there.
#   lengths.sh ROOT
set -eu
cd "$1"
find src include \( -name '*.c' -o -name '*.h' \) ! -name 'keys*.c' | LC_ALL=C sort | xargs awk '
    function file_ends() {
        if (lines > 400) { print name ": " lines " lines"; faults++ }
        if (opened) { print name ": the function of line " first " has no end in column one"; faults++ }
    }
    FNR == 1 { file_ends(); name = FILENAME; files++; first = opened = 0 }
    { lines = FNR }
    /^[a-z].*\(/ && !opened { first = FNR }
    /^{/ && first { opened = 1 }
    /^}/ && opened {
        n = FNR - first + 1
        functions++
        if (n < 15) short++
        if (n < 40) fair++
        if (n > 70) { print FILENAME ":" first ": a function of " n " lines"; faults++ }
        first = opened = 0
    }
    /;$/ && !opened { first = 0 }
    END {
        file_ends()
        printf "%d files, %d functions: %d under 15 lines, %d under 40\n", files, functions, short, fair
        if (files < 100 || functions < 500) { print "too few were looked at"; faults++ }
        if (2 * short < functions) { print "less than half the functions are under 15 lines"; faults++ }
        if (10 * fair < 9 * functions) { print "less than nine in ten functions are under 40 lines"; faults++ }
        exit faults > 0
    }'
