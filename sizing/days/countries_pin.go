//go:build pin

package days

// The pin's program answers nothing about days: it has their types on its wire,
// and is spared the holidays.
type known struct{}

func find(string) *known { return nil }

func (*known) in(int) []feast { return nil }
