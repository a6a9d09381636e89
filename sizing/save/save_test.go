package save

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
)

const drawingsOf = "../../testdata/drawings/"

func fileBytes(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	require.NoError(t, err)
	return data
}

// small is a project of one drawing of its own and one brought as lines and colours.
func small(t testing.TB) File {
	icon := fileBytes(t, drawingsOf+"icon40.png")
	return File{
		Project: json.RawMessage(`{"format":2,"order":{"name":"Skerry Light","designs":[]}}`),
		Drawings: []Drawing{
			{ID: "drawing-1", Files: []Original{{Name: "lighthouse.svg", Bytes: fileBytes(t, drawingsOf+"demo/lighthouse.svg")}}},
			{ID: "drawing-2", Files: []Original{{Name: "lines.png", Bytes: icon}, {Name: "colours.gif", Bytes: fileBytes(t, drawingsOf+"two-frames.gif")}}},
		},
		Pictures: []Picture{{ID: "picture-1", Bytes: icon}, {ID: "picture-2", Bytes: fileBytes(t, drawingsOf+"demo/lighthouse.svg")}},
		Thumb:    icon,
	}
}

func written(t testing.TB, f File) []byte {
	t.Helper()
	data, err := Write(f)
	require.NoError(t, err)
	return data
}

func TestWhatWasSavedIsRead(t *testing.T) {
	f := small(t)
	data := written(t, f)
	got, err := Open(data)
	require.NoError(t, err)
	assert.Equal(t, f, got.File)
	assert.Equal(t, Format, got.Format)
	assert.Empty(t, got.Notes)
	assert.Equal(t, data, written(t, got.File), "loaded and saved again it is the same file")
}

func TestTheFileIsAnArchiveThatOthersRead(t *testing.T) {
	data := written(t, small(t))
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	var names []string
	for _, f := range r.File {
		names = append(names, f.Name)
		assert.Equal(t, "1980-01-01T00:00:00Z", f.Modified.UTC().Format(time.RFC3339), f.Name)
	}
	assert.Equal(t, []string{"project.json", "drawings/drawing-1.svg", "drawings/drawing-2.png", "drawings/drawing-2-2.gif", "pictures/picture-1.png", "pictures/picture-2.svg", "thumbnail.png"}, names)
}

func TestTextsAreCleanedOnTheWayOut(t *testing.T) {
	f := small(t)
	f.Project = json.RawMessage("{\"format\":2,\"order\":{\"name\":\"a\\u0007b\\\\u0007 <b>é\x7f\u009b</b>\\n\", \"designs\": []}}")
	f.Drawings[0].Files[0].Name = "C:\\pictures\\tower\x01.svg"
	got, err := Open(written(t, f))
	require.NoError(t, err)
	var p struct {
		Order struct{ Name string }
	}
	require.NoError(t, json.Unmarshal(got.Project, &p))
	assert.Equal(t, "ab\\u0007 <b>é</b>\n", p.Order.Name)
	assert.Equal(t, "tower.svg", got.Drawings[0].Files[0].Name)
}

func TestPicturesAreLookedAtLikeDrawings(t *testing.T) {
	f := small(t)
	good := written(t, f)
	without := f
	without.Pictures = nil
	plain := written(t, without)
	got, err := Open(plain)
	require.NoError(t, err)
	assert.Equal(t, without, got.File, "a file without pictures is as it was before there were any")

	big := bytes.Repeat([]byte(noise(1<<20)), 2)
	for what, data := range map[string][]byte{
		`"pictures/picture-1.png" of this project file is a file of another kind`: rebuilt(t, good, map[string]string{"pictures/picture-1.png": string(f.Drawings[1].Files[1].Bytes)}),
		`no entry "pictures/picture-1.png"`:                                       rebuilt(t, good, map[string]string{"pictures/picture-1.png": "\x00"}),
		`"../x" of this project file is not`:                                      rebuilt(t, good, map[string]string{"project.json": `{"format":2,"project":{"format":2},"drawings":[],"pictures":[{"id":"../x","path":"pictures/x.png"}]}`}),
		`"x" of this project file is not`:                                         rebuilt(t, good, map[string]string{"project.json": `{"format":2,"project":{"format":2},"drawings":[],"pictures":[{"id":"x","path":"thumbnail.png"}]}`}),
		`"pictures/more.png" of this project file belongs to nothing in it`:       rebuilt(t, good, map[string]string{"pictures/more.png": string(big)}),
	} {
		_, err := Open(data)
		assert.Contains(t, refusal(t, err), what)
	}

	f.Pictures[0].Bytes = []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><script/></svg>`)
	got, err = Open(written(t, f))
	require.NoError(t, err)
	require.Len(t, got.Notes, 1)
	assert.Contains(t, got.Notes[0], `picture "pictures/picture-1.svg" holds a script`)

	f.Pictures[0].Bytes = []byte("no picture")
	_, err = Write(f)
	refusal(t, err)
	for i := range mostEntries {
		without.Pictures = append(without.Pictures, Picture{ID: "p" + strconv.Itoa(i), Bytes: f.Thumb})
	}
	_, err = Write(without)
	assert.Contains(t, refusal(t, err), "drawings and pictures of this project")
}

func TestAScriptIsToldAndKept(t *testing.T) {
	for _, act := range []string{`<script>alert(1)</script>`, `<svg:script/>`, `<g onload="x()"/>`, `<a href="JavaScript:x"/>`, `<foreignObject/>`} {
		f := small(t)
		svg := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">` + act + `</svg>`
		f.Drawings[0].Files[0] = Original{Name: "trap.svg", Bytes: []byte(svg)}
		got, err := Open(written(t, f))
		require.NoError(t, err)
		require.Len(t, got.Notes, 1, act)
		assert.Contains(t, got.Notes[0], `"trap.svg" holds a script. It is not run`)
		assert.Equal(t, svg, string(got.Drawings[0].Files[0].Bytes))
	}
}

