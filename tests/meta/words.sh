#!/bin/sh
# A law has a test: the tree holds no notes of unfinished work and names no place or tool that only
# the machine of its makers has. (One letter of each word stands in brackets: this file is looked at.)
#   words.sh ROOT
set -eu
cd "$1"
trees="src include data docs tests examples .ci CMakeLists.txt CMakePresets.json README.md DEVELOPERS.md"
# shellcheck disable=SC2086
files=$(find $trees -type f | wc -l)
echo "$files files"
[ "$files" -ge 300 ] || { echo "too few were looked at"; exit 1; }
faults=0
# shellcheck disable=SC2086
grep -rnwIE 'T[O]DO|F[I]XME|X[X]X' $trees && faults=1
# shellcheck disable=SC2086
grep -rnwIiE 's[e]ssions?' $trees && faults=1
# shellcheck disable=SC2086
grep -rnIE '[/]work/|[.][.]/shared|[/]shared/|[/]tmp/' $trees && faults=1
exit "$faults"
