package parcel

// Grade is what a piece is good for.
type Grade string

// The grades: sold as ordered, sold as flawed, not sold.
const (
	First  Grade = "first"
	Second Grade = "second"
	Reject Grade = "reject"
)

// FlawKind is a kind of fault.
type FlawKind string

// Flaw is a kind of fault in the words of the trade. A serious one can hurt
// somebody, so that such a piece is kept from sale whatever share was agreed;
// Caution then says why.
type Flaw struct {
	Kind    FlawKind `json:"kind"`
	Name    string   `json:"name"`
	Serious bool     `json:"serious"`
	Caution string   `json:"caution,omitempty"`
}

// Unsaid is a fault that nobody named.
const Unsaid FlawKind = ""

// Flaws are the kinds there are, the usual ones first (common practice, no
// published source).
var Flaws = []Flaw{
	{Kind: "missing", Name: "missing enamel"},
	{Kind: "overflow", Name: "overflowing enamel"},
	{Kind: "colour", Name: "wrong colour"},
	{Kind: "bubbles", Name: "bubbles"},
	{Kind: "dust", Name: "dust"},
	{Kind: "scratch", Name: "scratches"},
	{Kind: "stain", Name: "plating stains"},
	{Kind: "bent", Name: "bent post"},
	{Kind: "loose", Name: "loose post", Serious: true, Caution: "A loose post comes off: the pin falls, and what is left of it is small enough to swallow. Keep such pieces from sale."},
	{Kind: "link", Name: "broken link", Serious: true, Caution: "A broken link drops a part that a young child can swallow. Keep such pieces from sale."},
	{Kind: "sharp", Name: "sharp edge", Serious: true, Caution: "A sharp edge cuts. Keep such pieces from sale, and from children, whatever share was agreed."},
}

// flawOf finds a kind; what is not known is an unnamed fault.
func flawOf(kind FlawKind) Flaw {
	for _, f := range Flaws {
		if f.Kind == kind {
			return f
		}
	}
	return Flaw{Name: "fault not named"}
}

func knownFlaw(kind FlawKind) bool { return kind == Unsaid || flawOf(kind).Kind == kind }

// FlawCount is how many pieces have a fault of one kind.
type FlawCount struct {
	Kind    FlawKind `json:"kind"`
	Name    string   `json:"name"`
	Serious bool     `json:"serious"`
	Count   int      `json:"count"`
}

// countFlaws counts by kind, in the order of Flaws, unnamed ones last.
func countFlaws(flawed []FlawedPiece) []FlawCount {
	by := map[FlawKind]int{}
	for _, p := range flawed {
		by[p.Flaw]++
	}
	all := []FlawCount{}
	for _, f := range append(Flaws[:len(Flaws):len(Flaws)], flawOf(Unsaid)) {
		if n := by[f.Kind]; n > 0 {
			all = append(all, FlawCount{f.Kind, f.Name, f.Serious, n})
		}
	}
	return all
}
