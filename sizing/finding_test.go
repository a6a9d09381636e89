package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"badgewright/sizing/unit"
)

func TestJudgeGivesThreeVerdicts(t *testing.T) {
	for _, c := range []struct {
		measured, err, limit unit.MM
		want                 Verdict
	}{
		{0.30, 0.01, 0.20, Holds},
		{0.10, 0.01, 0.20, Fails},
		{0.20, 0.01, 0.20, Holds},
		{0.195, 0.01, 0.20, Holds}, // at the limit, as far as a fine measure can say
		{0.185, 0.01, 0.20, Fails},
		{0.19, 0.08, 0.20, CannotTell},
		{0.22, 0.08, 0.20, CannotTell},
		{0.05, 0.08, 0.20, Fails}, // too coarse to say how thin, but thin for sure
		{0.40, 0.08, 0.20, Holds},
	} {
		assert.Equal(t, c.want, Judge(c.measured, c.err, c.limit), "%+v", c)
	}
}
