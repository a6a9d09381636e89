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

// The kinds of faults, the usual ones first; Unsaid is one that nobody named.
const (
	Unsaid        FlawKind = ""
	MissingEnamel FlawKind = "missing"
	Overflow      FlawKind = "overflow"
	WrongColour   FlawKind = "colour"
	Bubbles       FlawKind = "bubbles"
	Dust          FlawKind = "dust"
	Scratches     FlawKind = "scratch"
	Stains        FlawKind = "stain"
	BentPost      FlawKind = "bent"
	LoosePost     FlawKind = "loose"
	BrokenLink    FlawKind = "link"
	SharpEdge     FlawKind = "sharp"
)

// Flaws are the kinds in words (common practice, no published source).
var Flaws = []Flaw{
	{Kind: MissingEnamel, Name: "missing enamel"},
	{Kind: Overflow, Name: "overflowing enamel"},
	{Kind: WrongColour, Name: "wrong colour"},
	{Kind: Bubbles, Name: "bubbles"},
	{Kind: Dust, Name: "dust"},
	{Kind: Scratches, Name: "scratches"},
	{Kind: Stains, Name: "plating stains"},
	{Kind: BentPost, Name: "bent post"},
	{Kind: LoosePost, Name: "loose post", Serious: true, Caution: "A loose post comes off: the pin falls, and what is left of it is small enough to swallow. Keep such pieces from sale."},
	{Kind: BrokenLink, Name: "broken link", Serious: true, Caution: "A broken link drops a part that a young child can swallow. Keep such pieces from sale."},
	{Kind: SharpEdge, Name: "sharp edge", Serious: true, Caution: "A sharp edge cuts. Keep such pieces from sale, and from children, whatever share was agreed."},
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
