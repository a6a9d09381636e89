package unit

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// spaces holds the blanks that people and programs set between digits.
var spaces = strings.NewReplacer(" ", "", "\u00a0", "", "\u202f", "", "\u2009", "", "'", "", "’", "")

// measured is a kind of measure that is typed with one unit.
type measured struct {
	name    string   // "an area"
	units   []string // its spellings in small letters, longest first
	example string
}

var (
	areas  = measured{"an area", []string{"sq. mm", "sq mm", "mm^2", "mm²", "mm2"}, "0.25 mm²"}
	forces = measured{"a force", []string{"newtons", "newton", "n"}, "5 N"}
	angles = measured{"an angle", []string{"degrees", "degree", "deg.", "deg", "°"}, "40°"}
)

// ParseArea reads an area in mm2 as people write it: "0.25", "0,25 mm²". Zero,
// less, and anything unclear are a *Mistake.
func ParseArea(text string) (float64, error) { return areas.parse(text) }

// ParseForce reads a force in newtons: "5", "7,5 N".
func ParseForce(text string) (float64, error) { return forces.parse(text) }

// ParseAngle reads an angle in degrees: "40", "40°", "37.5 deg".
func ParseAngle(text string) (float64, error) { return angles.parse(text) }

// bare is its name without the article.
func (m *measured) bare() string {
	_, name, _ := strings.Cut(m.name, " ")
	return name
}

func (m *measured) parse(text string) (float64, error) {
	t := strings.ToLower(strings.TrimSpace(text))
	for _, u := range m.units {
		t = strings.TrimSpace(strings.TrimSuffix(t, u))
	}
	do := fmt.Sprintf("Type one such as %q.", m.example)
	if t == "" {
		return 0, &Mistake{What: "No " + m.bare() + " is given.", Do: do}
	}
	n, err := parseDecimal(t)
	if err == nil && !(n > 0) {
		err = fmt.Errorf("%s is more than nothing.", m.name)
	}
	if err != nil {
		return 0, &Mistake{What: fmt.Sprintf("%q cannot be read as %s: %s", strings.TrimSpace(text), m.name, err), Do: do}
	}
	return n, nil
}

const digits = "0123456789"

func onlyDigits(s string) bool { return s != "" && strings.Trim(s, digits) == "" }

// byThrees says whether marks set the digits of a number apart by threes, as
// in "1,000,000".
func byThrees(t, marks string) bool {
	parts := strings.FieldsFunc(t, func(r rune) bool { return strings.ContainsRune(marks, r) })
	joined := len(t) - len(parts) + 1 // without a mark between each two
	for i, p := range parts {
		if !onlyDigits(p) || len(p) > 3 || i > 0 && len(p) < 3 {
			return false
		}
		joined -= len(p)
	}
	return len(parts) > 1 && joined == 0
}

// ParseCount reads a whole number, 0 or more: "100", "1 000", "1,000". What
// stands beside the field, such as "pins", may be repeated behind it.
func ParseCount(text, beside string) (int, error) {
	t := spaces.Replace(without(text, beside))
	if byThrees(t, ".,") {
		t = strings.NewReplacer(",", "", ".", "").Replace(t)
	}
	n, err := strconv.ParseUint(t, 10, 31)
	switch {
	case t == "":
		return 0, &Mistake{What: "No number is given.", Do: "Type a whole one, such as 100."}
	case err != nil:
		return 0, &Mistake{What: fmt.Sprintf("%q is not a whole number.", strings.TrimSpace(text)), Do: "Type one such as 100."}
	}
	return int(n), nil
}

// Rates on a price list have at most so many digits before and after the point.
const (
	amountWhole = 9
	amountParts = 6
)

const amountDo = "Type one such as 1.25."

// twoWays says whether an amount can be read in two ways: "1,250" is twelve
// hundred and fifty, or one and a quarter.
func twoWays(t string) bool {
	return byThrees(t, ",") && strings.Count(t, ",") == 1 && !strings.HasPrefix(t, "0")
}

// inPlainPoints takes the marks between thousands out of an amount that has
// both a comma and a point: the later one is the decimal mark.
func inPlainPoints(t string) string {
	comma, point := strings.LastIndexByte(t, ','), strings.LastIndexByte(t, '.')
	if comma < 0 || point < 0 {
		return t
	}
	at, mark := max(comma, point), "."
	if point > comma {
		mark = ","
	}
	if !byThrees(t[:at], mark) {
		return t
	}
	return strings.ReplaceAll(t[:at], mark, "") + "." + t[at+1:]
}

// signs are the signs that people put before or behind an amount, and the
// currencies that each may stand for (ISO 4217 codes; from memory).
var signs = []struct {
	sign  string
	codes []string
}{
	{"€", []string{"EUR"}},
	{"£", []string{"GBP"}},
	{"$", []string{"USD", "CAD", "AUD", "NZD", "SGD", "HKD", "MXN"}},
	{"¥", []string{"JPY", "CNY"}},
}

