//go:build pin

package calls

// second is for the second program alone.
type second struct{}

func newSecond() second { return second{} }
