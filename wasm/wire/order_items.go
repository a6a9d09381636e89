package wire

import "badgewright/sizing/run"

// OrderItemsAsk asks what every version of every design is to a price list. It
// needs the drawings; what it answers is all that the calls of the order need.
type OrderItemsAsk struct {
	Project Project `json:"project"`
}

// OrderItems is a project as an order.
type OrderItems struct {
	Order run.Wanted `json:"order"`
	// Places names the version behind each item, in their order.
	Places []OrderPlace `json:"places"`
	// Left says which designs are not in it, and why.
	Left []string `json:"left"`
}

// OrderPlace is one version of one design, by their places in the project.
type OrderPlace struct {
	Design  int `json:"design"`
	Version int `json:"version"`
}
