package record_test

import (
	"os"
	"testing"

	"underfoot/assess"
	"underfoot/assess/record"
)

// Run with: go test ./assess/record -run - -bench .

func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("../../testdata/cases/P01.yaml")
	if err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(len(data)))
	v := values()
	for b.Loop() {
		if _, err := record.Read(data, "record.yaml", v); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadJSON(b *testing.B) {
	d := parse(b, `{"format": "underfoot.assessment/1"}`)
	_, from := load(b, "../../testdata/cases/P01.yaml")
	base, err := record.Read(from, "record.yaml", values())
	if err != nil {
		b.Fatal(err)
	}
	full, _, err := record.Merge(parse(b, `{"format": "underfoot.assessment/1"}`), base, d)
	if err != nil {
		b.Fatal(err)
	}
	data := []byte(bytesOf(b, full))
	b.SetBytes(int64(len(data)))
	v := values()
	for b.Loop() {
		if _, err := record.Read(data, "record.json", v); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAnswerToBytes(b *testing.B) {
	d := parse(b, kitchen)
	addr := address(b, "joist.span")
	for i := 0; b.Loop(); i++ {
		if err := d.Put(addr, assess.Answer{Text: []string{"12 ft", "13 ft"}[i%2]}); err != nil {
			b.Fatal(err)
		}
		if _, err := d.Bytes(); err != nil {
			b.Fatal(err)
		}
	}
}