func TestWhatAFileManagerAddsIsLeftOut(t *testing.T) {
	data := rebuilt(t, written(t, small(t)), map[string]string{"drawings/": "", "__MACOSX/._project.json": "x", "drawings/.DS_Store": "y"})
	got, err := Open(data)
	require.NoError(t, err)
	assert.Equal(t, []string{"3 entries in the file that belong to no project were left out."}, got.Notes)
	assert.Equal(t, small(t), got.File)
}

// rebuilt packs a file again with entries added or replaced; those of no text are
// folders, and "\x00" takes one out.
func rebuilt(t testing.TB, data []byte, change map[string]string) []byte {
	t.Helper()
	r, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	require.NoError(t, err)
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	put := func(name, text string) {
		to, err := w.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(to, text)
		require.NoError(t, err)
	}
	for _, f := range r.File {
		if text, ok := change[f.Name]; ok {
			if delete(change, f.Name); text != "\x00" {
				put(f.Name, text)
			}
			continue
		}
		require.NoError(t, w.Copy(f))
	}
	for _, name := range []string{"drawings/", "__MACOSX/._project.json", "drawings/.DS_Store"} {
		if text, ok := change[name]; ok {
			delete(change, name)
			put(name, text)
		}
	}
	for name, text := range change {
		put(name, text)
	}
	require.NoError(t, w.Close())
	return out.Bytes()
}

// refusal is the sentence with which something is refused, and what to do about it.
func refusal(t testing.TB, err error) string {
	t.Helper()
	var r *reduce.Refusal
	require.ErrorAs(t, err, &r)
	require.NotEmpty(t, r.Do)
	return r.What
}

func TestHostileFiles(t *testing.T) {
	good := written(t, small(t))
	with := func(name, text string) []byte { return rebuilt(t, good, map[string]string{name: text}) }
	project := func(text string) []byte { return with("project.json", text) }
	list := func(inner string) []byte {
		return project(`{"format":2,"project":{"format":2,"order":` + inner + `},"drawings":[]}`)
	}
	huge := fileBytes(t, drawingsOf+"huge.png")
	for what, data := range map[string][]byte{
		"is empty":                                 {},
		"is not a project file":                    []byte("GIF89a and nothing more of it than that"),
		"is cut short":                             good[:len(good)-9],
		"or something was added":                   append(bytes.Clone(good), "tail"...),
		"does not lie where it should":             append([]byte("PK\x03\x04"), good...),
		"has no project.json":                      with("project.json", "\x00"),
		"leads out of it":                          with("drawings/../../evil.svg", "x"),
		`"/etc/evil"`:                              with("/etc/evil", "x"),
		`leads out`:                                with(`drawings\evil.svg`, "x"),
		`"C:evil.svg"`:                             with("C:evil.svg", "x"),
		"a name that no file here has":             with("drawings/a\x1b[2J.png", "x"),
		"belongs to nothing in it":                 with("drawings/more.svg", strings.Repeat("<g/>", 20_000)),
		`"notes.bin" of this project file unpacks`: with("notes.bin", strings.Repeat("x", mostStray+1)),
		"which it speaks of":                       with("drawings/drawing-1.svg", "\x00"),
		"a file of another kind":                   with("drawings/drawing-1.svg", string(fileBytes(t, drawingsOf+"icon40.png"))),
		"40000 x 30000 px":                         with("drawings/drawing-2.png", string(huge)),
		"a PNG of up to 512 px":                    with("thumbnail.png", string(huge)),
		"cannot be read":                           project(`{"format":2,`),
		"NaN":                                      nil, // below: every number that is none
		"not text in UTF-8":                        project("{\"format\":2,\"x\":\"\xff\"}"),
		"of which format it is":                    project(`{"order":{}}`),
		"made by a later badgewright":              project(`{"format":3,"project":{"format":3}}`),
		`unknown field "plot"`:                     project(`{"format":2,"project":{"format":2},"drawings":[],"plot":1}`),
		"does not say that it is of format 2":      project(`{"format":2,"project":{"format":1},"drawings":[]}`),
		"Something follows":                        project(`{"format":2} {}`),
		`"../x" of this project file is not`:       project(`{"format":2,"project":{"format":2},"drawings":[{"id":"../x","files":[{"path":"drawings/a.png","name":""}]}]}`),
		`"project.json" of this project file is`:   project(`{"format":2,"project":{"format":2},"drawings":[{"id":"x","files":[{"path":"project.json","name":""}]}]}`),
		"nested more than":                         list(strings.Repeat("[", 60) + strings.Repeat("]", 60)),
		"more than 1000000 values":                 list(manyNumbers(mostValues)),
		"control characters":                       list(`{"name":"a\u001b[2Jb"}`),
		"a text of 16777217 bytes":                 list(`{"name":"` + noise(mostText+1) + `"}`),
		"1e+31":                                    list(`{"mm":1e+31}`),
		"the number 1e13":                          list(`{"mm":1e13}`),
		"the number 1e999999999":                   list(`{"unit":"1e999999999"}`),
		"a number of 5000 digits":                  list(`{"unit":"` + strings.Repeat("9", 5000) + `"}`),
	} {
		if data == nil && what == "NaN" {
			for _, none := range []string{"NaN", "Infinity", "0x10", "+1", "1e400"} {
				_, err := Open(list(`{"mm":` + none + `}`))
				assert.NotEmpty(t, refusal(t, err), none)
			}
			continue
		}
		_, err := Open(data)
		require.Error(t, err, what)
		assert.Contains(t, refusal(t, err), what)
	}
}

