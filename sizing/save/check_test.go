package save

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/reduce"
	"badgewright/reduce/colourlist"
	"badgewright/sizing"
	"badgewright/sizing/run"
	"badgewright/sizing/unit"
)

// whole is a design that has a little of everything.
func whole() sizing.Design {
	return sizing.Design{
		ID: "design-1", Name: "Lighthouse", Colours: 4, Base: sizing.Iron, Thickness: 1.5,
		Drawings: []sizing.DrawingRef{{ID: "drawing-1", FileName: "lighthouse.svg", Ground: reduce.GroundAuto, Revision: 1}},
		Edits:    []reduce.Edit{{Op: reduce.SetRole, Flat: 1, Role: reduce.Metal, Count: 3}},
		Recipes:  []sizing.Recipe{{Kind: sizing.DrawLine, Points: [][2]float64{{0.1, 0.2}, {0.3, 0.4}}}},
		Size:     sizing.Size{MM: 30, By: sizing.ByLongest}, Making: sizing.Struck, Fill: sizing.Soft,
		Limits:   sizing.DefaultLimits(sizing.Struck, sizing.Soft),
		Parts:    sizing.Parts{Choice: sizing.PartsDangle, Joins: []sizing.Join{{}}},
		Versions: []sizing.Version{{ID: "version-1", Plating: "gold", Quantity: 100, Colours: []sizing.VersionColour{{Flat: 1, Finish: sizing.Glitter}}}},
	}
}

func content(d sizing.Design) Content {
	list := run.Default()
	return Content{Designs: []sizing.Design{d}, PriceLists: []run.PriceList{list}, PriceListID: list.ID}
}

var nanMM = unit.MM(math.NaN())

var brought = []Drawing{{ID: "drawing-1"}}

func TestAWholeProjectPasses(t *testing.T) {
	assert.NoError(t, Check(content(whole()), brought))
}

func TestAbsurdProjects(t *testing.T) {
	design := func(change func(*sizing.Design)) Content {
		d := whole()
		change(&d)
		return content(d)
	}
	for what, c := range map[string]Content{
		"A size of 1e+09 mm":              design(func(d *sizing.Design) { d.Size.MM = 1e9 }),
		"A size of NaN mm":                design(func(d *sizing.Design) { d.Size.MM = nanMM }),
		`"weight" as its measure`:         design(func(d *sizing.Design) { d.Size.By = "weight" }),
		`"dreamt" as its making`:          design(func(d *sizing.Design) { d.Making = "dreamt" }),
		`"jam" as its fill`:               design(func(d *sizing.Design) { d.Fill = "jam" }),
		`"lead" as its base metal`:        design(func(d *sizing.Design) { d.Base = "lead" }),
		"5001 changes of colours":         design(func(d *sizing.Design) { d.Edits = make([]reduce.Edit, 5001) }),
		`"burn" as its kind of change`:    design(func(d *sizing.Design) { d.Edits[0].Op = "burn" }),
		`"hat" as its role`:               design(func(d *sizing.Design) { d.Edits[0].Role = "hat" }),
		"-1 as its number of colours":     design(func(d *sizing.Design) { d.Edits[0].Count = -1 }),
		`"melt" as its kind of repair`:    design(func(d *sizing.Design) { d.Recipes[0].Kind = "melt" }),
		"NaN as its line's width":         design(func(d *sizing.Design) { d.Recipes[0].Width = nanMM }),
		"+Inf as its place":               design(func(d *sizing.Design) { d.Recipes[0].Points[1][0] = math.Inf(1) }),
		"20001 places of lines":           design(func(d *sizing.Design) { d.Recipes[0].Points = make([][2]float64, 20001) }),
		"13 as its colours":               design(func(d *sizing.Design) { d.Colours = 13 }),
		"-3 as its limit":                 design(func(d *sizing.Design) { d.Limits.Line = -3 }),
		`"sky" as its background`:         design(func(d *sizing.Design) { d.Drawings[0].Ground = "sky" }),
		`"drawing-9", which did not come`: design(func(d *sizing.Design) { d.Drawings[0].ID = "drawing-9" }),
		`"glue" as its fastening`:         design(func(d *sizing.Design) { d.Back.Fastening = "glue" }),
		`"moss" as its plating`:           design(func(d *sizing.Design) { d.Versions[0].Plating = "moss" }),
		`"furry" as its finish`:           design(func(d *sizing.Design) { d.Versions[0].Colours[0].Finish = "furry" }),
		"1e+09 as its quantity":           design(func(d *sizing.Design) { d.Versions[0].Quantity = 1e9 }),
		"0 versions":                      design(func(d *sizing.Design) { d.Versions = nil }),
		"The mark on the back has 4000":   design(func(d *sizing.Design) { d.Back.Stamp = &sizing.Stamp{Mark: &sizing.Mark{W: 4000, H: 1}} }),
		"0 designs":                       {},
		"The project has 0 price lists":   {Designs: []sizing.Design{whole()}},
		"a price list that it does not":   {Designs: []sizing.Design{whole()}, PriceLists: []run.PriceList{run.Default()}, PriceListID: "x"},
		"5001 colours; the most is 5000":  listOf(colourlist.MaxEntries + 1),
		"speaks of the drawing \"b\", whic": design(func(d *sizing.Design) {
			d.Drawings = append([]sizing.DrawingRef{{ID: "b", Ground: reduce.GroundAuto}}, d.Drawings...)
		}),
	} {
		assert.Contains(t, refusal(t, Check(c, brought)), what)
	}
}

func listOf(n int) Content {
	c := content(whole())
	c.ColourList = &colourlist.ColourList{Entries: make([]colourlist.ColourEntry, n)}
	return c
}

// Every constant of a kind that a project can hold is one of the words that are let
// through: a word added to the model and not here would make files that are refused.
func TestEveryWordOfTheModelIsKnown(t *testing.T) {
	known := map[string][]string{
		"Making": makings, "Fill": fills, "SizeBy": sizeBys, "BaseMetal": metals, "GroundChoice": grounds, "Role": roles, "Op": ops,
		"RecipeKind": recipeKinds, "PartsChoice": partsChoices, "Fastening": fastenings, "Buyers": buyers, "Finish": finishes,
	}
	seen := map[string]int{}
	for _, dir := range []string{"../../reduce", "..", "../run", "../outline", "../mend"} {
		files, err := filepath.Glob(dir + "/*.go")
		require.NoError(t, err)
		for _, name := range files {
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			require.NoError(t, err)
			ast.Inspect(f, func(n ast.Node) bool {
				spec, ok := n.(*ast.ValueSpec)
				if !ok || spec.Type == nil || len(spec.Values) != 1 {
					return true
				}
				kind := strings.TrimPrefix(typeName(spec.Type), "sizing.")
				value, ok := spec.Values[0].(*ast.BasicLit)
				if words := known[kind]; words != nil && ok {
					text, err := strconv.Unquote(value.Value)
					require.NoError(t, err)
					assert.True(t, slices.Contains(words, text), "%s: %q is a %s that the project file does not know: add it to sizing/save/words.go", name, text, kind)
					seen[kind]++
				}
				return true
			})
		}
	}
	for kind, words := range known {
		assert.Equal(t, len(words), seen[kind], "as many words of %s as the model has", kind)
	}
}

func typeName(e ast.Expr) string {
	switch t := e.(type) {
	case *ast.Ident:
		return t.Name
	case *ast.SelectorExpr:
		return typeName(t.X) + "." + t.Sel.Name
	}
	return ""
}
