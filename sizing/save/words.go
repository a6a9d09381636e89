package save

import (
	"badgewright/reduce"
	"badgewright/sizing"
)

// The words that a project may use, by what they say.
var (
	makings = words(sizing.Struck, sizing.Cast)
	fills   = words(sizing.Soft, sizing.Hard, sizing.Unfilled)
	sizeBys = words(sizing.ByWidth, sizing.ByHeight, sizing.ByLongest, sizing.ByMean)
	metals  = words(sizing.Iron, sizing.Brass, sizing.Copper, sizing.Zinc)

	grounds = words(reduce.GroundAuto, reduce.GroundClear, reduce.GroundPaper, reduce.GroundNone)
	roles   = words(reduce.Enamel, reduce.Metal, reduce.CutOut, reduce.Printed)
	ops     = words(reduce.SetRole, reduce.SetLock, reduce.SetColour, reduce.SetName, reduce.Join, reduce.Apart, reduce.Fill, reduce.Split)

	recipeKinds = words(sizing.OuterEdge, sizing.BuildLines, sizing.DrawLine, sizing.EraseLine,
		sizing.BuildBridge, sizing.AddEye, sizing.RoundTip,
		sizing.CloseGap, sizing.BuildBorder, sizing.ThickenLine, sizing.WidenArea, sizing.DropThin,
		sizing.GrowArea, sizing.DropArea, sizing.MergeArea, sizing.OpenUp)
	partsChoices = words(sizing.PartsOpen, sizing.PartsDangle, sizing.PartsOne)
	fastenings   = words(sizing.PostAndClutch, sizing.MagnetBack, sizing.PinBar, sizing.ScrewBack)
	buyers       = words(sizing.Adults, sizing.FromTeens, sizing.FromEight, sizing.FromThree, sizing.UnderThree)
	finishes     = words(sizing.Plain, sizing.Glitter, sizing.Pearl, sizing.Translucent, sizing.Glow, sizing.Sandblasted, sizing.Textured)
)

func words[W ~string](all ...W) []string {
	out := make([]string, len(all))
	for i, w := range all {
		out[i] = string(w)
	}
	return out
}

func platings() []string {
	var all []string
	for _, p := range sizing.Platings() {
		all = append(all, string(p.ID))
	}
	return all
}
