package deduce

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"badgewright/sizing/unit"
)

// PlainQuote is a quote as a maker gives it: so many pieces, so large, for so much.
type PlainQuote struct {
	Text     string          `json:"text"` // as typed
	Quantity int             `json:"quantity"`
	Size     unit.MM         `json:"size"`
	Colours  int             `json:"colours"` // enamels; 0 when not said, which counts as those in the price
	Posts    int             `json:"posts"`
	Hard     bool            `json:"hard"`
	Die      bool            `json:"die"`      // the total holds the die
	Shipping bool            `json:"shipping"` // the total holds the shipping
	Total    decimal.Decimal `json:"total"`
}

// PlainMistake is a line that cannot be read.
type PlainMistake struct {
	Line int    `json:"line"` // from 1
	Text string `json:"text"`
	What string `json:"what"`
}

var (
	sizeWords   = regexp.MustCompile(`(?:^|[\s(])((?:\d+ \d+/\d+|\d+/\d+|\d+[.,]\d+|\d+)\s*(?:mm|cm|inches|inch|in\b|"|″))`)
	colourWords = regexp.MustCompile(`(\d+)\s*(?:enamels?|colou?rs?)\b`)
	postWords   = regexp.MustCompile(`\b(\d|one|two|three)\s*posts?\b`)
	countWords  = regexp.MustCompile(`^\s*(\d[\d\s.,']*)`)
	noDie       = regexp.MustCompile(`\b(?:without|no|excluding|excl\.?)\s+(?:the\s+)?(?:die|mould|mold)s?\b|\breorder\b`)
	withDie     = regexp.MustCompile(`\b(?:with|including|incl\.?)\s+(?:the\s+)?(?:die|mould|mold)s?\b`)
	noShip      = regexp.MustCompile(`\b(?:without|no|excluding|excl\.?)\s+shipping\b`)
	withShip    = regexp.MustCompile(`\b(?:with|including|incl\.?)\s+shipping\b|\bdelivered\b`)
	fillWords   = regexp.MustCompile(`\b(hard|soft)(?:\s+enamel)?\b`)
	eachWords   = regexp.MustCompile(`\b(?:each|apiece|a piece|per piece)\b`)
	filler      = regexp.MustCompile(`\b(?:pieces?|pcs|pins?|at|of|with|and|in|all|for|total|a|the|longest|side|by)\b|[,;.()+&]`)
)

var smallNumbers = map[string]int{"one": 1, "two": 2, "three": 3}

// Parse reads quotes, one a line: "150 at 30 mm with 3 colours: 412.50". Words
// that are understood besides: hard and soft, two posts, without die or
// reorder, with shipping or delivered, each. A line with any other word is a
// mistake: what it says might be paid for.
func Parse(text, currency string) (all []PlainQuote, mistakes []PlainMistake) {
	for i, line := range strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		q, what := parseLine(line, currency)
		if what != "" {
			mistakes = append(mistakes, PlainMistake{Line: i + 1, Text: strings.TrimSpace(line), What: what})
			continue
		}
		all = append(all, q)
	}
	return all, mistakes
}

// take cuts the first match of a pattern out of a text, and returns its group.
func take(text *string, of *regexp.Regexp) (string, bool) {
	m := of.FindStringSubmatchIndex(*text)
	if m == nil {
		return "", false
	}
	got := (*text)[m[0]:m[1]]
	if len(m) > 2 && m[2] >= 0 {
		got = (*text)[m[2]:m[3]]
	}
	*text = (*text)[:m[0]] + " " + (*text)[m[1]:]
	return got, true
}

const example = `Write it such as "150 at 30 mm with 3 colours: 412.50".`

func parseLine(line, currency string) (q PlainQuote, what string) {
	q = PlainQuote{Text: strings.TrimSpace(line), Posts: 1, Die: true}
	at := strings.LastIndexAny(line, ":=")
	if at < 0 {
		return q, "Nothing says what it costs. " + example
	}
	head, tail := strings.ToLower(line[:at]), strings.ToLower(line[at+1:])
	_, eachAhead := take(&head, eachWords)
	_, eachBehind := take(&tail, eachWords)
	amount, err := unit.ParseAmount(bare(tail), currency)
	if err != nil {
		return q, err.Error()
	}
	if what = q.read(&head); what != "" {
		return q, what
	}
	q.Total = amount
	if eachAhead || eachBehind {
		q.Total = amount.Mul(decimal.NewFromInt(int64(q.Quantity)))
		if !withDie.MatchString(strings.ToLower(line)) {
			q.Die = false
		}
	}
	return q, ""
}

// bare takes the signs of currencies off an amount.
func bare(s string) string { return strings.TrimSpace(strings.Trim(strings.TrimSpace(s), "€£$¥")) }

// read reads all but the amount; what is left over must be filler.
func (q *PlainQuote) read(head *string) string {
	_, without := take(head, noDie)
	take(head, withDie)
	take(head, noShip)
	_, q.Shipping = take(head, withShip)
	q.Die = !without
	size, ok := take(head, sizeWords)
	if !ok {
		return "Nothing says how large it is. " + example
	}
	m, err := unit.ParseLength(size, unit.Millimetres)
	if err != nil {
		return err.Error()
	}
	q.Size = m
	if n, ok := take(head, colourWords); ok {
		q.Colours, _ = strconv.Atoi(n)
	}
	if n, ok := take(head, postWords); ok {
		q.Posts = smallNumbers[n]
		if q.Posts == 0 {
			q.Posts, _ = strconv.Atoi(n)
		}
	}
	fill, _ := take(head, fillWords)
	q.Hard = strings.HasPrefix(fill, "hard")
	count, ok := take(head, countWords)
	if !ok {
		return "Nothing says how many pieces it is for. " + example
	}
	if q.Quantity, err = unit.ParseCount(strings.Trim(count, " .,"), ""); err != nil {
		return err.Error()
	}
	if q.Quantity < 1 || q.Colours > 100 || q.Posts < 1 {
		return "These numbers are not those of an order. " + example
	}
	if left := strings.TrimSpace(filler.ReplaceAllString(*head, " ")); left != "" {
		return fmt.Sprintf("%q is not understood, and might be paid for.", strings.Join(strings.Fields(left), " "))
	}
	return ""
}
