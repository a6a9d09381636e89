package proof

import (
	"testing"

	"badgewright/reduce"
)

// separated is not to be had in the browser's world, where pictures are decoded
// by the page.
func separated(t testing.TB, _ string) *reduce.Separation {
	t.Skip("files are decoded natively alone")
	return nil
}
