//go:build !js

// Command wasm is the engine. In the browser it offers its calls to the worker
// that started it; natively it answers the same calls, one JSON line each.
package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os"

	"badgewright/wasm/calls"
)

func main() {
	if err := serve(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// longestLine bounds one request; a project with hundreds of edits is far below it.
const longestLine = 16 << 20

// serve answers every line of in with one line on out. A line that fails gets
// an answer with an error in words, and the next one is read.
func serve(in io.Reader, out io.Writer) error {
	desk := newDesk(calls.NewSession())
	lines := bufio.NewScanner(in)
	lines.Buffer(nil, longestLine)
	enc := json.NewEncoder(out)
	for lines.Scan() {
		if len(lines.Bytes()) == 0 {
			continue
		}
		if err := enc.Encode(desk.answer(lines.Bytes())); err != nil {
			return err
		}
	}
	return lines.Err()
}
