//go:build !js

package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAColourListStaysInUse(t *testing.T) {
	got := talk(t,
		`{"call":"codes"}`,
		`{"call":"open","file":"../testdata/drawings/icon40.png"}`,
		`{"call":"colourlist","file":"../testdata/colourlists/skerry.csv"}`,
		`{"call":"colourlist","file":"../testdata/colourlists/no-colours.csv"}`,
		`{"call":"colourlist","file":"nowhere.csv"}`,
		`{"call":"codes"}`,
	)
	for _, i := range []int{0, 3, 4} {
		require.NotNil(t, got[i]["error"], "line %d", i)
	}
	rows := got[5]["answer"].(map[string]any)["rows"].([]any)
	require.NotEmpty(t, rows)
	for _, r := range rows {
		nearest := r.(map[string]any)["nearest"].([]any)
		require.Len(t, nearest, 3)
		assert.Regexp(t, `^SL-\d\d$`, nearest[0].(map[string]any)["entry"].(map[string]any)["code"])
	}
}
