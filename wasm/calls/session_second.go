//go:build !pin

package calls

import "badgewright/sizing/sheet"

// keepHanded is how many versions the second program keeps as struck: those of a
// design or two.
const keepHanded = 4

// second is what the second program keeps between calls.
type second struct {
	handed *shelf[*handed]
	// Fonts of the papers by their places, and the set of them, once asked for.
	fontFiles map[int]sheet.FontFile
	fonts     *sheet.Fonts
	proofs    proofs
}

func newSecond() second {
	return second{handed: newShelf[*handed](keepHanded), fontFiles: map[int]sheet.FontFile{}, proofs: newProofs()}
}
