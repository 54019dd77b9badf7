#!/bin/sh
# Makes docs/verification.md: runs every test of a build folder with TT_VERIFICATION set, and lists
# each comparison with a reference value: case, source, expected, got, difference.
#   sh tests/verification.sh BUILD_DIR OUT
set -eu
build=$1
out=$2
lines=$(mktemp)
trap 'rm -f "$lines"' EXIT
TT_VERIFICATION=$lines ctest --test-dir "$build" -j 1 >/dev/null || echo "warning: some tests failed" >&2
{
    cat <<'HEAD'
# Verification

Every comparison of this program with a value from outside it, made by the target `verification` from the files under
`tests/cases` and the results of the tests that read them. *Expected* is what the source says, *got* what the program
computed, *off* the difference relative to the expected value (absolute where that is nil), *limit* what the test allows.
Sources marked FROM MEMORY were recalled and recomputed, not read; CLOSED FORM are textbook formulas evaluated by hand;
COMPOSED are worked examples made for this purpose, by a route that does not use this program.

HEAD
    sort -u "$lines" | awk -F '\t' '
        function off(e, g) { return e == 0 ? g : (g - e) / (e < 0 ? -e : e) }
        { n++; if ($1 != last) { cases++; last = $1 } row[n] = $0 }
        END {
            printf "%d comparisons in %d cases.\n\n", n, cases
            print "| case | source | what | expected | got | off | limit |"
            print "| --- | --- | --- | --- | --- | --- | --- |"
            for (i = 1; i <= n; i++) {
                split(row[i], f, "\t")
                gsub(/\|/, "\\|", f[1]); gsub(/ *\| */, ", ", f[2])
                d = off(f[4], f[5])
                printf "| %s | %s | %s | %s | %s | %.1e | %s |\n", f[1], f[2], f[3], f[4], f[5], d, f[6]
            }
        }'
} >"$out"
