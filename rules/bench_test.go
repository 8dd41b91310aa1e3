package rules

import (
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// Run with: go test ./rules -run xxx -bench . -benchmem

func BenchmarkOpen(b *testing.B) {
	for b.Loop() {
		if _, err := Open("us", quantity.US, message.English()); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLook(b *testing.B) {
	e := openUS(b)
	job, _ := readJob(b, e, "../testdata/cases/P01.yaml")
	for b.Loop() {
		e.Judge(job, today).Evaluation(0, 0)
	}
}

func BenchmarkAssess(b *testing.B) {
	e := openUS(b)
	job, _ := readJob(b, e, "../testdata/cases/P01.yaml")
	for b.Loop() {
		e.Assess(job, today)
	}
}
