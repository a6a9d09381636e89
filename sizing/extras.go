package sizing

// Extras is what a design is ordered with beside its metal and fill; its zero
// value is a first order with none of it.
type Extras struct {
	// Reorder says that the die was cut before, DieAge months ago.
	Reorder bool `json:"reorder,omitempty"`
	DieAge  int  `json:"dieAge,omitempty"`
	// FurtherDies is how many parts are struck from dies of their own.
	FurtherDies int    `json:"furtherDies,omitempty"`
	Dome        bool   `json:"dome,omitempty"`      // a clear drop over soft enamel
	Packaging   string `json:"packaging,omitempty"` // a kind of the price list; empty for none
	Card        bool   `json:"card,omitempty"`      // a backing card printed by the maker
}
