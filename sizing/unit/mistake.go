package unit

// Mistake is what was typed wrongly, in plain words: what is wrong, and what
// to do about it.
type Mistake struct {
	What string
	Do   string
}

// Error puts both sentences together.
func (m *Mistake) Error() string { return m.What + " " + m.Do }
