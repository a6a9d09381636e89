package trace

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce/colour"
)

func TestLayersHaveNamesOfTheirOwn(t *testing.T) {
	s := text(10, rows(`
		########
		#rr##bb#
		########`)...)
	_, sh := traced(t, s, 10)
	require.Len(t, sh.Enamel, 2)
	for names, ids := range map[string]string{
		"sea blue|sea blue": "sea-blue|sea-blue-2",
		"7|Metal":           "colour-7|metal-2",
		"<&>|青":             "colour|colour-2",
	} {
		name := strings.Split(names, "|")
		k := 0
		svg := string(sh.SVG(Drawing{Title: "a < b", Paint: func(*Face) (string, colour.RGB8) {
			k++
			return name[k-1], colour.RGB8{R: 255}
		}}))
		var got []string
		for _, m := range regexp.MustCompile(`<g id="([^"]*)"`).FindAllStringSubmatch(svg, -1) {
			got = append(got, m[1])
		}
		assert.Equal(t, append([]string{"outline", "metal"}, strings.Split(ids, "|")...), got)
		assert.Contains(t, svg, "<title>a &lt; b</title>")
	}
}

// Whoever shares a border writes it with the same digits.
func TestSharedPlacesHaveTheSameDigits(t *testing.T) {
	_, sh := traced(t, wave(6), 37)
	number := regexp.MustCompile(`-?\d+(\.\d+)? -?\d+(\.\d+)?`)
	count := map[string]int{}
	for _, f := range append([]Face{sh.Metal}, sh.Enamel...) {
		for _, p := range number.FindAllString(sh.PathData(f.Areas...), -1) {
			count[p]++
		}
	}
	for _, p := range number.FindAllString(sh.PathData(sh.Outline.Areas...), -1) {
		count[p]++
	}
	for p, n := range count {
		assert.GreaterOrEqual(t, n, 2, p)
	}
}
