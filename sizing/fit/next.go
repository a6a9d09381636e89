package fit

import (
	"fmt"

	"badgewright/reduce"
	"badgewright/reduce/colourlist"
)

// NextWords says which two colours join next and what is lost by it.
func NextWords(j reduce.Joining, flats []reduce.Flat) string {
	return fmt.Sprintf("One enamel fewer: %s joins %s; %s %s.", nameOf(j.Goes, flats), nameOf(j.Keep, flats), percent(j.Share), shiftWords(j.Shift))
}

func nameOf(id reduce.FlatID, flats []reduce.Flat) string {
	for _, f := range flats {
		if f.ID == id {
			return f.Name
		}
	}
	return "another colour"
}

// percent of the drawing, as fine as it says something.
func percent(share float64) string {
	switch p := 100 * share; {
	case p < 0.1:
		return "less than 0.1 % of the pin"
	case p < 10:
		return fmt.Sprintf("%.1f %% of the pin", p)
	default:
		return fmt.Sprintf("%.0f %% of the pin", p)
	}
}

func shiftWords(de float64) string {
	switch colourlist.DistanceOf(de) {
	case colourlist.Same:
		return "changes and nobody sees it"
	case colourlist.HardToTell:
		return "changes by hardly anything to see"
	case colourlist.Close:
		return "changes a little"
	case colourlist.Different:
		return "changes clearly"
	default:
		return "becomes another colour"
	}
}
