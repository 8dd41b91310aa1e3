package screen

import (
	"context"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"underfoot/assess/message"
	"underfoot/rules/interview"
)

func interviewOf(t *testing.T, in io.Reader, addresses ...string) *Interview {
	return &Interview{
		In: in, Out: io.Discard, Language: message.English(),
		Session: interview.New(sit(t, wants(t, "zone.base")).Session.Job, openEngine(t).Catalogue, message.English(), wants(t, addresses...).judge),
		Save:    func([]interview.Change) error { return nil },
	}
}

func TestRunEnds(t *testing.T) {
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	hungUp, end, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := end.Close(); err != nil {
		t.Fatal(err)
	}
	silent, _ := io.Pipe()
	for _, c := range []struct {
		name string
		ctx  context.Context
		in   io.Reader
		want error
	}{
		{"interrupt", t.Context(), strings.NewReader("\x03"), context.Canceled},
		{"leave", t.Context(), strings.NewReader("\x11"), ErrStopped},
		{"end of the input", t.Context(), strings.NewReader(""), ErrStopped},
		{"a terminal that hung up", t.Context(), hungUp, ErrStopped},
		{"told to stop from outside", gone, silent, context.Canceled},
	} {
		if err := interviewOf(t, c.in, "joist.span").Run(c.ctx); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
	if err := interviewOf(t, silent).Run(t.Context()); err != nil {
		t.Errorf("nothing to ask: %v", err)
	}
}

// TestAKeyIsShownInAFrame holds the time from a key to the drawn window, the
// answer and the next question included, to a generous multiple of a frame of
// 16 ms; the benchmark measures it.
func TestAKeyIsShownInAFrame(t *testing.T) {
	s := sit(t, real{openEngine(t)})
	s.Update(rested(s.rests))
	start := time.Now()
	s.slam("enter")
	_ = s.View()
	if took := time.Since(start); took > 160*time.Millisecond {
		t.Errorf("took %v", took)
	}
}

func BenchmarkKeyToFrame(b *testing.B) {
	s := sit(b, real{openEngine(b)})
	for b.Loop() {
		s.slam("down")
		_ = s.View()
	}
}

func BenchmarkAnswerToNextFrame(b *testing.B) {
	s := sit(b, real{openEngine(b)})
	for b.Loop() {
		s.press("enter", "esc")
		_ = s.View()
	}
}
