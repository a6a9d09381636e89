//go:build !pin

package calls

// The calls of the order need no drawing: what they know of the pin comes with
// the request. The page fetches their program when the first screen is there.
func init() {
	enter(map[string]handler{})
}
