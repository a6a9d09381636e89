package caution

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"badgewright/sizing"
)

// Every clause and number against the table of safety limits, which names how
// each was read.
func TestRulesAreThoseOfTheTable(t *testing.T) {
	rows := table(t, "safety_limits.csv")
	for _, r := range rules() {
		found := false
		for _, row := range rows {
			if row["clause"] != r.Clause || row["what"] != r.What {
				continue
			}
			found = true
			assert.Equal(t, row["jurisdiction"], r.Place, r.Clause)
			assert.Equal(t, []string{row["value"], row["unit"], row["value_2"], row["unit_2"]}, []string{r.Value, r.Unit, r.Value2, r.Unit2}, r.Clause)
			assert.Equal(t, strings.Contains(row["how_verified"], "from memory"), r.Memory, r.Clause)
		}
		assert.True(t, found, "%s: %s is not in the table", r.Clause, r.What)
	}
	// The cylinder that is computed with is the one of the table.
	for _, row := range rows {
		switch row["what"] {
		case "small-parts cylinder inside diameter":
			assert.Equal(t, number(t, row["value_2"]), cylinderAcross)
		case "small-parts cylinder depth, shallow side":
			assert.Equal(t, number(t, row["value_2"]), cylinderShallow)
		case "small-parts cylinder depth, deep side":
			assert.Equal(t, number(t, row["value_2"]), cylinderDeep)
		case sharpPoint.What:
			assert.Equal(t, number(t, row["value"]), float64(sharpUnder))
		case childrensProduct.What:
			assert.Equal(t, number(t, row["value"]), float64(childUpTo))
		}
	}
}

var (
	silver = sizing.Plating{ID: "silver", Name: "silver (nickel)", Nickel: true}
	gold   = sizing.Plating{ID: "gold", Name: "gold"}
)

// everyPin runs through fastenings, buyers, platings, sizes and tips.
func everyPin(do func(Pin)) {
	for _, f := range []sizing.Fastening{sizing.PostAndClutch, sizing.MagnetBack, sizing.PinBar, sizing.ScrewBack} {
		for _, b := range []sizing.Buyers{sizing.Adults, sizing.FromTeens, sizing.FromEight, sizing.FromThree, sizing.UnderThree, "nobody"} {
			for _, p := range []sizing.Plating{gold, silver} {
				for i, side := range []float64{20, 31.75, 60} {
					piece := Piece{Hull: ngon(24, side/2, 0, 0), Thickness: 1.5, Slack: 0.1}
					do(Pin{Pieces: []Piece{piece, piece}[:1+i%2], Fastening: f, Buyers: b, Plating: p, Tips: i})
				}
			}
		}
	}
}

var claims = regexp.MustCompile(`(?i)\bsafe(ly)?\b|harmless|compl(y|ies|iant)|certif|passes|approved|no danger|without danger|nothing to fear|hypoallergenic|nickel-free|lead-free`)

func TestNothingIsEverClaimedToBeSafe(t *testing.T) {
	everyPin(func(p Pin) {
		for _, c := range For(p) {
			for _, s := range append([]string{c.Says, c.Do}, c.More...) {
				require.NotRegexp(t, claims, s)
				require.True(t, strings.HasSuffix(s, "."), s)
			}
			for _, r := range c.Rules {
				require.NotRegexp(t, claims, r.Note)
			}
		}
	})
}

func TestEveryPinHasItsCautions(t *testing.T) {
	everyPin(func(p Pin) {
		kinds := map[Matter]Caution{}
		for _, c := range For(p) {
			kinds[c.Matter] = c
			assert.NotEmpty(t, c.Rules)
		}
		for _, k := range []Matter{SmallParts, Sharp, Nickel, Metals, Law} {
			assert.Contains(t, kinds, k)
		}
		_, magnet := kinds[Magnets]
		assert.Equal(t, p.Fastening == sizing.MagnetBack, magnet)
		assert.Contains(t, kinds[SmallParts].Says, "fits the small-parts cylinder", "what comes off always fits")
		assert.Contains(t, kinds[Law].Do, "law of the place of sale")
		assert.Contains(t, kinds[Law].Do, "qualified laboratory")
		assert.Equal(t, p.Plating.Nickel, kinds[Nickel].Grave)
		assert.Equal(t, p.Tips > 0, strings.Contains(kinds[Sharp].Says, "tip"))
	})
	assert.Equal(t, Fits, FitOf(Piece{Hull: ngon(99, looseClutch/2, 0, 0), Thickness: looseClutchDepth}), "a clutch, tried as any part")
}

func TestCautionsFollowTheBuyers(t *testing.T) {
	of := func(b sizing.Buyers, k Matter) Caution {
		for _, c := range For(Pin{Buyers: b, Plating: gold, Pieces: []Piece{{Hull: ngon(60, 20, 0, 0), Thickness: 1.5, Slack: 0.1}}}) {
			if c.Matter == k {
				return c
			}
		}
		t.Fatal("no such caution")
		return Caution{}
	}
	has := func(c Caution, r Rule) bool {
		for _, o := range c.Rules {
			if o == r {
				return true
			}
		}
		return false
	}
	assert.True(t, of(sizing.UnderThree, SmallParts).Grave)
	assert.Contains(t, of(sizing.UnderThree, SmallParts).Do, "Do not offer it for children under three")
	assert.False(t, of(sizing.FromThree, SmallParts).Grave)
	assert.True(t, of(sizing.FromThree, Sharp).Grave)
	assert.False(t, of(sizing.FromEight, Sharp).Grave)
	assert.True(t, has(of(sizing.FromEight, Metals), leadChildren))
	assert.False(t, has(of(sizing.FromTeens, Metals), leadChildren), "13 and up is no children's product")
	assert.True(t, has(of(sizing.FromTeens, Metals), leadCaliforniaChildren), "but under 15 in California")
	assert.True(t, has(of(sizing.Adults, Metals), leadCalifornia))
	assert.False(t, has(of(sizing.Adults, Metals), leadCaliforniaChildren))
}

func TestThePinItselfIsTriedInTheCylinder(t *testing.T) {
	says := func(across ...float64) string {
		p := Pin{Plating: gold}
		for _, d := range across {
			p.Pieces = append(p.Pieces, Piece{Hull: ngon(400, d/2, 0, 0), Thickness: 1.5, Slack: 0.1})
		}
		return For(p)[0].Says
	}
	assert.Contains(t, says(25), "The pin itself fits it as well.")
	assert.Contains(t, says(31.8), "only a gauge can tell")
	assert.Contains(t, says(38), "The pin itself does not fit it as drawn.")
	assert.Contains(t, says(38, 20), "1 of its 2 parts fit")
	assert.Contains(t, says(38, 40), "do not fit it as drawn")
}
