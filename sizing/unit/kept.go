package unit

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Kept is the checks that a device keeps: the scale of each screen by its key.
type Kept map[string]DevicePxPerMM

// ReadKept reads checks as a browser keeps them: {"1920x1080@1.25": 5.56}.
// What cannot be read, or is no scale of a screen, counts as not checked.
func ReadKept(text string) Kept {
	var all map[string]any
	kept := Kept{}
	if json.Unmarshal([]byte(text), &all) != nil {
		return kept
	}
	for key, v := range all {
		n, ok := v.(float64)
		if _, known := screenOf(key); ok && known && DevicePxPerMM(n).Check() == nil {
			kept[key] = DevicePxPerMM(n)
		}
	}
	return kept
}

// Text writes checks as ReadKept reads them.
func (k Kept) Text() string {
	text, err := json.Marshal(k) // keys come out in order
	if err != nil {
		panic(fmt.Sprintf("unit: checks that cannot be written: %v", err))
	}
	return string(text)
}

// Find returns the scale kept for a screen. Of several that may be meant, the
// one nearest in size counts, first those of the same scale of the system.
func (k Kept) Find(s Screen) (DevicePxPerMM, bool) {
	best, cost, found := DevicePxPerMM(0), 0, false
	for _, key := range k.keys() {
		o, _ := screenOf(key)
		if !s.Same(o) {
			continue
		}
		c := 2 * (abs(s.W-o.W) + abs(s.H-o.H))
		if o.Base != s.Base {
			c++
		}
		if !found || c < cost {
			best, cost, found = k[key], c, true
		}
	}
	return best, found
}

// Keep returns the checks with a screen's new one in the place of its old ones.
func (k Kept) Keep(s Screen, scale DevicePxPerMM) Kept {
	next := Kept{}
	for key, v := range k {
		if o, _ := screenOf(key); !s.Same(o) {
			next[key] = v
		}
	}
	if s.Known() {
		next[s.Key()] = scale
	}
	return next
}

func (k Kept) keys() []string {
	var keys []string
	for key := range k {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	return keys
}

// screenOf reads a key.
func screenOf(key string) (Screen, bool) {
	s := Screen{Ratio: 1, Pinch: 1}
	size, base, _ := strings.Cut(key, "@")
	w, h, _ := strings.Cut(size, "x")
	// What cannot be read is 0, and the key of that is another.
	s.W, _ = strconv.Atoi(w)
	s.H, _ = strconv.Atoi(h)
	s.Base, _ = strconv.ParseFloat(base, 64)
	return s, s.Known() && s.Key() == key
}
