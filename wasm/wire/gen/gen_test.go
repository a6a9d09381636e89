package main

import (
	"os"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// moduleRoot is where the module lies, seen from this package.
const moduleRoot = "../../.."

type sample struct {
	Rate    decimal.Decimal   `json:"rate"`
	Posts   []sizing.Post     `json:"posts"`
	Verdict sizing.Verdict    `json:"verdict"`
	Box     [2]float64        `json:"box"`
	Words   map[string]string `json:"words"`
	Maybe   *sizing.Size      `json:"maybe"`
	Often   string            `json:"often,omitempty"`
	Hidden  int               `json:"-"`
}

func generated(t *testing.T, calls, order []wire.Call, further ...any) string {
	t.Helper()
	text, err := Generate(moduleRoot, calls, order, further...)
	require.NoError(t, err)
	return text
}

func TestEveryShapeHasItsTwin(t *testing.T) {
	text := generated(t, []wire.Call{{Name: "try", Ask: wire.HelloAsk{}, Answer: sample{}}}, []wire.Call{{Name: "sum", Ask: wire.HelloAsk{}, Answer: sample{}}})
	for _, want := range []string{
		"export interface sample {\n  rate: string;\n  posts: Post[];\n  verdict: Verdict;\n  box: [number, number];\n  words: Record<string, string>;\n  maybe?: Size;\n  often?: string;\n}\n",
		"export type Verdict = \"holds\" | \"fails\" | \"cannot-tell\";\n",
		"/** Verdict is one of three answers. */\n",
		"export type MM = number;\n",
		"export type HelloAsk = Record<string, never>;\n",
		"  try: { ask: HelloAsk; answer: sample };\n  sum: { ask: HelloAsk; answer: sample };\n",
		"ORDER_CALLS: readonly (keyof Calls)[] = ['sum'];\n",
	} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "Hidden")
}

func TestWhatCannotTravelIsRefused(t *testing.T) {
	type namesake struct {
		A run.Line `json:"a"`
	}
	type Line struct {
		B namesake `json:"b"`
	}
	for name, value := range map[string]any{
		"bytes inside an answer":   struct{ A []byte }{},
		"a field without a name":   wire.Call{},
		"a function":               func() {},
		"two types with one name":  Line{},
		"a field of complex kinds": complex(1, 2),
	} {
		_, err := Generate(moduleRoot, []wire.Call{{Name: "try", Ask: wire.HelloAsk{}, Answer: value}}, nil)
		assert.Error(t, err, name)
	}
}

// TestTwinIsFresh fails when the types changed and `make generate` was not run.
func TestTwinIsFresh(t *testing.T) {
	kept, err := os.ReadFile(moduleRoot + "/web/src/engine/wire.gen.ts")
	require.NoError(t, err)
	assert.Equal(t, string(kept), generated(t, wire.Calls, wire.OrderCalls, wire.Project{}, wire.Failure{}))
}
