package days

// Country is a country, or a part of one, whose public holidays are known.
type Country struct {
	Code string `json:"code"` // ISO 3166: "GB", "DE-BY"
	Name string `json:"name"`
	Note string `json:"note"` // what the list is known to lack or to have too much; mostly empty
}

// Holiday is a day on which a country does not work.
type Holiday struct {
	Date Date   `json:"date"`
	Name string `json:"name"` // in a language of the country
}

// feast is a holiday of one year.
type feast struct {
	day  Day
	name string
}
