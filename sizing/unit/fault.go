package unit

import "fmt"

// Fault is a sentence about one field that cannot be used as it stands: what
// is wrong, and what would do.
type Fault struct {
	Field string `json:"field"` // its place in the request, such as "channels[1].share"
	What  string `json:"what"`
}

// Faults gathers what is wrong with the fields of a form, in their order.
type Faults []Fault

// Say adds a sentence about a field.
func (f *Faults) Say(field, format string, args ...any) {
	*f = append(*f, Fault{Field: field, What: fmt.Sprintf(format, args...)})
}

// Whole refuses a number that does not lie from least to most.
func (f *Faults) Whole(field, name string, n, least, most int) {
	switch {
	case n < least && least == 0:
		f.Say(field, "%s is %d; it cannot be below 0.", name, n)
	case n < least:
		f.Say(field, "%s is %d; give at least %d.", name, n, least)
	case n > most:
		f.Say(field, "%s is %d, which is more than this reckons with; give at most %d.", name, n, most)
	}
}
