#!/usr/bin/env bash
# Runs every fuzz test of the module for a while: fuzz.sh 30s
# What earlier runs found is in testdata/fuzz and is where each run starts; with
# KEEP=1 small new finds are added to it. ONLY=Read takes those of FuzzRead… alone.
# A crash is written by go beside its test.
set -euo pipefail

time="${1:-30s}"
kept="testdata/fuzz"
cache="$(go env GOCACHE)/fuzz/badgewright"
# Inputs larger than this, in bytes, or more of them than this for one test, would
# only weigh on the repository.
largest=2048
most=60

found=0
while IFS=: read -r file name; do
	found=$((found + 1))
	room="$(dirname "$file")"
	mkdir -p "$cache/$room/$name"
	if [ -d "$kept/$room/$name" ]; then cp -n "$kept/$room/$name"/* "$cache/$room/$name/"; fi
	echo "fuzzing $name in $room for $time"
	go test "./$room" -run '^$' -fuzz "^$name\$" -fuzztime "$time"
	if [ "${KEEP:-}" = 1 ]; then
		mkdir -p "$kept/$room/$name"
		find "$cache/$room/$name" -type f -size "-${largest}c" | sort | head -n "$most" | xargs -r cp -n -t "$kept/$room/$name"
	fi
done < <(grep -rHoE --include='*_test.go' "^func Fuzz${ONLY:-}[A-Za-z0-9_]*" reduce sizing wasm | sed 's/:func /:/')
echo "$found fuzz tests ran"
