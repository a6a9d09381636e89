package unit

import (
	"strings"

	"github.com/shopspring/decimal"
)

// minorDigits holds the currencies of ISO 4217 whose minor unit is not a
// hundredth (from memory; the common ones are held to a table in the tests).
var minorDigits = map[string]int{
	"BIF": 0, "CLP": 0, "DJF": 0, "GNF": 0, "ISK": 0, "JPY": 0, "KMF": 0, "KRW": 0,
	"PYG": 0, "RWF": 0, "UGX": 0, "VND": 0, "VUV": 0, "XAF": 0, "XOF": 0, "XPF": 0,
	"BHD": 3, "IQD": 3, "JOD": 3, "KWD": 3, "LYD": 3, "OMR": 3, "TND": 3,
}

// MinorDigits returns the decimals of a currency (ISO 4217); ok is false when
// the code is not three capital letters. Codes not known to differ have two.
func MinorDigits(code string) (digits int, ok bool) {
	if len(code) != 3 || strings.Trim(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") != "" {
		return 0, false
	}
	if d, known := minorDigits[code]; known {
		return d, true
	}
	return 2, true
}

// RoundMoney rounds to minor units once, half away from zero.
func RoundMoney(d decimal.Decimal, digits int) decimal.Decimal { return d.Round(int32(digits)) }

// Money prints an amount with its currency code: "EUR 33.00". Thousands are set
// apart by a no-break space from five digits on (ISO 80000-1 asks for a space).
func Money(d decimal.Decimal, code string, digits int) string {
	return code + "\u00a0" + Figure(d, digits)
}

// About prints what one piece costs, derived from a total: one place more than
// the currency has, and marked: "about EUR 1.234".
func About(d decimal.Decimal, code string, digits int) string {
	return "about " + Money(d, code, digits+1)
}

// Figure prints an amount without its currency: "33.00".
func Figure(d decimal.Decimal, digits int) string {
	s := d.StringFixed(int32(digits))
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "\u2212", s[1:]
	}
	whole, rest, _ := strings.Cut(s, ".")
	if strings.Trim(s, "0.") == "" {
		sign = ""
	}
	if digits > 0 {
		rest = "." + rest
	}
	return sign + grouped(whole) + rest
}

func grouped(whole string) string {
	if len(whole) < 5 {
		return whole
	}
	var b strings.Builder
	for i, r := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteRune('\u00a0')
		}
		b.WriteRune(r)
	}
	return b.String()
}
