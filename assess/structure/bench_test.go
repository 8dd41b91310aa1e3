package structure

import "testing"

// Run with: go test ./assess/structure -run xxx -bench . -benchmem

func BenchmarkAnalyze(b *testing.B) {
	for b.Loop() {
		Analyze(kitchen(), Loads{}, BoundFor("ceramic", us), us)
	}
}

func BenchmarkOptions(b *testing.B) {
	for b.Loop() {
		Options(kitchen(), Loads{}, BoundFor("ceramic", us), us)
	}
}
