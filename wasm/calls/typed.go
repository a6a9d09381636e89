package calls

import (
	"fmt"
	"strconv"
	"strings"

	"badgewright/reduce/colour"
	"badgewright/sizing/unit"
	"badgewright/wasm/wire"
)

// typed says what a text means that was typed into a field of the page.
func typed(_ *Session, _ Job, ask wire.TypedAsk) (Reply, error) {
	read, ok := readers[ask.As]
	if !ok {
		return Reply{}, fmt.Errorf("calls: nothing typed stands for %q", ask.As)
	}
	t, err := read(ask)
	return Reply{Answer: t}, err
}

var readers = map[wire.TypedAs]func(wire.TypedAsk) (wire.Typed, error){
	wire.TypedLength:   typedLength,
	wire.TypedArea:     measuredIn(unit.ParseArea, " mm²"),
	wire.TypedForce:    measuredIn(unit.ParseForce, " N"),
	wire.TypedAngle:    measuredIn(unit.ParseAngle, "°"),
	wire.TypedCount:    typedCount,
	wire.TypedAmount:   typedAmount,
	wire.TypedCurrency: typedCurrency,
	wire.TypedColour:   typedColour,
	wire.TypedPercent:  typedPercent,
	wire.TypedDays:     typedDays,
}

func typedLength(ask wire.TypedAsk) (wire.Typed, error) {
	bare := unit.Millimetres
	if ask.Beside == string(unit.Inches) {
		bare = unit.Inches
	}
	mm, err := unit.ParseLength(ask.Text, bare)
	if err != nil {
		return wire.Typed{}, err
	}
	t := wire.Typed{Number: float64(mm), Words: unit.InBoth(mm)}
	return t, within(t, ask, func(v float64) string { return unit.InBoth(unit.MM(v)) })
}

// measuredIn reads what has one unit.
func measuredIn(parse func(string) (float64, error), beside string) func(wire.TypedAsk) (wire.Typed, error) {
	say := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + beside }
	return func(ask wire.TypedAsk) (wire.Typed, error) {
		n, err := parse(ask.Text)
		if err != nil {
			return wire.Typed{}, err
		}
		t := wire.Typed{Number: n, Words: say(n)}
		return t, within(t, ask, say)
	}
}

func typedCount(ask wire.TypedAsk) (wire.Typed, error) {
	n, err := unit.ParseCount(ask.Text, ask.Beside)
	if err != nil {
		return wire.Typed{}, err
	}
	t := wire.Typed{Number: float64(n), Words: strconv.Itoa(n)}
	return t, within(t, ask, func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) })
}

func typedAmount(ask wire.TypedAsk) (wire.Typed, error) {
	d, err := unit.ParseAmount(ask.Text, ask.Beside)
	if err != nil {
		return wire.Typed{}, err
	}
	return wire.Typed{Text: d.String(), Words: d.String()}, nil
}

func typedPercent(ask wire.TypedAsk) (wire.Typed, error) {
	d, err := unit.ParsePercent(ask.Text)
	if err != nil {
		return wire.Typed{}, err
	}
	t := wire.Typed{Number: d.InexactFloat64(), Text: d.String(), Words: d.String() + " %"}
	return t, within(t, ask, func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) + " %" })
}

func typedDays(ask wire.TypedAsk) (wire.Typed, error) {
	n, err := unit.ParseDays(ask.Text)
	if err != nil {
		return wire.Typed{}, err
	}
	t := wire.Typed{Number: float64(n), Words: daysWords(float64(n))}
	return t, within(t, ask, daysWords)
}

func daysWords(n float64) string {
	if n == 1 {
		return "1 working day"
	}
	return strconv.FormatFloat(n, 'f', -1, 64) + " working days"
}

func typedCurrency(ask wire.TypedAsk) (wire.Typed, error) {
	code, err := unit.ParseCurrency(ask.Text)
	return wire.Typed{Text: code, Words: code}, err
}

func typedColour(ask wire.TypedAsk) (wire.Typed, error) {
	c, err := colour.ParseHex(ask.Text)
	if err != nil {
		return wire.Typed{}, &unit.Mistake{What: fmt.Sprintf("%q is not a colour.", strings.TrimSpace(ask.Text)), Do: "Type six digits, such as #1a6b8f."}
	}
	return wire.Typed{RGB: c, Words: c.Hex()}, nil
}

// within refuses a number out of the bounds of its field.
func within(t wire.Typed, ask wire.TypedAsk, say func(float64) string) error {
	if ask.Most == 0 || t.Number >= ask.Least && t.Number <= ask.Most {
		return nil
	}
	m := &unit.Mistake{What: t.Words + " is too large here.", Do: fmt.Sprintf("Give from %s to %s.", say(ask.Least), say(ask.Most))}
	if t.Number < ask.Least {
		m.What = t.Words + " is too small here."
	}
	if ask.Least == 0 {
		m.Do = fmt.Sprintf("Give at most %s.", say(ask.Most))
	}
	return m
}
