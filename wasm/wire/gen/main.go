// Command gen writes the TypeScript twin of the wire's types:
//
//	go run ./wasm/wire/gen web/src/engine/wire.gen.ts
//
// Shapes come from the types themselves, by reflection; doc comments and the
// values of string types come from their source.
package main

import (
	"fmt"
	"os"

	"badgewright/wasm/wire"
)

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "gen: say which file to write, as in: go run ./wasm/wire/gen web/src/engine/wire.gen.ts")
		os.Exit(2)
	}
	if err := write(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "gen:", err)
		os.Exit(1)
	}
}

func write(path string) error {
	text, err := Generate(".", wire.Calls, wire.OrderCalls, wire.Project{}, wire.Failure{})
	if err != nil {
		return err
	}
	return os.WriteFile(path, []byte(text), 0o644)
}
