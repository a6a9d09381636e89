//go:build !pin

package calls

import (
	"fmt"

	"badgewright/sizing/parcel"
	"badgewright/sizing/save"
	"badgewright/wasm/wire"
)

// numberedPictures calls the pictures that a project names by their place in it, and
// returns those that are at hand in this order. One that is not keeps its number.
func numberedPictures(p *wire.Project, by map[string][]byte) []save.Picture {
	var all []save.Picture
	names := map[string]string{}
	for _, id := range pictureNames(&p.Plans) {
		old := *id
		if names[old] == "" {
			names[old] = fmt.Sprintf("picture-%d", len(names)+1)
			if data := by[old]; data != nil {
				all = append(all, save.Picture{ID: names[old], Bytes: data})
			}
		}
		*id = names[old]
	}
	return all
}

// pictureNames are the places where plans name a picture: of flawed pieces, then makers'
// proofs.
func pictureNames(p *wire.Plans) []*string {
	var all []*string
	for i := range p.Parcels {
		for k := range p.Parcels[i].Rows {
			all = append(all, photosOf(p.Parcels[i].Rows[k].Flawed)...)
		}
	}
	for i := range p.Proofs {
		all = append(all, &p.Proofs[i].ID)
	}
	return all
}

func photosOf(pieces []parcel.FlawedPiece) []*string {
	var all []*string
	for i := range pieces {
		for k := range pieces[i].Photos {
			all = append(all, &pieces[i].Photos[k])
		}
	}
	return all
}
