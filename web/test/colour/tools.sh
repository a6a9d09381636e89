#!/usr/bin/env bash
# Sees to it that the peers that are programs are there: installs Debian's
# packages when it may, and says in a sentence what is missing when it may not.
set -euo pipefail

packages=()
command -v pngquant >/dev/null || packages+=(pngquant)
command -v convert >/dev/null || packages+=(imagemagick)
[ "${#packages[@]}" -gt 0 ] || exit 0

if [ "$(id -u)" -ne 0 ] || ! command -v apt-get >/dev/null; then
	echo "badgewright: the colour benchmark needs ${packages[*]}; install them with: sudo apt-get install ${packages[*]}" >&2
	exit 1
fi
echo "Installing ${packages[*]} for the colour benchmark"
export DEBIAN_FRONTEND=noninteractive
log="$(mktemp)"
if ! { apt-get update && apt-get install -y --no-install-recommends "${packages[@]}"; } >"$log" 2>&1 </dev/null; then
	tail -n 20 "$log" >&2
	echo "badgewright: ${packages[*]} could not be installed; see above." >&2
	exit 1
fi
