package calls

import (
	"bytes"
	"testing"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/wasm/wire"
)

func TestAVersionIsPrintedAsASheetAndAsLayers(t *testing.T) {
	s := NewSession()
	_, p := opening(t, s, 300, 8)
	d := &p.Project.Order.Designs[0]
	d.Size = sizeOf(30)
	key := handing(t, s, p)
	svg, file := ask[wire.PaperFile](t, s, "layers", wire.LayersAsk{Of: key, Today: "2026-03-02"}, nil)
	assert.Equal(t, "sea-roundel-30mm-layers.svg", svg.FileName)
	ids, _, _, size := groups(t, file)
	assert.Equal(t, [2]string{"62mm", "62mm"}, size, "16 mm round it for its measures")
	assert.Subset(t, ids, []string{"outline", "lines", "posts", "measures"})

	_, err := s.Do("specsheet", []byte(`{"of":"`+key+`","format":"a4","today":"2026-03-02"}`), Job{})
	require.ErrorIs(t, err, errNoFonts)
	withFonts(t, s)
	for _, call := range []struct {
		name string
		ask  any
		want string
	}{
		{"specsheet", wire.SpecSheetAsk{Of: key, Format: "letter", Today: "2026-03-02", Note: "Mind the waves."}, "sea-roundel-30mm-spec.pdf"},
		{"layers", wire.LayersAsk{Of: key, PDF: true, Today: "2026-03-02"}, "sea-roundel-30mm-layers.pdf"},
	} {
		a, file := ask[wire.PaperFile](t, s, call.name, call.ask, nil)
		assert.Equal(t, call.want, a.FileName)
		assert.Empty(t, a.Notes)
		r, err := pdf.NewReader(bytes.NewReader(file), int64(len(file)))
		require.NoError(t, err)
		assert.NotZero(t, r.NumPage())
		_, again := ask[wire.PaperFile](t, s, call.name, call.ask, nil)
		assert.Equal(t, file, again)
	}
}
