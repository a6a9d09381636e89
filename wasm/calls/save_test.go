package calls

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/sizing"
	"badgewright/sizing/parcel"
	"badgewright/sizing/save"
	"badgewright/wasm/wire"
)

func savedFile(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile("../../testdata/saves/" + name)
	require.NoError(t, err)
	return data
}

// again is how the page asks for the file of what it opened.
func again(o wire.OpenedFile) wire.SaveFileAsk {
	return wire.SaveFileAsk{Project: o.Project, Drawings: o.Drawings, Pictures: o.Pictures, Thumb: o.Thumb}
}

func TestFormatsAgree(t *testing.T) {
	assert.Equal(t, save.Format, wire.Format)
}

func TestAProjectFileGoesRound(t *testing.T) {
	s := NewSession()
	got, bytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-2.badgewright"))
	assert.Empty(t, got.Notes)
	require.Len(t, got.Drawings, 2)
	assert.Equal(t, "tower-colours.png", got.Drawings[1].Files[1].Name)
	_, first := ask[wire.SavedFile](t, s, "savefile", again(got), bytes)
	o, bytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, first)
	assert.Equal(t, got, o)
	name, second := ask[wire.SavedFile](t, s, "savefile", again(o), bytes)
	assert.Equal(t, first, second, "byte for byte")
	assert.Equal(t, "Skerry Light.badgewright", name.FileName)
}

// Drawings may be called anything while they are open.
func TestAFileDoesNotTellHowItsDrawingsWereCalled(t *testing.T) {
	s := NewSession()
	got, bytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-2.badgewright"))
	_, first := ask[wire.SavedFile](t, s, "savefile", again(got), bytes)
	for i, id := range []string{"drawing-k3j", "first"} {
		got.Drawings[i].ID = id
		got.Project.Order.Designs[0].Drawings[i].ID = id
	}
	_, second := ask[wire.SavedFile](t, s, "savefile", again(got), bytes)
	assert.Equal(t, first, second)
}

// A project names pictures of pieces and proofs: those at hand go with it, numbered, and
// one that is not at hand does not stop it.
func TestPicturesGoWithTheFile(t *testing.T) {
	s := NewSession()
	got, bytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-2.badgewright"))
	icon := bytes[len(bytes)-got.Thumb:]
	saved := func(lost, there, proof string) []byte {
		a := again(got)
		a.Project.Plans = wire.Plans{
			Parcels: []parcel.Parcel{{ID: "parcel 1", Rows: []parcel.ParcelRow{{Flawed: []parcel.FlawedPiece{{Grade: parcel.Second, Photos: []string{lost, there}}, {Grade: parcel.Reject, Photos: []string{there}}}}}}},
			Proofs:  []wire.ProofRound{{ID: proof}},
		}
		a.Pictures = []wire.FilePhoto{{ID: proof, Size: len(icon)}, {ID: there, Size: len(icon)}, {ID: "unnamed", Size: len(icon)}}
		head := bytes[:len(bytes)-len(icon)]
		_, data := ask[wire.SavedFile](t, s, "savefile", a, slices.Concat(head, icon, icon, icon, icon))
		return data
	}
	first := saved("gone", "pk3", "proof-j")
	assert.Equal(t, first, saved("x", "y", "z"), "however they were called")

	o, bytes2 := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, first)
	assert.Equal(t, []wire.FilePhoto{{ID: "picture-2", Size: len(icon), Type: "image/png"}, {ID: "picture-3", Size: len(icon), Type: "image/png"}}, o.Pictures)
	assert.Equal(t, []string{"picture-1", "picture-2"}, o.Project.Plans.Parcels[0].Rows[0].Flawed[0].Photos)
	assert.Equal(t, "picture-3", o.Project.Plans.Proofs[0].ID)
	_, second := ask[wire.SavedFile](t, s, "savefile", again(o), bytes2)
	assert.Equal(t, first, second, "byte for byte")
}

func TestAnOlderFileIsBroughtForward(t *testing.T) {
	s := NewSession()
	now, nowBytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-2.badgewright"))
	old, oldBytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-1.badgewright"))
	assert.Equal(t, wire.Format, old.Project.Format)
	assert.Equal(t, now.Project, old.Project)
	require.Len(t, old.Notes, 1)
	assert.Contains(t, old.Notes[0], "saved by an earlier badgewright")
	assert.Equal(t, nowBytes[:len(nowBytes)-now.Thumb], oldBytes)
	assert.Equal(t, "tower-lines.png", old.Drawings[1].Files[1].Name, "format 1 kept no name for the second picture")

	old.Project.Format = 1
	text, err := json.Marshal(old.Project)
	require.NoError(t, err)
	alone, _ := ask[wire.Forwarded](t, s, "forward", wire.ForwardAsk{}, text)
	assert.Equal(t, now.Project, alone.Project)
}

func TestProjectFilesThatAreRefused(t *testing.T) {
	s := NewSession()
	good, bytes := ask[wire.OpenedFile](t, s, "openfile", wire.OpenFileAsk{}, savedFile(t, "version-2.badgewright"))
	refused := func(change func(*wire.Order)) string {
		var p wire.Project
		text, err := json.Marshal(good.Project)
		require.NoError(t, err)
		require.NoError(t, json.Unmarshal(text, &p))
		change(&p.Order)
		text, err = json.Marshal(wire.SaveFileAsk{Project: p, Drawings: good.Drawings, Thumb: good.Thumb})
		require.NoError(t, err)
		_, err = s.Do("savefile", text, Job{Bytes: bytes})
		var r *reduce.Refusal
		require.ErrorAs(t, err, &r)
		return r.What
	}
	assert.Contains(t, refused(func(o *wire.Order) { o.Designs[0].Size.MM = 1e9 }), "A size of 1e+09 mm")
	assert.Contains(t, refused(func(o *wire.Order) { o.Designs[0].Edits = make([]reduce.Edit, 5_001) }), "5001 changes of colours")
	assert.Contains(t, refused(func(o *wire.Order) { o.Designs[0].Drawings[0].ID = "gone" }), `"lighthouse.svg" is not here to be saved`)
	assert.Contains(t, refused(func(o *wire.Order) { o.Designs = []sizing.Design{} }), "0 designs")

	// A field that this badgewright does not know would be lost when it is saved again.
	strange, err := save.Write(save.File{Project: json.RawMessage(`{"format":2,"order":{"name":"","moon":1}}`)})
	require.NoError(t, err)
	_, err = s.Do("openfile", []byte("{}"), Job{Bytes: strange})
	assert.ErrorContains(t, err, `unknown field "moon"`)

	text, err := json.Marshal(again(good))
	require.NoError(t, err)
	_, err = s.Do("savefile", text, Job{Bytes: bytes[1:]})
	assert.ErrorContains(t, err, "not those of its drawings")
}
