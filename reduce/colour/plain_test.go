package colour

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShortNames(t *testing.T) {
	for name, short := range map[string]string{
		"brilliant orange yellow": "orange yellow", "strong blue": "blue", "vivid yellowish green": "yellowish green", "medium grey": "grey",
		"moderate olive brown": "olive brown",
		// these say more than how full a colour is
		"light bluish green": "light bluish green", "very dark purple": "very dark purple", "deep red": "deep red", "pale yellow": "pale yellow",
		"greyish blue": "greyish blue", "yellowish white": "yellowish white", "black": "black",
	} {
		assert.Equal(t, short, Short(name))
	}
	for i := range named { // no name is left without a hue
		assert.NotEmpty(t, Short(named[i].name))
		assert.NotContains(t, named[i].name, "#")
	}
}

// Each is short only where no other is called the same.
func TestPlainNamesSideBySide(t *testing.T) {
	all := func(names ...string) []string {
		plain := make([]bool, len(names))
		for i := range plain {
			plain[i] = true
		}
		return PlainNames(names, plain)
	}
	assert.Equal(t, []string{"blue", "orange yellow", "dark blue"}, all("strong blue", "brilliant orange yellow", "dark blue"))
	assert.Equal(t, []string{"strong blue", "vivid blue", "red"}, all("strong blue", "vivid blue", "strong red"))
	assert.Equal(t, []string{"strong blue", "strong blue 2", "strong blue 3"}, all("strong blue", "strong blue", "strong blue"))
	assert.Equal(t, []string{"dark grey 2", "dark grey"}, PlainNames([]string{"dark grey", "dark grey"}, []bool{true, false}))
	for _, name := range []string{"strong blue", "blue", "strong blue 2", "blue 3"} {
		assert.True(t, IsPlain(name, "strong blue"), name)
	}
	for _, name := range []string{"blue 1", "blue x", "sea blue", "strong"} {
		assert.False(t, IsPlain(name, "strong blue"), name)
	}
	// One named by hand keeps its name, and others keep clear of it.
	assert.Equal(t, []string{"strong blue", "blue"}, PlainNames([]string{"strong blue", "blue"}, []bool{true, false}))
	assert.Equal(t, []string{"blue", "strong tea"}, PlainNames([]string{"strong blue", "strong tea"}, []bool{true, false}))
	assert.Empty(t, all())
}
