package sheet

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/ledongthuc/pdf"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/goregular"
)

// someday is when the papers of these tests are made.
var someday = time.Date(2026, 3, 2, 9, 30, 0, 0, time.UTC)

// fontFile reads one of the small fonts of testdata.
func fontFile(t require.TestingT, name string) []byte {
	b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "fonts", name))
	require.NoError(t, err)
	return b
}

// someFonts is like the set of the page, with fewer letters: Go's own font
// stands for the heavy one.
func someFonts(t require.TestingT) *Fonts {
	f, err := NewFonts(
		FontFile{"NotoSans", Regular, fontFile(t, "NotoSans-some.ttf")},
		FontFile{"Go", Strong, goregular.TTF},
		FontFile{"NotoSansJP", Regular, fontFile(t, "NotoSansJP-some.ttf")},
	)
	require.NoError(t, err)
	return f
}

// readBack opens a PDF with a reader that shares no code with the writer
// (github.com/ledongthuc/pdf).
func readBack(t require.TestingT, file []byte) *pdf.Reader {
	r, err := pdf.NewReader(bytes.NewReader(file), int64(len(file)))
	require.NoError(t, err)
	return r
}

// textOf is the text of a page.
func textOf(t require.TestingT, r *pdf.Reader, page int) string {
	s, err := r.Page(page).GetPlainText(nil)
	require.NoError(t, err)
	return s
}

func streamOf(t *testing.T, v pdf.Value) []byte {
	r := v.Reader()
	defer r.Close()
	b, err := io.ReadAll(r)
	require.NoError(t, err)
	return b
}

// begun is a document with one upright A4 page.
func begun(t require.TestingT) *Document {
	d := NewDocument(Meta{Title: "Skerry Light", Date: someday}, someFonts(t))
	d.AddPage(A4.Size())
	return d
}
