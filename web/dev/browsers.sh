#!/usr/bin/env bash
# Sees to it that the browsers named are there: installs Debian's packages when
# it may, and says in a sentence what is missing when it may not.
set -euo pipefail

packages=()
need() { # need COMMAND PACKAGE
	command -v "$1" >/dev/null || packages+=("$2")
}

for browser in "$@"; do
	case "$browser" in
	chromium) [ -n "${CHROMIUM:-}" ] || need chromium chromium ;;
	pdf) need pdftoppm poppler-utils ;; # not a browser: draws printed papers
	firefox) [ -n "${FIREFOX:-}" ] || need firefox-esr firefox-esr ;;
	webkit)
		need WebKitWebDriver webkit2gtk-driver
		need xvfb-run xvfb
		;;
	*)
		echo "badgewright: no browser is called $browser." >&2
		exit 1
		;;
	esac
done

[ "${#packages[@]}" -gt 0 ] || exit 0
if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
	echo "badgewright: the page tests need ${packages[*]}; install them with: sudo apt-get install ${packages[*]}" >&2
	exit 1
fi
echo "Installing ${packages[*]} for the page tests"
export DEBIAN_FRONTEND=noninteractive
log="$(mktemp)"
if ! { apt-get update && apt-get install -y --no-install-recommends "${packages[@]}"; } >"$log" 2>&1 </dev/null; then
	tail -n 20 "$log" >&2
	echo "badgewright: ${packages[*]} could not be installed; see above." >&2
	exit 1
fi
