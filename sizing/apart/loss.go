package apart

import (
	"cmp"
	"slices"

	"badgewright/reduce"
	"badgewright/reduce/colour"
	"badgewright/sizing/eye"
	"badgewright/sizing/unit"
)

// Loss is what one count of enamels loses to an eye, S-CIELAB.
type Loss struct {
	// Mean and Worst are between the drawing and the flats, over all enamel and
	// over its worst-matched tenth.
	Mean, Worst float64
	// Step is the greatest difference from the count before; 0 for the first.
	// Unseen is true when it is less than is noticed.
	Step   float64
	Unseen bool
}

// Losses compares a drawing with its flats at every count up to most, at a scale
// in working px per mm, as an eye sees them on cloth.
func Losses(a *reduce.Analysis, edits []reduce.Edit, most int, scale unit.PxPerMM, v eye.Viewing, cloth colour.RGB8, noticed float64, p reduce.Progress) ([]Loss, error) {
	pitch := scale.MM(1)
	m := a.Mosaic(edits, eye.BlockFor(pitch, v), cloth)
	seen := func(r, g, b []float32) *eye.Filtered {
		return eye.Filter(&eye.Light{W: m.W, H: m.H, R: r, G: g, B: b, Ground: cloth, Block: m.Block}, pitch, v)
	}
	drawn := seen(m.R, m.G, m.B)
	var before *eye.Filtered
	all := make([]Loss, 0, most)
	for count := 1; count <= most; count++ {
		if p != nil {
			if err := p(float64(count-1)/float64(most), "looking at every count of colours"); err != nil {
				return nil, err
			}
		}
		flat := seen(m.Flat(count))
		var l Loss
		l.Mean, l.Worst = lossOf(drawn.Apart(flat), m.Enamel)
		if before != nil {
			l.Step = float64(slices.Max(before.Apart(flat)))
			l.Unseen = l.Step < noticed
		}
		all, before = append(all, l), flat
	}
	return all, nil
}

// lossOf is the mean of differences by weight, and that of the worst tenth.
func lossOf(d, weight []float32) (mean, worst float64) {
	order := make([]int32, 0, len(d))
	sum, total := 0.0, 0.0
	for i, w := range weight {
		if w > 0 {
			order = append(order, int32(i))
			sum += float64(float64(w) * float64(d[i]))
			total += float64(w)
		}
	}
	if total == 0 {
		return 0, 0
	}
	slices.SortFunc(order, func(a, b int32) int { return cmp.Or(cmp.Compare(d[b], d[a]), cmp.Compare(a, b)) })
	left := total / 10
	for _, i := range order {
		take := min(float64(weight[i]), left)
		worst += float64(take * float64(d[i]))
		if left -= take; left <= 0 {
			break
		}
	}
	return sum / total, worst / (total / 10)
}
