package colourlist

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// published reads a reference table; rows are maps from column name to cell.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	require.NoError(t, err)
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var rows []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, c := range cells {
			row[all[0][i]] = c
		}
		rows = append(rows, row)
	}
	require.NotEmpty(t, rows)
	return rows
}

// Source: the 24-patch chart, CIELAB D50 after November 2014, and the sRGB
// values that two other libraries give for it: testdata/reference/colorchecker24.csv.
func TestAChartInD50GivesItsPublishedScreenColours(t *testing.T) {
	rows := published(t, "colorchecker24.csv")
	var b strings.Builder
	b.WriteString("patch;name;L* D50;a*;b*\n")
	for _, r := range rows {
		comma := strings.NewReplacer(".", ",")
		b.WriteString(strings.Join([]string{r["patch"], r["name"], comma.Replace(r["L_D50_after_Nov2014"]), comma.Replace(r["a_D50_after_Nov2014"]), comma.Replace(r["b_D50_after_Nov2014"])}, ";") + "\n")
	}
	r := read(t, strings.Replace(b.String(), "patch", "no", 1))
	require.Len(t, r.List.Entries, len(rows))
	for i, e := range r.List.Entries {
		for k, v := range map[string]uint8{"R": e.RGB.R, "G": e.RGB.G, "B": e.RGB.B} {
			assert.Equal(t, rows[i]["srgb8_"+k+"_from_after"], itoa0(v), e.Name)
		}
		assert.Equal(t, rows[i]["out_of_srgb_gamut"] == "true", e.Outside, e.Name)
	}
}

func itoa0(v uint8) string {
	if v == 0 {
		return "0"
	}
	return itoa(int(v))
}

func TestTheWhiteMustBeSaid(t *testing.T) {
	data := file(t, "no-white.csv")
	r, err := Read("n.csv", data, Unstated)
	require.NoError(t, err)
	assert.True(t, r.NeedsWhite)
	assert.Empty(t, r.List.Entries)

	d50, err := Read("n.csv", data, D50)
	require.NoError(t, err)
	d65, err := Read("n.csv", data, D65)
	require.NoError(t, err)
	assert.Len(t, d50.List.Entries, 3)
	assert.Equal(t, &[3]float64{45.1, 57.2, 38.9}, d65.List.Entries[1].Lab)
	assert.NotEqual(t, d65.List.Entries[1].Lab, d50.List.Entries[1].Lab)
}

func TestTheWhiteIsFoundWhereverItIsSaid(t *testing.T) {
	for how, text := range map[string]string{
		"in the first":     "code,L D65,a,b\nSL-1,45.1,57.2,38.9\n",
		"in each":          "code,L*(D65),a*(D65),b*(D65)\nSL-1,45.1,57.2,38.9\n",
		"before":           "code,CIELAB D65 L,CIELAB D65 a,CIELAB D65 b\nSL-1,45.1,57.2,38.9\n",
		"one cell":         "code;Lab D65\nSL-1;45,1 57,2 38,9\n",
		"one cell, commas": "code;lab (d65)\nSL-1;\"45.1, 57.2, 38.9\"\n",
		"its own column":   "code,L,a,b,illuminant\nSL-1,45.1,57.2,38.9,D65\n",
		"white point":      "code,L,a,b,White point\nSL-1,45.1,57.2,38.9,d65/2°\n",
		"with hex beside":  "code,hex,L D65,a,b\nSL-1,#c4332b,45.1,57.2,38.9\n",
	} {
		r := read(t, text)
		require.Len(t, r.List.Entries, 1, how)
		assert.Equal(t, &[3]float64{45.1, 57.2, 38.9}, r.List.Entries[0].Lab, how)
		assert.Empty(t, r.Problems, how)
	}
}

func TestAWhiteThatIsNotKnownIsRefusedByLine(t *testing.T) {
	r := read(t, "code,L,a,b,white\n1,50,0,0,A\n2,50,0,0,\n3,50,0,0,D50\n")
	assert.Equal(t, []string{
		"2 white: “A” is a white that this tool does not know.", "3 white: The white of this CIELAB is not said.",
	}, told(r))
	assert.Len(t, r.List.Entries, 1)
}

func TestCIELABWithoutAWhiteGivesWayToHex(t *testing.T) {
	r := read(t, "code,hex,L,a,b\n1,#c4332b,45.1,57.2,38.9\n")
	assert.Nil(t, r.List.Entries[0].Lab)
	assert.Contains(t, strings.Join(r.Notes, " "), "left aside")
	r = read(t, "code,L D65/10°,a,b\n1,45.1,57.2,38.9\n")
	assert.Contains(t, strings.Join(r.Notes, " "), "10-degree")
}

func TestTwoColoursInOneLineAreTold(t *testing.T) {
	r := read(t, "code,hex,L D65,a,b\n1,#1f4e8c,45.1,57.2,38.9\n2,#c4332b,,,\n")
	assert.Equal(t, []string{"2 hex: This is another colour than the CIELAB of the same line. Kept."}, told(r))
	assert.Equal(t, &[3]float64{45.1, 57.2, 38.9}, r.List.Entries[0].Lab)
	assert.Nil(t, r.List.Entries[1].Lab, "a line without CIELAB takes its hex")
}
