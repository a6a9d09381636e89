#!/usr/bin/env bash
# Runs every fuzz test of the module for a while: fuzz.sh 30s
set -euo pipefail

time="${1:-30s}"
found=0
while IFS=: read -r file name; do
	found=$((found + 1))
	echo "fuzzing $name in $(dirname "$file") for $time"
	go test "./$(dirname "$file")" -run '^$' -fuzz "^$name\$" -fuzztime "$time"
done < <(grep -rHoE --include='*_test.go' '^func Fuzz[A-Za-z0-9_]+' reduce sizing wasm | sed 's/:func /:/')
echo "$found fuzz tests ran"
