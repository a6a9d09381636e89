package reduce

import "badgewright/reduce/colour"

// Role is what becomes of a flat when the pin is made.
type Role string

// The roles of a flat.
const (
	Enamel  Role = "enamel"  // a recessed area filled with one colour
	Metal   Role = "metal"   // raised metal: lines and solid parts
	CutOut  Role = "cutout"  // a hole through the pin
	Printed Role = "printed" // fine detail printed on top; needs no lines
)

// FlatID names a flat across counts and edits. A flat is a set of leaves (the
// finest colours that were found); its ID is that of its leading leaf. Leaves
// are numbered from 0 by falling area; a flat split off by touch takes the
// next free number, in the order of the edits.
type FlatID int

// BuiltMetal is the ID of the metal flat that built lines and edges belong to
// when the drawing itself has no metal.
const BuiltMetal FlatID = -1

// Flat is one flat colour of a separation.
type Flat struct {
	ID     FlatID      `json:"id"`
	Name   string      `json:"name"`
	RGB    colour.RGB8 `json:"rgb"`
	Role   Role        `json:"role"`
	Locked bool        `json:"locked"`
	// Share of the drawing without its background, 0..1.
	Share float64 `json:"share"`
}

// NamePlainly gives flats that nobody named the shortest plain name that no
// other of them has.
func NamePlainly(flats []Flat) {
	plain := make([]bool, len(flats))
	for i := range flats {
		f := &flats[i]
		if full := colour.Name(f.RGB); colour.IsPlain(f.Name, full) {
			f.Name, plain[i] = full, true
		}
	}
	shorten(flats, plain)
}

func shorten(flats []Flat, plain []bool) {
	names := make([]string, len(flats))
	for i, f := range flats {
		names[i] = f.Name
	}
	for i, n := range colour.PlainNames(names, plain) {
		flats[i].Name = n
	}
}

// None is the label of the background and of pixels cut out with it.
const None uint8 = 255

// MaxFlats is the greatest number of flats a separation can hold.
const MaxFlats = 250
