//go:build !pin

package calls

// keepHanded is how many versions the second program keeps as struck: those of a
// design or two.
const keepHanded = 4

// second is what the second program keeps between calls.
type second struct {
	handed *shelf[*handed]
}

func newSecond() second {
	return second{handed: newShelf[*handed](keepHanded)}
}
