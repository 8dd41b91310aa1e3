package cli

import (
	"context"
	"errors"
	"fmt"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/cmd/internal/line"
	"underfoot/rules/interview"
)

// The codes are those that `help exit-codes` tells.
func TestExitCodes(t *testing.T) {
	kind := func(k assess.ProblemKind) *assess.Problem {
		return &assess.Problem{Kind: k, What: message.Verbatim("x")}
	}
	for _, c := range []struct {
		name string
		err  error
		want int
	}{
		{"nothing wrong", nil, 0},
		{"a fault of the program", errors.New("x"), 1},
		{"an internal problem", kind(assess.Internal), 1},
		{"usage", kind(assess.Usage), 2},
		{"stopped", fmt.Errorf("around: %w", line.ErrStopped), 3},
		{"an alarm", &interview.Alarm{}, 3},
		{"the gate", errGate, 4},
		{"an invalid file", kind(assess.Invalid), 5},
		{"changed by somebody else", kind(assess.Conflict), 6},
		{"no such file", kind(assess.IO), 7},
		{"interrupted", fmt.Errorf("around: %w", context.Canceled), 130},
		{"several: the highest", assess.Problems{kind(assess.Usage), kind(assess.IO), kind(assess.Invalid)}, 7},
		{"told already", &reported{kind(assess.Invalid)}, 5},
	} {
		if got := codeOf(c.err); got != c.want {
			t.Errorf("%s: %d, want %d", c.name, got, c.want)
		}
	}
}