// withoutSign takes a currency's sign off an amount in that currency; other is
// the sign of another.
func withoutSign(t, currency string) (bare, other string) {
	for _, s := range signs {
		if !strings.HasPrefix(t, s.sign) && !strings.HasSuffix(t, s.sign) {
			continue
		}
		if !slices.Contains(s.codes, currency) {
			return t, s.sign
		}
		return strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(t, s.sign), s.sign)), ""
	}
	return t, ""
}

// ParseAmount reads a rate of a price list, exactly: "1.25", "1,25", "EUR 1.25",
// "€ 1,25", "12 %". What stands beside the field, a currency's code or "%", may be
// repeated; another is a *Mistake, as is less than nothing.
func ParseAmount(text, beside string) (decimal.Decimal, error) {
	shown := strings.TrimSpace(text)
	bare, other := withoutSign(without(text, beside), beside)
	if other != "" {
		return decimal.Zero, &Mistake{What: fmt.Sprintf("%q is not in %s.", shown, orMoney(beside)), Do: amountDo}
	}
	t := inPlainPoints(spaces.Replace(bare))
	whole, parts, _ := strings.Cut(strings.Replace(t, ",", ".", 1), ".")
	switch {
	case strings.Trim(t, ".,") == "":
		return decimal.Zero, &Mistake{What: "No amount is given.", Do: amountDo}
	case twoWays(t):
		plain := strings.Replace(t, ",", "", 1)
		return decimal.Zero, &Mistake{What: fmt.Sprintf("%q can mean two things.", shown), Do: fmt.Sprintf("Type %s or %s.", plain, strings.Replace(t, ",", ".", 1))}
	case strings.Trim(whole+parts, digits) != "":
		return decimal.Zero, &Mistake{What: fmt.Sprintf("%q cannot be read as an amount.", shown), Do: amountDo}
	case len(whole) > amountWhole || len(parts) > amountParts:
		return decimal.Zero, &Mistake{
			What: fmt.Sprintf("%q has too many digits.", shown),
			Do:   fmt.Sprintf("Give at most %d before the point and %d behind it.", amountWhole, amountParts),
		}
	}
	return decimal.NewFromString("0" + whole + "." + parts + "0")
}

// orMoney is what stands beside a field, or a word for it.
func orMoney(beside string) string {
	if beside == "" {
		return "a plain number"
	}
	return beside
}

// shares are the spellings of a percentage, longest first.
var shares = []string{"per cent", "percent", "pct", "p.c.", "%"}

// ParsePercent reads a share in percent, exactly, 0 or more: "12", "12,5 %",
// "8.1 per cent". What is unclear is a *Mistake.
func ParsePercent(text string) (decimal.Decimal, error) {
	t := withoutUnit(text, shares)
	const do = "Type one such as 12.5 %."
	if t == "" {
		return decimal.Zero, &Mistake{What: "No percentage is given.", Do: do}
	}
	d, err := ParseAmount(t, "")
	var m *Mistake
	if errors.As(err, &m) && m.Do == amountDo {
		err = &Mistake{What: fmt.Sprintf("%q cannot be read as a percentage.", strings.TrimSpace(text)), Do: do}
	}
	return d, err
}

// workingDays are the spellings of days, longest first.
var workingDays = []string{"working days", "working day", "workdays", "workday", "business days", "business day", "days", "day", "d"}

// ParseDays reads whole working days, 0 or more: "10", "10 working days",
// "1 day". Weeks are refused: how many working days one has hangs on the place.
func ParseDays(text string) (int, error) {
	const do = "Type a whole number of working days, such as 10."
	shown := strings.TrimSpace(text)
	t := withoutUnit(text, workingDays)
	if t == "" {
		return 0, &Mistake{What: "No days are given.", Do: do}
	}
	if weeks := strings.ToLower(shown); strings.HasSuffix(weeks, "week") || strings.HasSuffix(weeks, "weeks") {
		return 0, &Mistake{What: fmt.Sprintf("%q is not in days.", shown), Do: "Count working days: a week has five in most places."}
	}
	n, err := ParseCount(t, "")
	if err != nil {
		return 0, &Mistake{What: fmt.Sprintf("%q is not a whole number of days.", shown), Do: do}
	}
	return n, nil
}

// withoutUnit takes the first of some spellings off the end of a text.
func withoutUnit(text string, units []string) string {
	t := strings.ToLower(strings.TrimSpace(text))
	for _, u := range units {
		if cut, ok := strings.CutSuffix(t, u); ok {
			return strings.TrimSpace(cut)
		}
	}
	return t
}

// ParseCurrency reads a currency's code, in letters of either case.
func ParseCurrency(text string) (string, error) {
	code := strings.ToUpper(strings.TrimSpace(text))
	if _, ok := MinorDigits(code); !ok {
		return "", &Mistake{What: fmt.Sprintf("%q is no currency code.", strings.TrimSpace(text)), Do: "Type its three letters, such as EUR."}
	}
	return code, nil
}

// without takes what stands beside a field off the text typed into it.
func without(text, beside string) string {
	t := strings.TrimSpace(text)
	if n := len(beside); n > 0 && len(t) >= n {
		switch {
		case strings.EqualFold(t[:n], beside):
			t = t[n:]
		case strings.EqualFold(t[len(t)-n:], beside):
			t = t[:len(t)-n]
		}
	}
	return strings.TrimSpace(t)
}
