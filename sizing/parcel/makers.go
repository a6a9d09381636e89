package parcel

import "fmt"

// MakerRecord is how a maker did over all parcels of theirs.
type MakerRecord struct {
	Maker   string `json:"maker"`
	Parcels int    `json:"parcels"`
	Ordered int    `json:"ordered"`
	Graded  int    `json:"graded"`
	Firsts  int    `json:"firsts"`
	// Share is the firsts among those looked at, percent, and Lo and Hi its exact
	// interval (Clopper and Pearson, 95 percent).
	Share float64 `json:"share"`
	Lo    float64 `json:"lo"`
	Hi    float64 `json:"hi"`
	// Short is the pieces missing over all parcels, those too many not set against
	// them; Late the days after the day agreed, one for each parcel whose
	// days are known, below 0 before it.
	Short int    `json:"short"`
	Late  []int  `json:"late"`
	Says  string `json:"says"`
}

// recordSure is how sure the interval of a share is.
const recordSure Sure = 95

// Makers says how each maker did, in the order in which they are met. Parcels
// of which nothing is counted say nothing.
func Makers(parcels []Parcel) []MakerRecord {
	all := []MakerRecord{}
	at := map[string]int{}
	for i := range parcels {
		p := &parcels[i]
		if !p.counted() {
			continue
		}
		j, ok := at[p.Maker]
		if !ok {
			j = len(all)
			at[p.Maker] = j
			all = append(all, MakerRecord{Maker: p.Maker, Late: []int{}})
		}
		all[j].add(p)
	}
	for i := range all {
		all[i].finish()
	}
	return all
}

func (p *Parcel) counted() bool {
	for i := range p.Rows {
		if p.Rows[i].Received > 0 || p.Rows[i].graded() > 0 {
			return true
		}
	}
	return false
}

func (m *MakerRecord) add(p *Parcel) {
	m.Parcels++
	for i := range p.Rows {
		r := &p.Rows[i]
		m.Ordered += r.Ordered
		m.Graded += r.graded()
		m.Firsts += r.Firsts
		came, _ := p.received(r)
		m.Short += max(0, r.Ordered-came)
	}
	if late, ok := p.late(); ok {
		m.Late = append(m.Late, late)
	}
}

func (m *MakerRecord) finish() {
	says := plural(m.Parcels, "parcel")
	if m.Graded > 0 {
		lo, hi := ShareBetween(m.Firsts, m.Graded, recordSure)
		m.Share, m.Lo, m.Hi = 100*float64(m.Firsts)/float64(m.Graded), 100*lo, 100*hi
		says += fmt.Sprintf("; %.0f percent firsts of %d looked at (%.0f to %.0f)", m.Share, m.Graded, m.Lo, m.Hi)
	}
	if n := len(m.Late); n > 0 {
		says += "; " + lateWords(m.Late)
	}
	if m.Short > 0 {
		says += fmt.Sprintf("; %d short in all", m.Short)
	}
	m.Says = says + "."
}

// lateWords sums days late up: the worst, and how often.
func lateWords(all []int) string {
	worst, n := 0, 0
	for _, d := range all {
		if d > 0 {
			n++
		}
		worst = max(worst, d)
	}
	switch {
	case n == 0:
		return "always on time"
	case len(all) == 1:
		return plural(worst, "day") + " late"
	}
	return fmt.Sprintf("late %d of %d times, by %s at most", n, len(all), plural(worst, "day"))
}
