package demand

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestABillOfSteps(t *testing.T) {
	bill, breaks, f := StepBill([]BillStep{{25, money("2.905"), money("100")}, {100, money("1.72"), money("100")}}, 2, "steps")
	require.Empty(t, f)
	assert.Equal(t, []int{25, 100}, breaks)
	_, ok := bill(24)
	assert.False(t, ok)
	for n, want := range map[int]string{25: "172.63", 99: "387.6", 100: "272", 300: "616"} {
		b, ok := bill(n)
		assert.True(t, ok)
		assert.Equal(t, want, b.String(), n)
	}
}

func TestBadStepsAreRefusedInWords(t *testing.T) {
	_, _, f := StepBill([]BillStep{{50, money("-1"), money("0")}, {50, money("1"), money("1e8")}, {0, money("1"), money("1")}}, 2, "steps")
	var fields []string
	for _, x := range f {
		fields = append(fields, x.Field)
	}
	assert.Equal(t, []string{"steps[0].each", "steps[1].from", "steps[1].once", "steps[2].from", "steps[2].from"}, fields)
	assert.Equal(t, "A step from 50 does not come after the one from 50; let them rise.", f[1].What)
	_, _, f = StepBill(nil, 2, "steps")
	require.Len(t, f, 1)
	assert.Equal(t, "A bill has 1 to 40 steps, not 0.", f[0].What)
}
