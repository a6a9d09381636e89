//go:build js

package main

import (
	"encoding/json"
	"syscall/js"
	"time"

	"badgewright/reduce"
	"badgewright/wasm/calls"
)

// call is what the worker sees: badgewrightCall(name, askJSON, bytes or null,
// onProgress) returns a promise of {json, bytes}. A panic is our own bug: it
// ends the program, and the page starts another.
func call(s *calls.Session) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		name, ask, job := args[0].String(), []byte(args[1].String()), calls.Job{
			Bytes:    bytesIn(args[2]),
			Progress: progressTo(args[3]),
		}
		return promise(func(resolve, reject js.Value) {
			reply, err := s.Do(name, ask, job)
			if err != nil {
				f := calls.FailureOf(err)
				reject.Invoke(map[string]any{"what": f.What, "do": f.Do, "kind": string(f.Kind)})
				return
			}
			resolve.Invoke(answer(reply))
		})
	})
}

func answer(r calls.Reply) js.Value {
	text, err := json.Marshal(r.Answer)
	if err != nil {
		panic(err)
	}
	out := js.Global().Get("Object").New()
	out.Set("json", string(text))
	if r.Bytes != nil {
		bytes := js.Global().Get("Uint8Array").New(len(r.Bytes))
		js.CopyBytesToJS(bytes, r.Bytes)
		out.Set("bytes", bytes)
	}
	return out
}

func bytesIn(v js.Value) []byte {
	if v.IsNull() || v.IsUndefined() {
		return nil
	}
	out := make([]byte, v.Get("length").Int())
	js.CopyBytesToGo(out, v)
	return out
}

// breath is how often a long call lets the worker read its messages; only a
// real sleep does that, a yield does not.
const breath = 50 * time.Millisecond

// progressTo reports to the worker and stops the call when it answers false.
func progressTo(report js.Value) reduce.Progress {
	if report.Type() != js.TypeFunction {
		return nil
	}
	last := time.Now()
	return func(share float64, doing string) error {
		if time.Since(last) < breath {
			return nil
		}
		time.Sleep(time.Millisecond)
		last = time.Now()
		if !report.Invoke(share, doing).Truthy() {
			return calls.ErrStopped
		}
		return nil
	}
}

// promise runs work on its own goroutine, so that it may sleep.
func promise(work func(resolve, reject js.Value)) js.Value {
	var executor js.Func
	executor = js.FuncOf(func(_ js.Value, args []js.Value) any {
		executor.Release()
		go work(args[0], args[1])
		return nil
	})
	return js.Global().Get("Promise").New(executor)
}
