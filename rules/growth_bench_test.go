package rules

import (
	"fmt"
	"testing"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// Run with: go test ./rules -run xxx -bench Growth -benchtime 5x

// BenchmarkGrowthRooms is a whole assessment of so many rooms of the same kind.
func BenchmarkGrowthRooms(b *testing.B) {
	for _, n := range []int{5, 10, 20, 40} {
		b.Run(fmt.Sprint(n), func(b *testing.B) { benchAssess(b, "P01", func(j *assess.Job) { growRooms(j, n) }) })
	}
}

// BenchmarkGrowthLayers is a whole assessment of one floor with so many layers.
func BenchmarkGrowthLayers(b *testing.B) { benchLists(b, "P01", schema.ScopeLayer) }

// BenchmarkGrowthCracks is a whole assessment of one floor with so many cracks.
func BenchmarkGrowthCracks(b *testing.B) { benchLists(b, "P10", schema.ScopeCrack) }

func benchLists(b *testing.B, name string, list schema.Scope) {
	for _, n := range []int{10, 20, 40, 80, 160} {
		b.Run(fmt.Sprint(n), func(b *testing.B) { benchAssess(b, name, func(j *assess.Job) { growList(j, list, n) }) })
	}
}

func benchAssess(b *testing.B, name string, grow func(*assess.Job)) {
	e := openUS(b)
	job, _ := readJob(b, e, "../testdata/cases/"+name+".yaml")
	grow(job)
	for b.Loop() {
		e.Assess(job, today)
	}
}

// growRooms makes the one room into n of them.
func growRooms(j *assess.Job, n int) {
	room := j.Areas[0]
	j.Areas = nil
	for i := range n {
		room.ID = fmt.Sprintf("room-%d", i+1)
		j.Areas = append(j.Areas, room)
	}
}

// growList makes a list of n things, of which every second is a thing that
// nobody has said anything of.
func growList(j *assess.Job, list schema.Scope, n int) {
	zone := &j.Areas[0].Zones[0]
	first := zone.Lists[list][0].Answers
	zone.Lists[list] = nil
	for i := range n {
		item := assess.Item{ID: fmt.Sprintf("%c%d", list.String()[0], i+1), Answers: first}
		if i%2 == 1 {
			item.Answers = assess.Answers{}
		}
		zone.Lists[list] = append(zone.Lists[list], item)
	}
}
