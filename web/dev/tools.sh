#!/usr/bin/env bash
# Refuses, in a sentence, a machine that lacks what the build needs.
set -euo pipefail

refuse() {
	echo "badgewright: $1" >&2
	exit 1
}

# at_least HAVE WANT: compares dotted versions.
at_least() {
	[ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n1)" = "$2" ]
}

command -v go >/dev/null || refuse "Go is missing; install Go 1.26 or later from your system or go.dev/dl."
command -v node >/dev/null || refuse "Node.js is missing; install Node 20.19 or later."
command -v npm >/dev/null || refuse "npm is missing; install the npm that comes with Node 20.19 or later."

go_version="$(cd / && go env GOVERSION | sed 's/^go//; s/[^0-9.].*//')"
node_version="$(node --version | sed 's/^v//; s/[^0-9.].*//')"
at_least "$go_version" 1.26 || refuse "Go $go_version is too old; install Go 1.26 or later."
at_least "$node_version" 20.19 || refuse "Node $node_version is too old; install Node 20.19 or later."
