package parcel

import (
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"badgewright/sizing/unit"
)

// Tables I and II-A of MIL-STD-105E (10 May 1989), the same as in ISO 2859-1:
// code letters, and single plans for normal inspection.
//
//go:embed milstd105e_table_I_code_letters.csv
var lettersTable string

//go:embed milstd105e_table_II_A_normal_single.csv
var plansTable string

// Levels are the inspection levels of Table I, the special ones first.
var Levels = []string{"S-1", "S-2", "S-3", "S-4", "I", "II", "III"}

// Qualities are the acceptance quality levels carried here, percent bad.
var Qualities = []float64{0.65, 1, 1.5, 2.5, 4, 6.5}

// SamplingPlan is what the tables say of one lot.
type SamplingPlan struct {
	Letter string `json:"letter"` // by lot and level
	// Resolved is the letter that holds once arrows were followed: they change the
	// number to look at, not only the one to accept.
	Resolved string `json:"resolved"`
	Look     int    `json:"look"`  // in the table
	Count    int    `json:"count"` // to look at: all, where the table asks for as many or more
	Accept   int    `json:"accept"`
	Refuse   int    `json:"refuse"`
	All      bool   `json:"all"`
}

// OCPoint is the chance that a lot with some bad pieces is accepted.
type OCPoint struct {
	Bad    int     `json:"bad"`
	Share  float64 `json:"share"`  // of the lot, percent
	Accept float64 `json:"accept"` // 0 to 1
}

// mostLot is past any order of pins (this tool's bound).
const mostLot = 20_000

// PlanFor looks a plan up; faults come back instead where the tables have none.
func PlanFor(lot int, level string, quality float64) (SamplingPlan, unit.Faults) {
	var f unit.Faults
	f.Whole("lot", "The number of pieces in the parcel", lot, 2, mostLot)
	if !slices.Contains(Levels, level) {
		f.Say("level", "%q is no inspection level; there are %s.", level, strings.Join(Levels, ", "))
	}
	if !slices.Contains(Qualities, quality) {
		f.Say("quality", "The tables here have no quality level of %g percent; take 0.65, 1, 1.5, 2.5, 4 or 6.5.", quality)
	}
	if len(f) > 0 {
		return SamplingPlan{}, f
	}
	p := planOf(letterOf(lot, level), quality)
	p.Count, p.All = min(p.Look, lot), p.Look >= lot
	return p, f
}

// planOf reads Table II-A, arrows followed.
func planOf(letter string, quality float64) SamplingPlan {
	p := SamplingPlan{Letter: letter}
	for _, row := range rowsOf(plansTable) {
		if q, _ := strconv.ParseFloat(row[2], 64); row[0] == letter && q == quality {
			p.Resolved = row[4]
			p.Look, p.Accept, p.Refuse = whole(row[5]), whole(row[6]), whole(row[7])
		}
	}
	return p
}

// letterOf reads Table I.
func letterOf(lot int, level string) string {
	for _, row := range rowsOf(lettersTable) {
		if lot >= whole(row[0]) && (row[1] == "" || lot <= whole(row[1])) {
			return row[2+slices.Index(Levels, level)]
		}
	}
	return ""
}

// rowsOf parts a table of plain cells, without its header.
func rowsOf(table string) [][]string {
	lines := strings.Split(strings.TrimSpace(table), "\n")[1:]
	rows := make([][]string, len(lines))
	for i, l := range lines {
		rows[i] = strings.Split(strings.TrimSpace(l), ",")
	}
	return rows
}

func whole(cell string) int {
	n, _ := strconv.Atoi(cell)
	return n
}

// chartBad is how many numbers of bad pieces a curve shows at most.
const chartBad = 40

// Curve is the operating characteristic of a plan for this very lot: exact
// chances for whole numbers of bad pieces, from none to where hardly any lot is
// accepted any more.
func (p SamplingPlan) Curve(lot int) []OCPoint {
	all := []OCPoint{}
	step := max(1, (lot+2*chartBad-1)/(2*chartBad))
	for bad := 0; bad <= lot && len(all) <= chartBad; bad += step {
		at := OCPoint{Bad: bad, Share: 100 * float64(bad) / float64(lot), Accept: near(Urn{lot, bad, p.Count}.AtMost(p.Accept))}
		all = append(all, at)
		if at.Accept < hardly {
			break
		}
	}
	return all
}

// hardly is a chance past which a curve is not drawn any further.
const hardly = 0.01

// Says puts a plan into words.
func (p SamplingPlan) Says(lot int) string {
	look := fmt.Sprintf("Look at %d of the %s, picked blindly", p.Count, pieces(lot))
	if p.All {
		look = fmt.Sprintf("Look at all %s: the table asks for %d", pieces(lot), p.Look)
	}
	return fmt.Sprintf("%s. Accept the parcel with at most %d bad; refuse it from %d on.", look, p.Accept, p.Refuse)
}

func pieces(n int) string {
	if n == 1 {
		return "1 piece"
	}
	return fmt.Sprintf("%d pieces", n)
}
