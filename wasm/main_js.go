//go:build js

// Command wasm is the engine. In the browser it offers its calls to the worker
// that started it; natively it answers the same calls, one JSON line each.
package main

import (
	"syscall/js"

	"badgewright/wasm/calls"
)

func main() {
	js.Global().Set("badgewrightCall", call(calls.NewSession()))
	if ready := js.Global().Get("badgewrightReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}
