# make run      build everything and serve the page on a loopback address
# make test     everything a change must pass
# See DEVELOPERS.md for the rest.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DELETE_ON_ERROR:
.DEFAULT_GOAL := run
MAKEFLAGS += --no-print-directory

# Only this module's own settings count, and the toolchain that is installed.
export GOFLAGS := -mod=readonly
export GOTOOLCHAIN := local
export GOWORK := off

WEB        := web
BUILD      := .build
TWIN       := $(WEB)/src/engine/wire.gen.ts
STATICCHECK := honnef.co/go/tools/cmd/staticcheck@v0.8.2
LINTER     := $(BUILD)/bin/staticcheck
# Errors here are sentences for a person, with a full stop.
CHECKS     := inherit,-ST1005

# Long enough to find what a change broke, short enough for every night.
FUZZ_TIME  ?= 30s

.PHONY: run test checks pages test-long bench bench-colour dist golden lint generate clean \
	tools build harness lint-go lint-web test-go test-wasm test-unit test-page size smoke fuzz

run: dist
	@node $(WEB)/dev/serve.mjs $(WEB)/dist

dist: build
	@$(MAKE) size
	@echo "The page is in $(WEB)/dist: static files, for any path of any static host."

# Two at a time, because much of it waits: for a linker, a registry, one slow
# test. Then the browsers, which want the machine for themselves.
test: | tools
	@$(MAKE) -j2 --output-sync=target checks
	@$(MAKE) pages
	@echo "All tests passed."

checks: lint test-go test-wasm test-unit dist harness

test-long: export BADGEWRIGHT_SCREENS := all
test-long: export BADGEWRIGHT_KILLS := 50
test-long: export WASM_TESTS :=
test-long: test smoke fuzz
	@echo "All long tests passed."

# ---- what is needed

tools:
	@bash $(WEB)/dev/tools.sh

# node_modules is made anew whenever the lock file is newer.
$(BUILD)/npm.stamp: $(WEB)/package.json $(WEB)/package-lock.json | tools
	@mkdir -p $(BUILD)
	cd $(WEB) && npm ci --no-audit --no-fund --loglevel=error </dev/null
	@touch $@

# ---- building

GO_SOURCES := go.mod go.sum $(shell find reduce sizing wasm -name '*.go' ! -name '*_test.go')

# Two programs of one source: the pin's, which the first screen waits for, and
# the order's, which comes after it.
ENGINES := $(BUILD)/pin.wasm $(BUILD)/order.wasm
$(ENGINES): $(BUILD)/%.wasm: $(GO_SOURCES) | tools
	@mkdir -p $(BUILD)
	GOOS=js GOARCH=wasm go build -trimpath -tags $* -ldflags="-s -w" -o $@ ./wasm

$(BUILD)/wasm_exec.js: | tools
	@mkdir -p $(BUILD)
	@cp "$$(go env GOROOT)/lib/wasm/wasm_exec.js" $@

# What the page shows before its engine is there.
FIRST := $(BUILD)/first/sheet.json
$(FIRST): $(GO_SOURCES) $(WEB)/dev/first.mjs testdata/drawings/lighthouse.png testdata/drawings/demo/lighthouse.svg $(BUILD)/npm.stamp | tools
	@node $(WEB)/dev/first.mjs $(@D)

build: $(BUILD)/npm.stamp $(ENGINES) $(BUILD)/wasm_exec.js $(FIRST)
	@node $(WEB)/dev/static.mjs
	@cd $(WEB) && npx vite build --logLevel warn
	@node $(WEB)/dev/offline.mjs $(WEB)/dist

size:
	@node $(WEB)/dev/size.mjs $(WEB)/dist

generate: | tools
	@go run ./wasm/wire/gen $(TWIN)

# ---- checking

lint: lint-go lint-web

$(LINTER): | tools
	GOBIN="$(CURDIR)/$(BUILD)/bin" go install $(STATICCHECK)

lint-go: $(LINTER)
	@unformatted="$$(gofmt -l reduce sizing wasm)"; \
		if [ -n "$$unformatted" ]; then echo "Not formatted (run gofmt -w): $$unformatted"; exit 1; fi
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./wasm/...
	GOOS=js GOARCH=wasm go vet -tags pin ./wasm
	GOOS=js GOARCH=wasm go vet -tags order ./wasm
	$(LINTER) -checks $(CHECKS) ./...
	GOOS=js GOARCH=wasm $(LINTER) -checks $(CHECKS) ./wasm/...
	@node $(WEB)/dev/arrows.mjs

lint-web: $(BUILD)/npm.stamp $(BUILD)/wasm_exec.js
	@go run ./wasm/wire/gen $(BUILD)/wire.gen.ts
	@cmp -s $(BUILD)/wire.gen.ts $(TWIN) || { echo "$(TWIN) is stale: run make generate."; exit 1; }
	cd $(WEB) && npx tsc --noEmit
	cd $(WEB) && npx oxlint --deny-warnings

test-go: | tools
	go test ./...

# The same tests as the browser would run them, three to five times slower: the
# longest take fewer cases there. The runner copies the environment into the
# program, which has little room for it.
WASM_TESTS ?= -short
test-wasm: | tools
	@bash $(WEB)/dev/wasmtest.sh $(WASM_TESTS) ./reduce/... ./sizing/... ./wasm/...

test-unit: $(BUILD)/npm.stamp $(BUILD)/wasm_exec.js
	cd $(WEB) && npx vitest run

# The engine alone, for tests and benches.
harness: build
	@cd $(WEB) && npx vite build -c test/harness/vite.config.ts --logLevel warn

test-page: build harness
	@$(MAKE) pages

# Three files at a time: a browser waits much.
pages:
	@bash $(WEB)/dev/browsers.sh chromium pdf
	cd $(WEB) && node --test --test-concurrency=3 --test-reporter=spec test/page/*.test.mjs

smoke: build harness
	@bash $(WEB)/dev/browsers.sh chromium firefox webkit
	cd $(WEB) && node --test --test-concurrency=1 --test-reporter=spec test/smoke/*.test.mjs

fuzz: | tools
	@bash $(WEB)/dev/fuzz.sh $(FUZZ_TIME)

golden: | tools
	BADGEWRIGHT_GOLDEN=write go test ./... -run Golden

bench: dist harness
	@bash $(WEB)/dev/browsers.sh chromium
	go test -run '^$$' -bench . -benchtime 5x ./...
	cd $(WEB) && node test/bench/bench.mjs

# Peers and pictures are installed beside the benchmark and are no part of the page.
COLOUR := $(WEB)/test/colour
$(BUILD)/colour.stamp: $(COLOUR)/package.json $(COLOUR)/package-lock.json | tools
	@mkdir -p $(BUILD)
	cd $(COLOUR) && npm ci --no-audit --no-fund --loglevel=error </dev/null
	@touch $@

bench-colour: $(BUILD)/colour.stamp
	@bash $(COLOUR)/tools.sh
	@mkdir -p $(BUILD)/colour
	go build -o $(BUILD)/engine-native ./wasm
	go build -o $(BUILD)/colour/goquantize $(COLOUR)/goquantize.go
	@node $(COLOUR)/bench.mjs

clean:
	rm -rf $(BUILD) $(WEB)/dist $(WEB)/public $(WEB)/node_modules $(COLOUR)/node_modules
