//go:build !pin

package days

import (
	"cmp"
	"slices"
	"time"

	"github.com/rickar/cal/v2"
	"github.com/rickar/cal/v2/at"
	"github.com/rickar/cal/v2/au"
	"github.com/rickar/cal/v2/be"
	"github.com/rickar/cal/v2/br"
	"github.com/rickar/cal/v2/ca"
	"github.com/rickar/cal/v2/ch"
	"github.com/rickar/cal/v2/cz"
	"github.com/rickar/cal/v2/de"
	"github.com/rickar/cal/v2/dk"
	"github.com/rickar/cal/v2/es"
	"github.com/rickar/cal/v2/fr"
	"github.com/rickar/cal/v2/gb"
	"github.com/rickar/cal/v2/gr"
	"github.com/rickar/cal/v2/hr"
	"github.com/rickar/cal/v2/ie"
	"github.com/rickar/cal/v2/it"
	"github.com/rickar/cal/v2/jp"
	"github.com/rickar/cal/v2/lt"
	"github.com/rickar/cal/v2/lv"
	"github.com/rickar/cal/v2/nc"
	"github.com/rickar/cal/v2/nl"
	"github.com/rickar/cal/v2/no"
	"github.com/rickar/cal/v2/nz"
	"github.com/rickar/cal/v2/pl"
	"github.com/rickar/cal/v2/ro"
	"github.com/rickar/cal/v2/se"
	"github.com/rickar/cal/v2/si"
	"github.com/rickar/cal/v2/sk"
	"github.com/rickar/cal/v2/us"
	"github.com/rickar/cal/v2/za"
)

// known is a country with its holidays; the library keeps them.
type known struct {
	Country
	holidays []*cal.Holiday
}

