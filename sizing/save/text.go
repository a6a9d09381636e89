package save

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"
)

// sane looks at every value of a project before any of it is used: how deep and how
// many they are, whether texts hold control characters, whether numbers are ones.
func sane(text []byte) error {
	if !utf8.Valid(text) {
		return refuse(copyAgain, "The project in this file is not text in UTF-8.")
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	deep, values := 0, 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) && deep == 0 && values > 0 {
			return nil
		}
		if err != nil {
			return refuse(copyAgain, "The project in this file cannot be read: %s.", plainly(err))
		}
		if values++; values > mostValues {
			return refuse(notOurs, "The project in this file has more than %d values.", mostValues)
		}
		if deep += turn(token); deep > mostDeep {
			return refuse(notOurs, "The project in this file is nested more than %d deep.", mostDeep)
		}
		if what := wrongIn(token); what != "" {
			return refuse(notOurs, "The project in this file has %s.", what)
		}
		if deep == 0 && d.More() {
			return refuse(notOurs, "Something follows the project in this file.")
		}
	}
}

// turn is +1 where a list or an object begins and -1 where it ends.
func turn(t json.Token) int {
	switch t {
	case json.Delim('['), json.Delim('{'):
		return 1
	case json.Delim(']'), json.Delim('}'):
		return -1
	}
	return 0
}

// wrongIn says what is wrong with one value; nothing when all is well.
func wrongIn(t json.Token) string {
	switch v := t.(type) {
	case string:
		return wrongText(v)
	case json.Number:
		return wrongNumber(string(v))
	}
	return ""
}

// number is a number written as text: exact decimals are kept so.
var number = regexp.MustCompile(`^[+-]?[0-9.]+([eE][+-]?[0-9]+)?$`)

func wrongText(s string) string {
	switch {
	case len(s) > mostText:
		return fmt.Sprintf("a text of %d bytes, and the longest is %d", len(s), mostText)
	case hasControl(s):
		return fmt.Sprintf("a text with control characters (%q)", shortened(s))
	case len(s) > 1 && number.MatchString(s):
		return wrongNumber(s)
	}
	return ""
}

// wrongNumber says of a number, before anything reckons with it, why it is none that a
// pin or an order can have.
func wrongNumber(s string) string {
	if len(s) > mostDigits {
		return fmt.Sprintf("a number of %d digits", len(s))
	}
	if at := strings.IndexAny(s, "eE"); at >= 0 {
		if p, err := strconv.Atoi(s[at+1:]); err != nil || p > mostPower || p < -mostPower {
			return fmt.Sprintf("the number %s, which nothing about a pin can be", s)
		}
	}
	if v, err := strconv.ParseFloat(s, 64); err == nil && math.Abs(v) > mostNumber {
		return fmt.Sprintf("the number %s, which nothing about a pin can be", s)
	}
	return ""
}

func shortened(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:37]) + "..."
	}
	return s
}

// isControl is true of the control characters of Unicode (general category Cc), but for
// those that part lines and columns.
func isControl(r rune) bool {
	return r < ' ' && r != '\n' && r != '\t' && r != '\r' || r >= 0x7f && r <= 0x9f
}

func hasControl(s string) bool { return strings.IndexFunc(s, isControl) >= 0 }

// clean takes control characters out of every text of a project, so that what was pasted
// into a name makes no file that is refused.
func clean(project json.RawMessage) (json.RawMessage, error) {
	d := json.NewDecoder(bytes.NewReader(project))
	d.UseNumber()
	out := make(json.RawMessage, 0, len(project))
	last := int64(0)
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return append(out, project[last:]...), nil
		}
		if err != nil {
			return nil, fmt.Errorf("save: %w", err)
		}
		now := d.InputOffset()
		raw := project[last:now]
		if s, ok := token.(string); ok && hasControl(s) {
			text, _ := json.Marshal(cleaned(s))
			raw = append(bytes.Clone(raw[:bytes.IndexByte(raw, '"')]), text...)
		}
		out, last = append(out, raw...), now
	}
}

func cleaned(s string) string {
	return strings.Map(func(r rune) rune {
		if isControl(r) {
			return -1
		}
		return r
	}, s)
}

// cleanName is a file's name as it is kept: no folder before it, nothing that is not
// seen.
func cleanName(name string) string {
	name = strings.NewReplacer("\n", " ", "\r", " ", "\t", " ").Replace(cleaned(name))
	name = name[strings.LastIndexAny(name, `/\`)+1:]
	for len(name) > mostName {
		_, n := utf8.DecodeLastRuneInString(name)
		name = name[:len(name)-n]
	}
	return name
}

var id = regexp.MustCompile(`^[a-z0-9][a-z0-9-]{0,39}$`)

func isID(s string) bool { return id.MatchString(s) }

// script finds what an SVG could act with, were it a page (SVG 2, chapter 15): it is shown as
// a picture only, where none of it does.
var script = regexp.MustCompile(`(?i)<(?:[a-z]+:)?script\b|<(?:[a-z]+:)?foreignObject\b|\son[a-z]+\s*=|javascript:`)

func hasScript(svg []byte) bool { return script.Match(svg) }
