package result

import "testing"

// The order of weights is this program's own: from nothing over a note, a look
// before the work, a held verdict and a presumed trouble to a proven one.
func TestChangeOf(t *testing.T) {
	holds, off := &Finding{Outcome: Holds}, &Finding{Outcome: NotApplicable}
	note, verify, hold := &Finding{Outcome: NotSettled, Policy: "note"}, &Finding{Outcome: NotSettled, Policy: "verify"}, &Finding{Outcome: NotSettled, Policy: "hold"}
	presumed, fails := &Finding{Outcome: Fails, Presumed: true}, &Finding{Outcome: Fails}
	order := []*Finding{holds, note, verify, hold, presumed, fails}
	for i, a := range order {
		if a.Compared() != i {
			t.Errorf("%+v weighs %d, want %d", a, a.Compared(), i)
		}
	}
	for _, tt := range []struct {
		old, now *Finding
		want     Change
	}{
		{nil, fails, New}, {holds, note, New}, {off, presumed, New},
		{fails, holds, Cured}, {verify, holds, Cured},
		{fails, nil, Gone}, {hold, off, Gone},
		{fails, fails, Unchanged}, {verify, verify, Unchanged},
		{verify, hold, Worse}, {presumed, fails, Worse},
		{fails, presumed, Better}, {hold, note, Better},
	} {
		if got := ChangeOf(tt.old, tt.now); got != tt.want {
			t.Errorf("from %+v to %+v is %s, want %s", tt.old, tt.now, got, tt.want)
		}
	}
}
