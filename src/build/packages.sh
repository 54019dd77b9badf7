# src/build/packages.sh - sourced by examples/run and tests/run: installs the Debian packages named
# that are missing. Needs root, or sudo, for this step only.
need_packages() {
    missing=""
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing="$missing $package"
    done
    [ -z "$missing" ] && return 0
    echo "installing:$missing"
    if [ "$(id -u)" -eq 0 ]; then as_root=""
    elif command -v sudo >/dev/null 2>&1; then as_root="sudo"
    else
        echo "These Debian packages are missing and only root may install them:$missing" >&2
        echo "Ask whoever keeps this machine to run: apt-get install$missing" >&2
        exit 1
    fi
    $as_root apt-get update -qq
    # shellcheck disable=SC2086
    DEBIAN_FRONTEND=noninteractive $as_root apt-get install -y -qq --no-install-recommends $missing >/dev/null
}
