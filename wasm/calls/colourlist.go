package calls

import (
	"fmt"
	"strings"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/reduce/colourlist"
	"badgewright/wasm/wire"
)

// nearestShown is how many entries stand beside each flat.
const nearestShown = 3

// listed is a list that is empty rather than missing.
func listed[T any](l []T) []T {
	if l == nil {
		return []T{}
	}
	return l
}

func counted(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", n, one)
}

// codes holds the colours of a version against a maker's list.
func codes(s *Session, job Job, ask wire.CodesAsk) (Reply, error) {
	u, err := s.subject(&ask.Picked, job.Progress)
	if err != nil {
		return Reply{}, err
	}
	b := bench{shelf: colourlist.NewShelf(&ask.List)}
	for i := range u.base.sep.Flats {
		if f := &u.base.sep.Flats[i]; takesCode(f) {
			b.lay(f, u.taken(f))
		}
	}
	answer := wire.Codes{Rows: listed(b.rows), Shared: []wire.SharedCode{}, Apart: []wire.ApartCode{}}
	if answer.Shared = b.shared(); len(answer.Shared) > 0 {
		answer.Apart, answer.ApartWords = b.apart()
	}
	return Reply{Answer: answer}, nil
}

// takesCode is true for what is made in a colour: metal takes the plating, and
// a hole takes nothing.
func takesCode(f *reduce.Flat) bool { return f.Role == reduce.Enamel || f.Role == reduce.Printed }

// taken is the code that a flat of the version has taken, if any.
func (u *subject) taken(f *reduce.Flat) *wire.TakenCode {
	if c := codeOf(u.version, f); c != nil {
		return &wire.TakenCode{Code: c.Code, Named: c.Named, Recoloured: c.RGB != nil}
	}
	return nil
}

// bench is the flats of a version laid beside a list, in order.
type bench struct {
	shelf *colourlist.Shelf
	rows  []wire.FlatCodes
	labs  []colour.Lab
	// falls is the code that each flat falls on: the one taken, else the nearest.
	falls []string
	// held is the entry of the code taken, or -1.
	held []int
}

func (b *bench) lay(f *reduce.Flat, taken *wire.TakenCode) {
	lab := f.RGB.Lab()
	row := wire.FlatCodes{Flat: f.ID, Name: f.Name, RGB: f.RGB, Nearest: listed(b.shelf.Nearest(lab, nearestShown)), Taken: taken}
	falls, held := "", -1
	switch {
	case taken != nil:
		falls = taken.Code
		if held = b.shelf.Find(taken.Code); held >= 0 {
			row.Taken.Match = new(b.shelf.At(held, lab))
		}
	case len(row.Nearest) > 0:
		falls = row.Nearest[0].Entry.Code
	}
	b.rows, b.labs = append(b.rows, row), append(b.labs, lab)
	b.falls, b.held = append(b.falls, falls), append(b.held, held)
}

// shared finds the codes that more than one flat falls on.
func (b *bench) shared() []wire.SharedCode {
	all := []wire.SharedCode{}
	for i, code := range b.falls {
		if code == "" || indexOf(b.falls, code) < i {
			continue
		}
		one := wire.SharedCode{Code: code}
		var names []string
		for k := i; k < len(b.rows); k++ {
			if b.falls[k] == code {
				one.Flats = append(one.Flats, b.rows[k].Flat)
				names = append(names, b.rows[k].Name)
			}
		}
		if len(names) > 1 {
			one.Words = fmt.Sprintf("%s fall on %s: made so, they are one and the same enamel.", sentence(names), code)
			all = append(all, one)
		}
	}
	return all
}

func indexOf(all []string, s string) int {
	for i, a := range all {
		if a == s {
			return i
		}
	}
	return -1
}

// sentence joins names: "A, b and c".
func sentence(names []string) string {
	last := len(names) - 1
	s := strings.Join(names[:last], ", ") + " and " + names[last]
	first := []rune(s)
	return strings.ToUpper(string(first[:1])) + string(first[1:])
}

// apart gives each flat a code of its own. One that was taken stays, unless
// two flats took it.
func (b *bench) apart() ([]wire.ApartCode, string) {
	held := append([]int(nil), b.held...)
	takers := map[int]int{}
	for _, h := range b.held {
		takers[h]++
	}
	for i, h := range held {
		if takers[h] > 1 {
			held[i] = -1
		}
	}
	all := []wire.ApartCode{}
	got, ok := b.shelf.Apart(b.labs, held)
	if !ok {
		return all, "The list has too few colours to give each one its own code."
	}
	farthest := 0
	for i, m := range got {
		all = append(all, wire.ApartCode{Flat: b.rows[i].Flat, Match: m})
		if m.DE > got[farthest].DE {
			farthest = i
		}
	}
	return all, fmt.Sprintf("With a code each, as near as can be, the farthest off is %s: %s.", b.rows[farthest].Name, got[farthest].Distance)
}
