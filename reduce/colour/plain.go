package colour

import (
	"strconv"
	"strings"
)

// loud are the modifiers that say only how full a colour is. The ISCC-NBS
// system names colours at several levels of fineness, the coarser without
// modifiers (from memory of NBS Special Publication 440); light, dark, deep,
// pale and greyish stay, as one says them anyway.
var loud = []string{"vivid ", "brilliant ", "strong ", "moderate ", "medium "}

// Short is a name of the system without how full the colour is: "orange
// yellow" for "brilliant orange yellow".
func Short(name string) string {
	for _, m := range loud {
		if hue, ok := strings.CutPrefix(name, m); ok {
			return hue
		}
	}
	return name
}

// PlainNames shortens names that stand side by side, each where no other would
// be called the same; plain says which may be. Shades too near for the system to
// tell apart are numbered from the second on.
func PlainNames(names []string, plain []bool) []string {
	short := make([]string, len(names))
	called := map[string]int{}
	for i, n := range names {
		if short[i] = n; plain[i] {
			short[i] = Short(n)
		}
		called[short[i]]++
	}
	for i, n := range names {
		if called[short[i]] > 1 {
			short[i] = n
		}
	}
	numberAlike(short, plain)
	return short
}

func numberAlike(names []string, plain []bool) {
	taken := map[string]bool{}
	for i, n := range names {
		taken[n] = taken[n] || !plain[i]
	}
	for i, n := range names {
		if !plain[i] {
			continue
		}
		for k := 2; taken[names[i]]; k++ {
			names[i] = n + " " + strconv.Itoa(k)
		}
		taken[names[i]] = true
	}
}

// IsPlain says whether a name is one that PlainNames gives for a full name.
func IsPlain(name, full string) bool {
	if at := strings.LastIndexByte(name, ' '); at > 0 {
		if k, err := strconv.Atoi(name[at+1:]); err == nil && k > 1 {
			name = name[:at]
		}
	}
	return name == full || name == Short(full)
}
