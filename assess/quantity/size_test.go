package quantity

import (
	"errors"
	"slices"
	"testing"
)

func TestReadSize(t *testing.T) {
	measuredSize := func(w, d float64) Section { return Section{"", Point(w), Point(d)} }
	cases := []struct {
		text string
		want Section
	}{
		{"2x10", Section{"2x10", Everything, Everything}},
		{`2"x10"`, Section{"2x10", Everything, Everything}},
		{"2 by 10", Section{"2x10", Everything, Everything}},
		{"2 × 10 in", Section{"2x10", Everything, Everything}},
		{"10x2", Section{"2x10", Everything, Everything}},
		{"3X8", Section{"3x8", Everything, Everything}},
		{"1.5x9.25", measuredSize(1.5, 9.25)},
		{"1-1/2 x 9-1/4 in", measuredSize(1.5, 9.25)},
		{"1½ x 9", measuredSize(1.5, 9)},
		{"full 2x10", measuredSize(2, 10)},
		{"47x220mm", measuredSize(235.0/127, 1100.0/127)},
		{"47 x 220", measuredSize(235.0/127, 1100.0/127)},
		{"220x47 mm", measuredSize(235.0/127, 1100.0/127)},
		{"1.5 in x 235 mm", measuredSize(1.5, 1175.0/127)},
	}
	for _, c := range cases {
		if got, err := ReadSize(c.text); err != nil || got != c.want {
			t.Errorf("ReadSize(%q) = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

func TestReadSizeAsksBack(t *testing.T) {
	cases := []struct {
		text string
		want []string
	}{
		{"2x9", []string{"2x8", "2x10", "1-1/2 x 9 in"}},
		{"2x15", []string{"2x14", "2x16", "1-1/2 x 15 in"}},
		{"1x1", []string{"1x2", "full 1x1"}},
		{"4x9", []string{"4x8", "4x10", "full 4x9"}},
		{"5x10", []string{"4x10", "full 5x10"}},
	}
	for _, c := range cases {
		_, err := ReadSize(c.text)
		var unclear *Unclear
		if !errors.As(err, &unclear) || !slices.Equal(unclear.Readings, c.want) {
			t.Errorf("ReadSize(%q) gave %v, want the readings %q", c.text, err, c.want)
			continue
		}
		for _, reading := range unclear.Readings {
			if _, err := ReadSize(reading); err != nil {
				t.Errorf("the reading %q of %q is refused: %v", reading, c.text, err)
			}
		}
	}
}

func TestReadSizeRefuses(t *testing.T) {
	for _, text := range []string{"", "2", "2x", "x10", "2x10x12", "0x10", "2x40", "-2x10", "2x1,000", "2x10 ft", "900x900", "2x\x0010"} {
		_, err := ReadSize(text)
		var malformed *Malformed
		if !errors.As(err, &malformed) {
			t.Errorf("ReadSize(%q) gave %v, want a refusal", text, err)
		}
	}
}
