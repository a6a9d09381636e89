#!/usr/bin/env bash
# Runs Go tests compiled to WebAssembly, in Node, with a small environment: the
# runner passes the environment on to a program that has 8 KB for it.
set -euo pipefail

goroot="$(go env GOROOT)"
exec env -i \
	PATH="$PATH" HOME="$HOME" TMPDIR="${TMPDIR:-/tmp}" LANG=C.UTF-8 \
	GOOS=js GOARCH=wasm GOFLAGS="${GOFLAGS:-}" GOTOOLCHAIN=local GOWORK=off \
	GOCACHE="$(go env GOCACHE)" GOMODCACHE="$(go env GOMODCACHE)" \
	GOPROXY="$(go env GOPROXY)" GOSUMDB="$(go env GOSUMDB)" \
	go test -exec="$goroot/lib/wasm/go_js_wasm_exec" "$@"
