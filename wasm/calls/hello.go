package calls

import (
	"path"
	"strings"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/wasm/wire"
)

// hello says everything that never changes.
func hello(_ *Session, _ Job, _ wire.HelloAsk) (Reply, error) {
	return Reply{Answer: wire.Hello{
		MaxCount:        reduce.MaxCount,
		WorkingLongSide: reduce.WorkingLongSide,
		HeaderBytes:     reduce.HeaderBytes,
		Platings:        sizing.Platings(),
		Starting:        startingColours(),
		Blank:           BlankProject(),
		Limits:          usualLimits(),
		LeastSize:       sizing.LeastSize,
		GreatestSize:    sizing.GreatestSize,
		Finishes:        finishesByRole(),
		Back:            wire.BackUsual{Hold: sizing.UsualHold(), Depths: sizing.UsualDepths(), Packing: sizing.UsualPacking()},
		Eye:             eyeUsual(),
	}}, nil
}

func finishesByRole() []wire.FinishesFor {
	var all []wire.FinishesFor
	for _, r := range []reduce.Role{reduce.Enamel, reduce.Metal} {
		all = append(all, wire.FinishesFor{Role: r, Finishes: sizing.Finishes(r)})
	}
	return all
}

// startingColours is as many colours as there can be enamels, named.
func startingColours() []wire.NamedColour {
	var flats []reduce.Flat
	for _, c := range colour.StartingSet(reduce.MaxCount) {
		flats = append(flats, reduce.Flat{Name: colour.Name(c), RGB: c})
	}
	reduce.NamePlainly(flats)
	var all []wire.NamedColour
	for _, f := range flats {
		all = append(all, wire.NamedColour{Name: f.Name, RGB: f.RGB})
	}
	return all
}

// BlankProject is an order with the default price list and one empty design.
func BlankProject() wire.Project {
	list := run.Default()
	return wire.Project{Format: wire.Format, Order: wire.Order{
		Name:       "New order",
		Designs:    []sizing.Design{blankDesign()},
		PriceLists: []run.PriceList{list},
		PriceList:  list.ID,
	}}
}

// blankDesign is a design before any drawing: the usual soft enamel lapel pin
// in a first run of a hundred (common practice, no published source).
func blankDesign() sizing.Design {
	return sizing.Design{
		ID: "design-1", Name: "Untitled",
		Drawings: []sizing.DrawingRef{}, Colours: 4,
		Edits: []reduce.Edit{}, Recipes: []sizing.Recipe{},
		Size:   sizing.Size{MM: usualLeast, By: sizing.ByLongest},
		Making: sizing.Struck, Fill: sizing.Soft,
		Limits: sizing.DefaultLimits(sizing.Struck, sizing.Soft),
		Base:   sizing.Iron, Thickness: 1.5,
		Versions: []sizing.Version{{ID: "version-1", Name: "First", Plating: "gold", Colours: []sizing.VersionColour{}, Quantity: 100}},
	}
}

func usualLimits() []wire.LimitsFor {
	var all []wire.LimitsFor
	for _, m := range []sizing.Making{sizing.Struck, sizing.Cast} {
		for _, f := range []sizing.Fill{sizing.Soft, sizing.Hard, sizing.Unfilled} {
			all = append(all, wire.LimitsFor{Making: m, Fill: f, Limits: sizing.DefaultLimits(m, f)})
		}
	}
	return all
}

// nameFrom makes a design's first name from its file's: no folder, no ending,
// spaces for joints.
func nameFrom(fileName string) string {
	base := path.Base(strings.ReplaceAll(fileName, `\`, "/"))
	base = strings.TrimSuffix(base, path.Ext(base))
	words := strings.Fields(strings.NewReplacer("_", " ", "-", " ").Replace(base))
	if len(words) == 0 {
		return "Untitled"
	}
	name := strings.Join(words, " ")
	first := []rune(name)
	return strings.ToUpper(string(first[:1])) + string(first[1:])
}

// nameOfBoth names a design after what two file names begin with alike
// ("tower-lines.png", "tower-colours.png"), or else after the first.
func nameOfBoth(a, b string) string {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	if alike := strings.TrimRight(strings.ToValidUTF8(a[:n], ""), " -_."); path.Base(alike) != "." && alike != "" {
		return nameFrom(alike)
	}
	return nameFrom(a)
}