// countries is what is covered, by name: what the library has, less the
// countries and cantons whose rules it has wrong for 2026 to 2028 by npm's
// date-holidays 3.37.0, and with the holidays that it does not know yet. China
// and Taiwan, where many pins are made, are not covered: their closures are
// ranges that the person can change.
var countries = byName([]known{
	{Country{"AT", "Austria", ""}, at.Holidays},
	{Country{"AU-ACT", "Australia: Capital Territory", ""}, au.HolidaysACT},
	{Country{"AU-NSW", "Australia: New South Wales", "The day off for an Anzac Day at the weekend is not in the list."}, au.HolidaysNSW},
	{Country{"AU-NT", "Australia: Northern Territory", ""}, au.HolidaysNT},
	{Country{"AU-QLD", "Australia: Queensland", ""}, au.HolidaysQLD},
	{Country{"AU-SA", "Australia: South Australia", ""}, au.HolidaysSA},
	{Country{"AU-TAS", "Australia: Tasmania", ""}, au.HolidaysTAS},
	{Country{"AU-VIC", "Australia: Victoria", ""}, au.HolidaysVIC},
	{Country{"AU-WA", "Australia: Western Australia", ""}, au.HolidaysWA},
	{Country{"BE", "Belgium", ""}, be.Holidays},
	{Country{"BR", "Brazil", ""}, with(br.Holidays, since(2024, time.November, 20, "Dia da Consciência Negra"))},
	{Country{"CA", "Canada", "Kept in most provinces, not in all: look through the list."}, ca.Holidays},
	{Country{"CH-AR", "Switzerland: Appenzell Ausserrhoden", ""}, ch.HolidaysAR},
	{Country{"CH-BE", "Switzerland: Bern", ""}, ch.HolidaysBE},
	{Country{"CH-BS", "Switzerland: Basel-Stadt", ""}, ch.HolidaysBS},
	{Country{"CH-SG", "Switzerland: St. Gallen", ""}, ch.HolidaysSG},
	{Country{"CH-SH", "Switzerland: Schaffhausen", ""}, ch.HolidaysSH},
	{Country{"CH-SZ", "Switzerland: Schwyz", ""}, ch.HolidaysSZ},
	{Country{"CH-TG", "Switzerland: Thurgau", ""}, ch.HolidaysTG},
	{Country{"CH-UR", "Switzerland: Uri", ""}, ch.HolidaysUR},
	{Country{"CH-ZH", "Switzerland: Zürich", ""}, ch.HolidaysZH},
	{Country{"CZ", "Czechia", ""}, cz.Holidays},
	{Country{"DE", "Germany", ""}, de.Holidays},
	{Country{"DE-BB", "Germany: Brandenburg", ""}, de.HolidaysBB},
	{Country{"DE-BE", "Germany: Berlin", ""}, de.HolidaysBE},
	{Country{"DE-BW", "Germany: Baden-Württemberg", ""}, de.HolidaysBW},
	{Country{"DE-BY", "Germany: Bavaria", ""}, de.HolidaysBY},
	{Country{"DE-HB", "Germany: Bremen", ""}, de.HolidaysHB},
	{Country{"DE-HE", "Germany: Hesse", ""}, de.HolidaysHE},
	{Country{"DE-HH", "Germany: Hamburg", ""}, de.HolidaysHH},
	{Country{"DE-MV", "Germany: Mecklenburg-Vorpommern", ""}, with(de.HolidaysMV, since(2023, time.March, 8, "Internationaler Frauentag"))},
	{Country{"DE-NI", "Germany: Lower Saxony", ""}, de.HolidaysNI},
	{Country{"DE-NW", "Germany: North Rhine-Westphalia", ""}, de.HolidaysNW},
	{Country{"DE-RP", "Germany: Rhineland-Palatinate", ""}, de.HolidaysRP},
	{Country{"DE-SH", "Germany: Schleswig-Holstein", ""}, de.HolidaysSH},
	{Country{"DE-SL", "Germany: Saarland", ""}, de.HolidaysSL},
	{Country{"DE-SN", "Germany: Saxony", ""}, de.HolidaysSN},
	{Country{"DE-ST", "Germany: Saxony-Anhalt", ""}, de.HolidaysST},
	{Country{"DE-TH", "Germany: Thuringia", ""}, de.HolidaysTH},
	{Country{"DK", "Denmark", "5 June is in the list, though not all are off."}, dk.Holidays},
	{Country{"ES", "Spain", ""}, es.Holidays},
	{Country{"FR", "France", ""}, fr.Holidays},
	{Country{"GB", "United Kingdom: England and Wales", ""}, gb.Holidays},
	{Country{"GR", "Greece", ""}, gr.Holidays},
	{Country{"HR", "Croatia", ""}, hr.Holidays},
	{Country{"IE", "Ireland", "Good Friday is not in the list, though many are off."}, ie.Holidays},
	{Country{"IT", "Italy", ""}, with(it.Holidays, since(2026, time.October, 4, "Festa di San Francesco d'Assisi"))},
	{Country{"JP", "Japan", ""}, jp.Holidays},
	{Country{"LT", "Lithuania", ""}, lt.Holidays},
	{Country{"LV", "Latvia", ""}, lv.Holidays},
	{Country{"NC", "New Caledonia", ""}, nc.Holidays},
	{Country{"NL", "Netherlands", "Good Friday and 5 May are in the list, though many work on them."}, nl.Holidays},
	{Country{"NO", "Norway", ""}, no.Holidays},
	{Country{"NZ", "New Zealand", "Matariki is not in the list: add it as a day off."}, nz.Holidays},
	{Country{"PL", "Poland", ""}, with(pl.Holidays, since(2025, time.December, 24, "Wigilia Bożego Narodzenia"))},
	{Country{"RO", "Romania", ""}, with(ro.Holidays, since(2024, time.January, 6, "Bobotează"), since(2024, time.January, 7, "Sfântul Ioan Botezătorul"))},
	{Country{"SE", "Sweden", ""}, se.Holidays},
	{Country{"SI", "Slovenia", ""}, si.Holidays},
	{Country{"SK", "Slovakia", "Some holidays of the list have become working days since 2024: look through it."}, sk.Holidays},
	{Country{"US", "United States", ""}, us.Holidays},
	{Country{"ZA", "South Africa", ""}, za.Holidays},
})

// with adds holidays that the library does not know yet.
func with(all []*cal.Holiday, more ...*cal.Holiday) []*cal.Holiday {
	return append(slices.Clone(all), more...)
}

// since is a holiday on the same date every year, from a year on.
func since(year int, month time.Month, day int, name string) *cal.Holiday {
	return &cal.Holiday{Name: name, Type: cal.ObservancePublic, StartYear: year, Month: month, Day: day, Func: cal.CalcDayOfMonth}
}

func byName(all []known) []known {
	slices.SortFunc(all, func(a, b known) int { return cmp.Compare(a.Name, b.Name) })
	return all
}

// Countries returns the countries whose holidays are known, by name.
func Countries() []Country {
	out := make([]Country, len(countries))
	for i, k := range countries {
		out[i] = k.Country
	}
	return out
}
