//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// talk sends lines to the engine and returns its answers.
func talk(t *testing.T, lines ...string) []map[string]any {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, serve(strings.NewReader(strings.Join(lines, "\n")), &out))
	var all []map[string]any
	dec := json.NewDecoder(&out)
	for dec.More() {
		var m map[string]any
		require.NoError(t, dec.Decode(&m))
		all = append(all, m)
	}
	require.Len(t, all, len(lines))
	return all
}

func TestOneLineInOneLineOut(t *testing.T) {
	dir := t.TempDir()
	labels, reduced, pin := filepath.Join(dir, "l.png"), filepath.Join(dir, "r.png"), filepath.Join(dir, "p.png")
	got := talk(t,
		`{"call":"open","file":"../testdata/drawings/lighthouse.png"}`,
		`{"set":{"colours":4,"size":{"mm":32,"by":"longest"}},"version":{"quantity":200}}`,
		`{"call":"flats","labels":"`+labels+`","reduced":"`+reduced+`"}`,
		`{"call":"check"}`,
		`{"call":"picture","ask":{"view":"struck","longSide":240},"png":"`+pin+`"}`,
		`{"call":"flats","ask":{"options":{"count":5,"rolesOff":true,"edits":[]}}}`,
	)
	for _, m := range got {
		require.Nil(t, m["error"])
	}
	assert.EqualValues(t, 4, got[2]["answer"].(map[string]any)["count"])
	check := got[3]["answer"].(map[string]any)
	assert.InDelta(t, 32, check["longest"].(float64), 0.01)
	assert.NotZero(t, check["back"].(map[string]any)["count"])
	assert.NotEmpty(t, check["quote"].(map[string]any)["lines"])
	assert.Len(t, got[5]["answer"].(map[string]any)["flats"], 5, "five flats in all, lines among them")
	for _, path := range []string{labels, reduced, pin} {
		f, err := os.Open(path)
		require.NoError(t, err)
		_, err = png.Decode(f)
		require.NoError(t, err, path)
		require.NoError(t, f.Close())
	}
}

func TestSmallQuestionsSpeakOfTheDesignInHand(t *testing.T) {
	got := talk(t,
		`{"call":"typed","ask":{"text":"1 1/4 in","as":"length","beside":"mm"}}`,
		`{"call":"screen","ask":{"report":{"vendor":"Google Inc.","w":2560,"h":1440,"ratio":1,"pinch":1},"match":{"object":85.6,"px":366.616}}}`,
		`{"call":"open","file":"../testdata/drawings/icon40.png"}`,
		`{"call":"thumbnail","ask":{"longSide":32}}`,
		`{"call":"choices"}`,
	)
	for _, m := range got {
		require.Nil(t, m["error"], "%v", m)
	}
	answer := func(i int) map[string]any { return got[i]["answer"].(map[string]any) }
	assert.InDelta(t, 31.75, answer(0)["number"], 1e-9)
	assert.InDelta(t, 4.2829, answer(1)["devicePerMM"], 1e-4, "27 in 2560x1440 (reference/display_ppi.csv)")
	assert.EqualValues(t, 32, answer(3)["w"])
	assert.NotEmpty(t, answer(4)["rows"])
}

func TestALineThatFailsIsAnsweredInWords(t *testing.T) {
	got := talk(t,
		`not json`,
		`{"call":"open","file":"nowhere.png"}`,
		`{"call":"flats"}`,
		`{"call":"unheard-of"}`,
	)
	for _, m := range got {
		e, ok := m["error"].(map[string]any)
		require.True(t, ok, "%v", m)
		assert.NotEmpty(t, e["what"])
	}
}

func TestHangSpeaksOfTheDesignInHand(t *testing.T) {
	got := talk(t,
		`{"call":"open","file":"../testdata/drawings/lighthouse.png"}`,
		`{"call":"hang","ask":{"posts":[{"x":8,"y":14},{"x":24,"y":14.4}],"moved":1}}`,
		`{"call":"hang","ask":{"posts":[{"x":8,"y":14},{"x":1,"y":2},{"x":3,"y":3},{"x":4,"y":4}],"moved":9}}`,
	)
	require.Nil(t, got[1]["error"])
	back := got[1]["answer"].(map[string]any)["back"].(map[string]any)
	assert.Len(t, back["posts"], 2)
	assert.NotEmpty(t, back["hangSays"])
	assert.Contains(t, got[2]["error"].(map[string]any)["what"], "4 posts")
}