// noise is a text that does not pack too well.
func noise(n int) string {
	text := make([]byte, 0, n+16)
	for i := 0; len(text) < n; i++ {
		text = strconv.AppendInt(text, int64(i)*7919%99991, 36)
	}
	return string(text[:n])
}

// manyNumbers is a list that does not pack too well.
func manyNumbers(n int) string {
	text := []byte("[0")
	for i := range n {
		text = strconv.AppendInt(append(text, ','), int64(i)*7919%99991, 10)
	}
	return string(append(text, ']'))
}

func TestADirectoryThatLies(t *testing.T) {
	good := written(t, small(t))
	r, err := zip.NewReader(bytes.NewReader(good), int64(len(good)))
	require.NoError(t, err)

	twice := bytes.Clone(good)
	twice = bytes.ReplaceAll(twice, []byte("drawings/drawing-2.png"), []byte("drawings/drawing-1.svg"))
	_, err = Open(twice)
	assert.Contains(t, refusal(t, err), "two entries named")

	sum := bytes.Clone(good)
	at, err := r.File[1].DataOffset()
	require.NoError(t, err)
	sum[at+40] ^= 0xff
	_, err = Open(sum)
	assert.Contains(t, refusal(t, err), `"drawings/drawing-1.svg" of this project file is damaged`)

	// Every length of a file that stops early is refused.
	for n := 0; n < len(good); n += 997 {
		_, err := Open(good[:n])
		refusal(t, err)
	}
}

// A bomb of a hundred times the size that is let through is refused by what its
// directory says, and one whose directory lies is held to it.
func TestBombs(t *testing.T) {
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	to, err := w.Create("drawings/drawing-1.svg")
	require.NoError(t, err)
	zeros := make([]byte, 1<<20)
	for range 40 {
		_, err = to.Write(zeros)
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	_, err = Open(out.Bytes())
	assert.Contains(t, refusal(t, err), "that is a trap")

	many := bytes.Buffer{}
	w = zip.NewWriter(&many)
	for range mostEntries + 1 {
		_, err := w.Create("a")
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	_, err = Open(many.Bytes())
	assert.Contains(t, refusal(t, err), "a directory of 401 entries")
}

func FuzzOpen(f *testing.F) {
	good := written(f, small(f))
	f.Add(good)
	f.Add(good[:len(good)/2])
	for _, name := range []string{"version-1", "version-2"} {
		f.Add(fileBytes(f, "../../testdata/saves/"+name+".badgewright"))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, err := Open(data)
		if err != nil {
			refusal(t, err)
			return
		}
		again, err := Open(written(t, got.File))
		require.NoError(t, err)
		require.Equal(t, got.File, again.File)
	})
}

// FuzzProject puts any text in the place of the project.
func FuzzProject(f *testing.F) {
	f.Add(`{"format":2,"project":{"format":2,"order":{}},"drawings":[]}`)
	f.Add(`{"format":1,"order":{"designs":[{"drawings":[{"id":"drawing-1","fileName":"a.svg"}]}]}}`)
	f.Add(`{"format":2,"project":{"format":2,"x":["1e99","\u0007",-0.5e-7]},"drawings":[{"id":"drawing-1","files":[{"path":"drawings/drawing-1.svg","name":"é"}]}]}`)
	good := written(f, small(f))
	f.Fuzz(func(t *testing.T, text string) {
		got, err := Open(rebuilt(t, good, map[string]string{"project.json": text}))
		if err != nil {
			refusal(t, err)
			return
		}
		again, err := Open(written(t, got.File))
		require.NoError(t, err)
		require.Equal(t, got.File, again.File)
	})
}
