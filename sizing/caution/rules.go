package caution

// Rule is a clause and its number, as far as it was read.
type Rule struct {
	Place  string `json:"place"` // US, US-CA (California) or EU
	Clause string `json:"clause"`
	What   string `json:"what"`
	Value  string `json:"value"` // empty when the clause has no number
	Unit   string `json:"unit"`
	Value2 string `json:"value2"` // the same in another unit
	Unit2  string `json:"unit2"`
	// Note is the scope that matters here, in our words.
	Note string `json:"note"`
	// Memory is true when part of it was not read but remembered: look it up.
	Memory bool `json:"memory"`
}

// The clauses (held to a table of sources in the tests, which says how each was
// read). Numbers are quoted, not judged by: a qualified laboratory measures.
var (
	cylinder = Rule{
		Place: "US", Clause: "16 CFR 1501.4(a), Figure 1", What: "small-parts cylinder inside diameter",
		Value: "1.25", Unit: "in", Value2: "31.75", Unit2: "mm",
		Note: "for children under 3: what fits it entirely, any way round and not squeezed, fails",
	}
	sharpPoint = Rule{
		Place: "US", Clause: "16 CFR 1500.48", What: "sharp-point test applies to toys and articles for children under",
		Value: "8", Unit: "years", Note: "before and after use and abuse",
	}
	sharpEdge = Rule{
		Place: "US", Clause: "16 CFR 1500.49", What: "sharp metal-edge test applies to articles for children under",
		Value: "8", Unit: "years",
	}
	toyPoints = Rule{
		Place: "EU", Clause: "EN 71-1 clause 4.8 (points), test 8.12", What: "sharp points on toys",
		Note: "a point that is needed is allowed only for over 36 months, with a warning",
	}
	magnetFlux = Rule{
		Place: "US", Clause: "16 CFR 1262.3 (87 FR 57789, 21 Sept 2022)",
		What:  "flux index of each loose or separable magnet that fits the 1501.4 cylinder must be below",
		Value: "50", Unit: "kG2 mm2", Note: "not for children alone: jewellery for grown-ups is in its scope",
	}
	toyMagnets = Rule{
		Place: "EU", Clause: "EN 71-1 (magnets)",
		What:  "flux index of toy magnets or magnetic parts that fit the small-parts cylinder must be below",
		Value: "0.5", Unit: "T2 mm2", Value2: "50", Unit2: "kG2 mm2", Memory: true,
	}
	nickelSkin = Rule{
		Place: "EU", Clause: "REACH (EC) 1907/2006 Annex XVII entry 27, 1(b)",
		What:  "nickel release from parts in direct and prolonged skin contact, must not exceed",
		Value: "0.5", Unit: "ug/cm2/week", Note: "the stricter limit for piercing posts is not meant for a pin that goes through cloth",
	}
	leadJewellery = Rule{
		Place: "EU", Clause: "REACH Annex XVII entry 63", What: "lead in any individual part of jewellery, must be below",
		Value: "0.05", Unit: "percent by weight", Value2: "500", Unit2: "ppm", Note: "brooches are named; resin fill is not exempt", Memory: true,
	}
	cadmium = Rule{
		Place: "EU", Clause: "REACH Annex XVII entry 23 para 10", What: "cadmium in each metal part of jewellery, must be below",
		Value: "0.01", Unit: "percent by weight", Value2: "100", Unit2: "ppm", Note: "a coating counts with the metal it covers",
	}
	leadChildren = Rule{
		Place: "US", Clause: "CPSIA s.101(a), 15 U.S.C. 1278a",
		What:  "total lead in accessible parts of children's products (12 and under), maximum",
		Value: "100", Unit: "ppm", Note: "plating does not make the metal under it inaccessible",
	}
	leadPaint = Rule{
		Place: "US", Clause: "16 CFR 1303.1", What: "lead in paint and similar surface coatings, maximum",
		Value: "90", Unit: "ppm", Value2: "0.009", Unit2: "percent by weight", Note: "children's products",
	}
	childrensProduct = Rule{
		Place: "US", Clause: "15 U.S.C. 2052(a)(2); 16 CFR 1200.2", What: "children's product means designed or intended primarily for",
		Value: "12", Unit: "years or younger", Memory: true,
	}
	leadCalifornia = Rule{
		Place: "US-CA", Clause: "Health and Safety Code 25214.2, from 1 June 2020 (SB 647)",
		What:  "lead in plated metal, unplated metal, dye or surface coating of adult jewelry, below",
		Value: "0.05", Unit: "percent by weight", Value2: "500", Unit2: "ppm",
	}
	leadCaliforniaChildren = Rule{
		Place: "US-CA", Clause: "Health and Safety Code 25214.2 (SB 647)",
		What:  "lead in children's jewelry (under 15), accessible parts / surface coating",
		Value: "0.01 / 0.009", Unit: "percent by weight", Value2: "100 / 90", Unit2: "ppm",
	}
	warning65 = Rule{
		Place: "US-CA", Clause: "Proposition 65 (Safe Drinking Water and Toxic Enforcement Act of 1986; H&S Code 25249.5 ff.)",
		What: "clear and reasonable warning before exposing anyone to a listed chemical", Memory: true,
	}
	productSafety = Rule{
		Place: "EU", Clause: "Regulation (EU) 2023/988", What: "general product safety regulation",
		Note: "name and address of a responsible person in the EU", Memory: true,
	}
)

// rules is every one of them.
func rules() []Rule {
	return []Rule{
		cylinder, sharpPoint, sharpEdge, toyPoints, magnetFlux, toyMagnets, nickelSkin, leadJewellery, cadmium,
		leadChildren, leadPaint, childrensProduct, leadCalifornia, leadCaliforniaChildren, warning65, productSafety,
	}
}
