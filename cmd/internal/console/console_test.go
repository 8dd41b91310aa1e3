package console

import (
	"errors"
	"io"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	"underfoot/assess"
)

func environment(pairs ...string) func(string) string {
	return func(key string) string {
		for _, p := range pairs {
			if k, v, _ := strings.Cut(p, "="); k == key {
				return v
			}
		}
		return ""
	}
}

func TestColor(t *testing.T) {
	for _, c := range []struct {
		name     string
		terminal bool
		flag     bool
		env      []string
		want     bool
	}{
		{"a terminal", true, false, []string{"TERM=xterm"}, true},
		{"not a terminal", false, false, nil, false},
		{"the flag", true, true, nil, false},
		{"NO_COLOR", true, false, []string{"NO_COLOR=1"}, false},
		{"NO_COLOR empty counts as not set", true, false, []string{"NO_COLOR="}, true},
		{"a dumb terminal", true, false, []string{"TERM=dumb"}, false},
	} {
		s := Over(strings.NewReader(""), io.Discard, io.Discard, environment(c.env...))
		s.outTerminal = c.terminal
		if c.flag {
			s.NoColor()
		}
		if got := s.Color(); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

func TestPlainMode(t *testing.T) {
	for _, c := range []struct {
		in, out bool
		env     string
		want    bool
	}{
		{true, true, "TERM=xterm", false},
		{false, true, "", true},
		{true, false, "", true},
		{true, true, "TERM=dumb", true},
		{true, true, "ACCESSIBLE=1", true},
		{true, true, "ACCESSIBLE=0", false},
	} {
		s := Over(nil, io.Discard, io.Discard, environment(c.env))
		s.inTerminal, s.outTerminal = c.in, c.out
		if got := s.PlainMode(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}

func TestWidth(t *testing.T) {
	for env, want := range map[string]int{"": 80, "COLUMNS=120": 120, "COLUMNS=3": 20, "COLUMNS=wide": 80, "COLUMNS=-1": 80} {
		if got := Over(nil, io.Discard, io.Discard, environment(env)).Width(); got != want {
			t.Errorf("%q: %d, want %d", env, got, want)
		}
	}
}

// TestSystem: under a test none of the streams of the process is a terminal
// that it could mistake for one.
func TestSystem(t *testing.T) {
	s := System(true)
	if s.In != os.Stdin || s.Out.Unwrap() != os.Stdout || s.Err != os.Stderr || s.Color() {
		t.Errorf("%+v", s)
	}
}

// failing takes some bytes and then fails.
type failing struct {
	room int
	err  error
}

func (f *failing) Write(p []byte) (int, error) {
	if len(p) > f.room {
		n := f.room
		f.room = 0
		return n, f.err
	}
	f.room -= len(p)
	return len(p), nil
}

func TestCheckedRemembers(t *testing.T) {
	below := &failing{room: 5, err: syscall.ENOSPC}
	out := Over(nil, below, io.Discard, environment()).Out
	if _, err := out.Write([]byte("four")); err != nil || out.Problem() != nil {
		t.Fatal(err)
	}
	_, _ = out.Write([]byte("and more"))
	below.room = 100
	if n, err := out.Write([]byte("after")); n != 0 || !errors.Is(err, syscall.ENOSPC) {
		t.Errorf("%d %v: after an error nothing more is written", n, err)
	}
	var p *assess.Problem
	if !errors.As(out.Problem(), &p) || p.Kind != assess.IO {
		t.Errorf("%v", out.Problem())
	}
}

func TestCheckedShortWriteIsAnError(t *testing.T) {
	out := Over(nil, &failing{room: 2}, io.Discard, environment()).Out
	if _, err := out.Write([]byte("four")); !errors.Is(err, io.ErrShortWrite) {
		t.Error(err)
	}
}

func TestReaderThatLeftIsNoProblem(t *testing.T) {
	out := Over(nil, &failing{err: &os.PathError{Op: "write", Err: syscall.EPIPE}}, io.Discard, environment()).Out
	if _, err := out.Write([]byte("x")); err == nil || out.Problem() != nil {
		t.Errorf("%v, %v", err, out.Problem())
	}
}

func TestToday(t *testing.T) {
	evening := func() time.Time { return time.Date(2026, 5, 4, 23, 30, 0, 0, time.FixedZone("west", -7*3600)) }
	for _, c := range []struct {
		name, flag, epoch string
		want              assess.Day // empty: refused
	}{
		{"the clock's local day", "", "", "2026-05-04"},
		{"the flag", "2025-12-31", "1", "2025-12-31"},
		// 86400 s are one day: the reproducible-builds specification of SOURCE_DATE_EPOCH counts from 1970-01-01 UTC.
		{"the environment", "", "86399", "1970-01-01"},
		{"the environment, next day", "", "86400", "1970-01-02"},
		{"the last day of four digits", "", "253402300799", "9999-12-31"},
		{"no day", "2025-02-30", "", ""},
		{"the wrong order", "31.12.2025", "", ""},
		{"no number", "", "today", ""},
		{"before 1970", "", "-1", ""},
		{"five digits of year", "", "253402300800", ""},
	} {
		s := Over(nil, io.Discard, io.Discard, environment("SOURCE_DATE_EPOCH="+c.epoch))
		got, err := s.Today(c.flag, evening)
		if got != c.want || (err != nil) != (c.want == "") {
			t.Errorf("%s: %q, %v", c.name, got, err)
		}
		var p *assess.Problem
		if err != nil && (!errors.As(err, &p) || p.Kind != assess.Usage) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}
