package sheet

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
	"badgewright/sizing/fastener"
)

// layersOf reads an SVG as any reader of XML does: the groups in order, and the
// measures of the drawing.
func layersOf(t *testing.T, svg []byte) (ids []string, at map[string]string) {
	at = map[string]string{}
	d := xml.NewDecoder(strings.NewReader(string(svg)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return ids, at
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				switch {
				case e.Name.Local == "svg":
					at[a.Name.Local] = a.Value
				case e.Name.Local == "g" && a.Name.Local == "id":
					ids = append(ids, a.Value)
				}
			}
		}
	}
}

func TestLayersHaveReadableIdsAndTrueSize(t *testing.T) {
	l := Layers{keepsakeSpec(t)}
	l.Stamped = &fastener.Stamped{Middle: sizing.Post{X: 6, Y: 5}, W: 6, H: 1.5, Height: 1.2, Stroke: 0.2, Lines: []string{"SKERRY"}}
	ids, at := layersOf(t, l.SVG())
	assert.Equal(t, []string{"outline", "lines", "colour-1-red", "colour-2-blue", "cut-outs", "posts", "back-stamp", "measures"}, ids)
	assert.Equal(t, "44mm", at["width"])
	assert.Equal(t, "39mm", at["height"])
	assert.Equal(t, "-16 -16 44 39", at["viewBox"], "its unit is the mm")
}

// A border between red and metal is written with the same digits in both: the
// places of the red area are all among those of the lines.
func TestLayersShareTheirBorders(t *testing.T) {
	svg := string((&Layers{keepsakeSpec(t)}).SVG())
	places := func(id string) map[string]bool {
		_, rest, ok := strings.Cut(svg, `<g id="`+id+`">`)
		require.True(t, ok)
		group, _, _ := strings.Cut(rest, "</g>")
		all := map[string]bool{}
		for _, d := range regexp.MustCompile(` d="([^"]*)"`).FindAllStringSubmatch(group, -1) {
			for _, p := range regexp.MustCompile(`[-0-9.]+ [-0-9.]+`).FindAllString(d[1], -1) {
				all[p] = true
			}
		}
		return all
	}
	lines, red := places("lines"), places("colour-1-red")
	require.NotEmpty(t, red)
	for p := range red {
		assert.True(t, lines[p], p)
	}
}

func TestLayersInPDFAreNamedAndTrue(t *testing.T) {
	l := Layers{keepsakeSpec(t)}
	p, err := l.PDF(someFonts(t))
	require.NoError(t, err)
	r := readBack(t, p.File)
	box := r.Page(1).V.Key("MediaBox")
	if box.IsNull() {
		box = r.Page(1).V.Key("Parent").Key("MediaBox")
	}
	assert.InDelta(t, 44, box.Index(2).Float64()/72*25.4, 0.005)
	groups := r.Trailer().Key("Root").Key("OCProperties").Key("OCGs")
	var names []string
	for i := range groups.Len() {
		names = append(names, groups.Index(i).Key("Name").Text())
	}
	assert.Equal(t, []string{"outline", "metal lines", "1 red", "2 blue", "cut-outs, right through", "posts, seen through from the front", "measures in mm"}, names)
	outline := placedOn(r, 1)[0]
	near(t, box4(16, 16, 28, 23), outline.box)
	assert.InDelta(t, 1, outline.scale, 1e-6)
	again, err := l.PDF(someFonts(t))
	require.NoError(t, err)
	assert.Equal(t, p.File, again.File)
	assert.Equal(t, pdf.Array, groups.Kind())
}

func box4(x0, y0, x1, y1 float64) box { return box{x0, y0, x1, y1} }

func TestHostileNamesMakeNoLayersBreak(t *testing.T) {
	l := Layers{keepsakeSpec(t)}
	l.Asked.Design = "</title><script>alert(1)</script>\x00\ufffe"
	l.Asked.Colours[0].Name = `"/><g id="` + strings.Repeat("灯台 x ", 4000)
	ids, _ := layersOf(t, l.SVG())
	assert.Len(t, ids, 7)
	assert.NotContains(t, string(l.SVG()), "<script")
	for _, id := range ids {
		assert.Regexp(t, "^[a-z][a-z0-9-]*$", id)
	}
}
