package record_test

import (
	"fmt"
	"maps"
	"math/bits"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/record"
	"underfoot/assess/schema"
)

// freeText are texts that YAML could take for something else.
var freeText = rapid.SampledFrom([]string{"", "tape", "- dash", "a: b", "# no comment", "null", "~", "yes", "1998", "2026-05-04", "*star", "&and",
	"!bang", "{brace", "[bracket", "'single'", "\"double\"", "two\nlines", "ends with a break\n", " spaces ", "größer", "漢字", "tab\there", "a, b", "true", "0x1F", "%", "@", "`"})

// answerFor draws an answer that a fact can have.
func answerFor(t *rapid.T, d *schema.Declaration) assess.Answer {
	ans := assess.Answer{
		Reply:  assess.Reply(rapid.SampledFrom([]int{0, 0, 0, 1, 2, 3}).Draw(t, "reply")),
		Basis:  assess.Basis(rapid.IntRange(0, 5).Draw(t, "basis")),
		With:   freeText.Draw(t, "with"),
		Note:   freeText.Draw(t, "note"),
		On:     rapid.SampledFrom([]assess.Day{"", "2026-05-04", "1999-12-31"}).Draw(t, "on"),
		Photos: rapid.SliceOfN(freeText, 0, 2).Draw(t, "photos"),
	}
	if rapid.Bool().Draw(t, "bare") {
		ans = assess.Answer{Reply: ans.Reply}
	}
	if ans.Reply == assess.Given {
		ans.Text = textFor(t, d)
	}
	return ans
}

func textFor(t *rapid.T, d *schema.Declaration) string {
	switch d.Kind {
	case schema.KindText:
		return rapid.SampledFrom([]string{"2x10", "47x220mm", "- 2x10", "null"}).Draw(t, "text")
	case schema.KindQuantity:
		return values().Write(d, schema.Set{Range: rangeFor(t, d)}, quantity.US)
	}
	mask := rapid.Uint64Range(1, 1<<len(d.Choices)-1).Draw(t, "mask")
	if bits.OnesCount64(mask) > 3 {
		mask = 1
	}
	return strings.Join(schema.Set{Mask: mask}.Words(d), ", ")
}

func rangeFor(t *rapid.T, d *schema.Declaration) quantity.Range {
	lo := max(d.Bounds.Lo, 2)
	if d.Dimension == quantity.Year {
		lo = 1950
	}
	n := float64(rapid.IntRange(0, 20).Draw(t, "steps"))
	return quantity.Range{Lo: lo, Hi: lo + n}
}

// answerable are the facts that a document takes answers to.
func answerable() []*schema.Declaration {
	var out []*schema.Declaration
	all := values().Schema().All()
	for i := range all {
		if all[i].Nature != schema.Derived {
			out = append(out, &all[i])
		}
	}
	return out
}

// change makes one random change to a document.
func change(t *rapid.T, d *record.Document) {
	areas := []string{"kitchen", "hall"}
	zones := []string{"main", "patch"}
	area, zone := rapid.SampledFrom(areas).Draw(t, "area"), rapid.SampledFrom(zones).Draw(t, "zone")
	item := schema.Address{Area: area, Zone: zone, Topic: rapid.SampledFrom([]string{"layer", "crack"}).Draw(t, "list"), Item: fmt.Sprintf("i%d", rapid.IntRange(1, 3).Draw(t, "item"))}
	switch rapid.IntRange(0, 8).Draw(t, "change") {
	case 0:
		_ = d.AddArea(area, freeText.Draw(t, "name"))
	case 1:
		_ = d.AddZone(area, zone)
	case 2:
		_ = d.DropItem(item)
	case 3:
		_ = d.PutFamily(area, zone, rapid.SampledFrom([]string{"danger", "water", "work", "joist.trouble"}).Draw(t, "family"),
			assess.Answer{Reply: assess.Reply(rapid.IntRange(0, 1).Draw(t, "reply"))})
	case 4:
		_ = d.Put(schema.Address{Area: area, Zone: zone, Topic: item.Topic, Field: "complete"},
			assess.Answer{Text: rapid.SampledFrom([]string{"yes", "no"}).Draw(t, "complete")})
	case 5:
		if job := d.Job(); len(job.Areas) > 0 && len(job.Areas[0].Zones) > 0 {
			names := append(slices.Sorted(maps.Keys(job.Areas[0].Zones[0].Answers)), "zone.base")
			topic, field, _ := strings.Cut(rapid.SampledFrom(names).Draw(t, "forget"), ".")
			d.Forget(schema.Address{Area: job.Areas[0].ID, Zone: job.Areas[0].Zones[0].ID, Topic: topic, Field: field})
		}
	default:
		decl := rapid.SampledFrom(answerable()).Draw(t, "fact")
		addr, _ := schema.ParseAddress(decl.ID)
		if decl.Scope.Listed() {
			addr.Item = item.Item
		}
		if decl.Scope != schema.ScopeJob {
			addr.Area = area
		}
		if decl.Scope != schema.ScopeJob && decl.Scope != schema.ScopeArea {
			addr.Zone = zone
		}
		_ = d.Put(addr, answerFor(t, decl))
	}
}

// rearrange takes a room or a zone out of a document, renames one, or changes
// the header.
func rearrange(t *rapid.T, d *record.Document) {
	areas := []string{"kitchen", "hall"}
	area := rapid.SampledFrom(areas).Draw(t, "area")
	switch rapid.IntRange(0, 3).Draw(t, "rearrange") {
	case 0:
		_ = d.DropZone(area, "main")
	case 1:
		_ = d.DropArea(area)
	case 2:
		_ = d.RenameArea(area, rapid.SampledFrom(areas).Draw(t, "new id"), freeText.Draw(t, "new name"))
	default:
		_ = d.SetHeader(rapid.SampledFrom([]string{"", "us", "de"}).Draw(t, "region"), rapid.SampledFrom([]string{"", "us", "mm"}).Draw(t, "units"), "")
	}
}

// changed is a document after some random changes.
func changed(t *rapid.T, d *record.Document, most int) *record.Document {
	for range rapid.IntRange(0, most).Draw(t, "changes") {
		change(t, d)
	}
	return d
}
