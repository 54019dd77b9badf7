# What bash completes behind tiptoe is what the program takes; zsh and fish, where there are any, read
# their files and offer the verbs.
#   completions.bash PROGRAM FOLDER
set -u
program=$1
folder=$2
here=$(mktemp -d) || exit 1
trap 'rm -rf "$here"' EXIT
cd "$here" && touch heron.yaml || exit 1
# shellcheck disable=SC1091
. "$folder/tiptoe.bash" || exit 1
ran=0
wrong=0

# offers LINE EXPECTED...: of the last word of the line
offers() {
    local line=$1
    shift
    read -ra COMP_WORDS <<< "$line"
    [[ $line != *" " ]] || COMP_WORDS+=("")
    COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
    COMPREPLY=()
    _tiptoe
    ran=$((ran + 1))
    if [[ "${COMPREPLY[*]}" != "$*" ]]; then
        printf '%s offers: %s\n  expected: %s\n' "$line" "${COMPREPLY[*]}" "$*"
        wrong=$((wrong + 1))
    fi
}

# What the program itself lists.
verbs=$("$program" --help | sed -n 's/^  \([a-z][a-z]*\).*/\1/p')
tables=$("$program" stock | awk '$2 ~ /^[0-9]+$/ { print $1 }')
options() { "$program" "$1" --help | sed -n 's/^  \(--[a-z-]*\).*/\1/p'; }
[[ -n $verbs && -n $tables && -n $(options check) ]] || { echo "the program lists nothing"; exit 1; }

# shellcheck disable=SC2046,SC2086
{
    offers "tiptoe " $verbs
    offers "tiptoe stock " $tables
    for verb in $verbs; do offers "tiptoe $verb --" $(options $verb); done
}
offers "tiptoe che" check
offers "tiptoe stock alloys "
offers "tiptoe stock all" alloys
offers "tiptoe new --for " figure bird pair
offers "tiptoe new --for bird --units " mm in
offers "tiptoe new --bas" --basis
offers "tiptoe check her" heron.yaml
offers "tiptoe check --json " heron.yaml
offers "tiptoe check --scale "
offers "tiptoe check --quiet her" heron.yaml
offers "tiptoe explain margi" margin
offers "tiptoe explain casting_" casting_quality
offers "tiptoe explain strength." strength.armature strength.bronze

if command -v zsh >/dev/null; then
    ran=$((ran + 1))
    zsh -n "$folder/tiptoe.zsh" || wrong=$((wrong + 1))
fi
if command -v fish >/dev/null; then
    ran=$((ran + 1))
    got=$(HOME=$here fish --no-config -c "source $folder/tiptoe.fish; complete -C 'tiptoe '" | cut -f1 | sort | tr '\n' ' ')
    [[ $got == "$(sort <<< "$verbs" | tr '\n' ' ')" ]] || { echo "fish offers: $got"; wrong=$((wrong + 1)); }
fi
echo "$ran completions, $wrong wrong"
[[ $ran -gt 15 && $wrong -eq 0 ]]
