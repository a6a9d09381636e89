package save

import "badgewright/reduce"

// What a project file may hold. Past these it is not one that a person made here.
const (
	// MostBytes is the largest file, and the most that its entries unpack to
	// together: three times the largest drawing, which a tablet still holds twice.
	MostBytes = 3 * reduce.MostBytes
	// mostEntries is the number of entries: a project has a few drawings, each with
	// a few versions, and pictures of the pieces that came with a flaw.
	mostEntries = 400
	// mostDirectory is the size of the archive's directory: mostEntries of them with
	// long names.
	mostDirectory = mostEntries * 256
	// mostProject is the size of project.json: a few pictures on backing cards, which stand
	// in it as text; edits and a colour list of 5000 entries need far less.
	mostProject = 48 << 20
	// mostDrawing is the size of one picture as it was brought.
	mostDrawing = reduce.MostBytes
	// mostThumb is the size of the thumbnail, and mostThumbSide its long side, px.
	mostThumb     = 1 << 20
	mostThumbSide = 512
	// mostStray is the size of an entry that is none of the file's own, such as those
	// that a file manager adds when it packs a folder again.
	mostStray = 64 << 10
	// mostRatio is how many times its packed size an entry may unpack to, once it is
	// large: drawings reach about 30, bombs 1000.
	mostRatio      = 200
	ratioMattersAt = 1 << 20

	// mostDeep is how deep values nest, and mostValues how many there are.
	mostDeep   = 40
	mostValues = 1_000_000
	// mostText is the length of one text, bytes: a picture on a backing card is the longest.
	mostText = 16 << 20
	// mostName is the length of a file's name, bytes.
	mostName = 255
	// mostNumber is the largest number: pieces, money and mm stay far below it.
	mostNumber = 1e12
	// mostDigits is the length of a number written as text. A decimal of a million
	// digits is a trap, not a price.
	mostDigits = 60
	// mostPower is the largest power of ten in a number, either way.
	mostPower = 30

	mostDesigns  = 100
	mostVersions = 100 // of a design, and of its drawing
	mostEdits    = 5000
	mostRecipes  = 2000
	mostPoints   = 20_000 // of all lines drawn by hand in a design
	mostLists    = 100
)
