package sizing

// The recipes of repairs. Their Points are where a repair is made. At a size
// they do only what is still needed there: where the limit is kept already they
// change nothing. A width of 0 is that of the limit.
const (
	CloseGap    RecipeKind = "close-gap"    // metal along Points, across a gap
	BuildBorder RecipeKind = "build-border" // metal along the one border that is nearest to the middle of Points
	ThickenLine RecipeKind = "thicken-line" // the metal along Points brought to a width
	WidenArea   RecipeKind = "widen-area"   // the enamel along Points brought to a width
	DropThin    RecipeKind = "drop-thin"    // what is narrower than a width along Points goes to what lies beside it
	GrowArea    RecipeKind = "grow-area"    // the area at Points brought to that of a square of a width
	DropArea    RecipeKind = "drop-area"    // the area at Points, if below that, goes to what it borders on most
	MergeArea   RecipeKind = "merge-area"   // the same, with the line round it, to the colour round that
	OpenUp      RecipeKind = "open-up"      // the line along Points goes where the areas beside it are too narrow
)
