package parcel

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheTablesBesideTheCodeAreThePublishedOnes(t *testing.T) {
	for name, kept := range map[string]string{"milstd105e_table_I_code_letters.csv": lettersTable, "milstd105e_table_II_A_normal_single.csv": plansTable} {
		want, err := os.ReadFile(filepath.Join("..", "..", "testdata", "reference", name))
		require.NoError(t, err)
		assert.Equal(t, string(want), kept, name)
	}
}

// MIL-STD-105E Table I, every cell, at both ends of each row's lot sizes.
func TestLettersAreThoseOfTableI(t *testing.T) {
	for _, row := range table(t, "milstd105e_table_I_code_letters.csv") {
		last := row[1]
		if last == "" {
			last = "900000"
		}
		for i, level := range Levels {
			assert.Equal(t, row[2+i], letterOf(number(t, row[0]), level))
			assert.Equal(t, row[2+i], letterOf(number(t, last), level))
		}
	}
}

// MIL-STD-105E Table II-A, every cell. Where the cell is an arrow, the plan is
// that of the first cell of its column that the arrow points to; otherwise the
// cell itself is the plan.
func TestPlansAreThoseOfTableIIA(t *testing.T) {
	rows := table(t, "milstd105e_table_II_A_normal_single.csv")
	assert.Len(t, rows, 96)
	for i, row := range rows {
		p := planOf(row[0], figure(t, row[2]))
		assert.Equal(t, row[4], p.Resolved, row)
		assert.Equal(t, []int{number(t, row[5]), number(t, row[6]), number(t, row[7])}, []int{p.Look, p.Accept, p.Refuse}, row)
		to := rows[followed(rows, i)]
		assert.Equal(t, []string{to[0], to[1], to[3]}, []string{p.Resolved, strconv.Itoa(p.Look), fmt.Sprintf("%d/%d", p.Accept, p.Refuse)}, row)
	}
}

// followed walks from an arrow to the cell it leads to. A row of the printed
// table is as many cells as there are quality levels.
func followed(rows [][]string, i int) int {
	for rows[i][3] == "down_arrow" {
		i += len(Qualities)
	}
	for rows[i][3] == "up_arrow" {
		i -= len(Qualities)
	}
	return i
}

// Worked lots looked up in both tables, those that are looked at whole among them.
func TestWorkedLots(t *testing.T) {
	for _, row := range table(t, "milstd105e_worked_lots.csv") {
		lot := number(t, row[0])
		p, f := PlanFor(lot, row[1], figure(t, row[2]))
		require.Empty(t, f)
		got := []string{p.Letter, p.Resolved, strconv.Itoa(p.Look), strconv.Itoa(p.Count), strconv.Itoa(p.Accept), strconv.Itoa(p.Refuse)}
		assert.Equal(t, row[3:9], got, row)
		assert.Equal(t, row[9] == "True", p.All, row)
	}
}

// By scipy's binom.cdf and hypergeom.cdf.
func TestCurvesGoThroughThePoints(t *testing.T) {
	for _, row := range table(t, "oc_curve_points.csv") {
		n, accept, lot := number(t, row[1]), number(t, row[2]), number(t, row[5])
		assert.InDelta(t, figure(t, row[4]), binomial(n, figure(t, row[3])).atMost(accept), 6e-9)
		assert.InDelta(t, figure(t, row[7]), near(Urn{lot, number(t, row[6]), n}.AtMost(accept)), 6e-9)
		p := SamplingPlan{Look: n, Count: n, Accept: accept}
		for _, at := range p.Curve(lot) {
			if at.Bad == number(t, row[6]) {
				assert.InDelta(t, figure(t, row[7]), at.Accept, 6e-9)
			}
		}
	}
}

func TestACurveFallsFromCertainty(t *testing.T) {
	for _, lot := range []int{2, 60, 100, 500} {
		p, f := PlanFor(lot, "II", 2.5)
		require.Empty(t, f)
		all := p.Curve(lot)
		require.NotEmpty(t, all)
		assert.InDelta(t, 1, all[0].Accept, 0)
		for i := 1; i < len(all); i++ {
			assert.LessOrEqual(t, all[i].Accept, all[i-1].Accept)
			assert.Greater(t, all[i].Bad, all[i-1].Bad)
		}
	}
}

func TestAPlanThatThereIsNotIsRefusedInWords(t *testing.T) {
	_, f := PlanFor(1, "IV", 3)
	require.Len(t, f, 3)
	assert.Equal(t, []string{"lot", "level", "quality"}, []string{f[0].Field, f[1].Field, f[2].Field})
}

func TestAPlanInWords(t *testing.T) {
	p, _ := PlanFor(50, "II", 2.5)
	assert.Equal(t, "Look at 5 of the 50 pieces, picked blindly. Accept the parcel with at most 0 bad; refuse it from 1 on.", p.Says(50))
	p, _ = PlanFor(5, "II", 1)
	assert.Equal(t, "Look at all 5 pieces: the table asks for 13. Accept the parcel with at most 0 bad; refuse it from 1 on.", p.Says(5))
}
