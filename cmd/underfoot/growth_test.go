package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// most is the greatest power that is allowed.
const most = 1.15

// TestGrowth measures whole processes of `assess --json` on records of so many
// rooms, layers or cracks, and prints by which power of their number the time
// grows once the start of the program is taken off. It runs where
// UNDERFOOT_GROWTH says how often to measure each; the least time counts.
func TestGrowth(t *testing.T) {
	var times int
	if _, err := fmt.Sscan(os.Getenv("UNDERFOOT_GROWTH"), &times); err != nil {
		t.Skip("set UNDERFOOT_GROWTH to how often to measure")
	}
	dir := t.TempDir()
	program := filepath.Join(dir, "underfoot")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, series := range []struct {
		name   string
		sizes  []int
		record func(n int) string
	}{
		{"rooms", []int{5, 10, 20, 40}, rooms},
		{"layers", []int{10, 20, 40, 80, 160}, layers},
		{"cracks", []int{10, 20, 40, 80, 160}, cracks},
	} {
		start := processTime(t, program, dir, rooms(0), 5*times)
		var points [][2]float64
		for _, n := range series.sizes {
			took := processTime(t, program, dir, series.record(n), times)
			t.Logf("%4d %-6s %8.1f ms, start %.1f ms", n, series.name, took, start)
			points = append(points, [2]float64{math.Log(float64(n)), math.Log(took - start)})
		}
		power := slope(points)
		t.Logf("%s: exponent %.3f", series.name, power)
		if math.IsNaN(power) || power > most {
			t.Errorf("%s: time grows by the power %.3f, at most %.2f is allowed", series.name, power, most)
		}
	}
}

// processTime is the least processor time of a process, in milliseconds: other
// work on the machine does not count.
func processTime(t *testing.T, program, dir, record string, times int) float64 {
	t.Helper()
	name := filepath.Join(dir, "record.yaml")
	if err := os.WriteFile(name, []byte(record), 0o600); err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for range times {
		c := exec.Command(program, "assess", "--json", "--today", "2026-05-04", name)
		if out, err := c.CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, out)
		}
		took := c.ProcessState.UserTime() + c.ProcessState.SystemTime()
		least = min(least, float64(took)/float64(time.Millisecond))
	}
	return least
}

// slope is that of the line of least squares.
func slope(points [][2]float64) float64 {
	var x, y, xx, xy float64
	for _, p := range points {
		x, y, xx, xy = x+p[0], y+p[1], xx+p[0]*p[0], xy+p[0]*p[1]
	}
	n := float64(len(points))
	return (n*xy - x*y) / (n*xx - x*x)
}

const recordHead = "format: underfoot.assessment/1\nregion: us\nunits: us\nvisited: 2026-05-04\nareas:\n"

// room is one room with some answers to its zone and a list.
func room(id, base, list string) string {
	return "  - id: " + id + "\n    zones:\n      - id: main\n        answers:\n          danger: none\n          zone.base: " + base + "\n" + list
}

// rooms are n rooms that know little; without one nothing is judged but an
// empty record, which is the start of the program.
func rooms(n int) string {
	if n == 0 {
		return recordHead + room("bare", "slab-on-ground", "          water: none\n")
	}
	var b bytes.Buffer
	b.WriteString(recordHead)
	for i := range n {
		b.WriteString(room(fmt.Sprintf("room-%d", i+1), "joists", listOf("layer", 2, "layer.kind: sheet-vinyl, layer.held: full-glue")))
	}
	return b.String()
}

func layers(n int) string {
	return recordHead + room("den", "joists", listOf("layer", n, "layer.kind: sheet-vinyl, layer.held: full-glue"))
}

func cracks(n int) string {
	return recordHead + room("den", "slab-on-ground", listOf("crack", n, "crack.kind: crack, crack.width: 1/8 in"))
}

// listOf is a list of n things, of which every second says nothing.
func listOf(list string, n int, says string) string {
	var b bytes.Buffer
	fmt.Fprintf(&b, "        %s:\n          complete: yes\n          items:\n", list)
	for i := range n {
		said := ""
		if i%2 == 0 {
			said = ", " + says
		}
		fmt.Fprintf(&b, "            - {id: i%d%s}\n", i+1, said)
	}
	return b.String()
}
