package rules

import (
	"flag"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/rules/judge"
)

var update = flag.Bool("update", false, "write the goldens anew")

const regionsFile = "../testdata/regions.txt"

// regionalFloors are shown in every region.
var regionalFloors = []string{"../testdata/regions/tile-on-mortar.yaml", "../testdata/regions/sheet-vinyl.yaml", "../testdata/regions/own-sum.yaml"}

// unitsOf are the units that a region measures in.
func unitsOf(region string) quantity.System {
	if region == "us" {
		return quantity.US
	}
	return quantity.Metric
}

// TestRegions shows for one and the same floor what each region changes: a
// table for people to read, and to argue with.
func TestRegions(t *testing.T) {
	var b strings.Builder
	b.WriteString("What a region changes. Written by the tests of package rules; the floors stand in testdata/regions.\n")
	for _, name := range regionalFloors {
		writeFloor(t, &b, name)
	}
	writeSubjects(t, &b)
	writeFigures(&b)
	got := b.String()
	if *update {
		if err := os.WriteFile(regionsFile, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(regionsFile)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s is not what the rules say; look at what -update changes\n%s", regionsFile, got)
	}
}

// writeFloor prints one floor: what all regions say, then each region's own.
func writeFloor(t *testing.T, b *strings.Builder, name string) {
	all, heads, title := map[string][]string{}, map[string]string{}, ""
	for _, region := range figure.Regions {
		e, err := Open(region, unitsOf(region), message.English())
		if err != nil {
			t.Fatal(err)
		}
		job, text := readJob(t, e, name)
		job.Region = region
		title, _, _ = strings.Cut(strings.TrimPrefix(text, "# "), "\n")
		r, evaluation := e.Assess(job, today), e.Judge(job, today).Evaluation(0, 0)
		heads[region] = fmt.Sprintf("%s, %s leads", evaluation.Span.Verdict(), evaluation.Lead)
		if evaluation.LeadRuling != nil {
			heads[region] += " by " + evaluation.LeadRuling.FindingID()
		}
		all[region] = regionLines(r, evaluation)
	}
	common := inAll(all)
	fmt.Fprintf(b, "\n%s\n%s\neverywhere\n%s", title, strings.Repeat("=", len(title)), indented(common, nil))
	writeGroups(b, "", func(region string) string { return heads[region] + "\n" + indented(all[region], common) })
}

// writeGroups prints a text for each region, once for those that have the same.
func writeGroups(b *strings.Builder, indent string, text func(region string) string) {
	var done []string
	for i, region := range figure.Regions {
		said := text(region)
		if slices.Contains(done, said) {
			continue
		}
		done = append(done, said)
		names := []string{region}
		for _, other := range figure.Regions[i+1:] {
			if text(other) == said {
				names = append(names, other)
			}
		}
		fmt.Fprintf(b, "%s%s: %s", indent, strings.Join(names, " "), said)
	}
}

// indented are lines that are not among some others.
func indented(lines, without []string) string {
	out := ""
	for _, line := range lines {
		if !slices.Contains(without, line) {
			out += "    " + line + "\n"
		}
	}
	return out
}

// regionLines is what a region says of a floor: rules that take effect, wait or
// add a note, sums, cautions and plan.
func regionLines(r *result.Result, evaluation *judge.Evaluation) []string {
	var out []string
	for i := range evaluation.Rulings {
		u := &evaluation.Rulings[i]
		switch {
		case u.Rule.IsPermit():
		case !u.Rule.IsTrouble() && u.Proven():
			out = append(out, "notes    "+u.Rule.ID)
		case !u.Rule.IsTrouble():
		case u.Presumed():
			out = append(out, "presumes "+u.FindingID())
		case u.Proven():
			out = append(out, "finds    "+u.FindingID())
		case u.Waits():
			out = append(out, "asks     "+u.FindingID())
		}
	}
	for _, c := range r.Areas[0].Checks {
		if strings.HasPrefix(c.ID, "joist.ratio") {
			out = append(out, fmt.Sprintf("sum      %s %s", c.ID, c.Outcome))
		}
	}
	for _, c := range r.Areas[0].Cautions {
		out = append(out, "warns    "+c.ID)
	}
	for _, s := range r.Areas[0].Zones[0].Plan {
		out = append(out, "plan     "+s.Path.String())
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// inAll are the lines that every region has.
func inAll(all map[string][]string) []string {
	return slices.DeleteFunc(slices.Clone(all[figure.Regions[0]]), func(line string) bool {
		return slices.ContainsFunc(slices.Collect(maps.Values(all)), func(list []string) bool { return !slices.Contains(list, line) })
	})
}

// writeFigures prints the figures that some region has a value of its own for.
func writeFigures(b *strings.Builder) {
	b.WriteString("\nFigures that differ\n===================\n")
	tables := map[string]*figure.Table{}
	for _, region := range figure.Regions {
		tables[region] = figure.For(region, unitsOf(region))
	}
	for _, id := range tables["us"].IDs() {
		us, _ := tables["us"].Figure(id)
		differs := slices.ContainsFunc(figure.Regions, func(region string) bool {
			f, _ := tables[region].Figure(id)
			return f.Value != us.Value || f.Source != us.Source
		})
		if !differs {
			continue
		}
		fmt.Fprintf(b, "%s: %s\n", id, us.What())
		writeGroups(b, "    ", func(region string) string {
			f, _ := tables[region].Figure(id)
			value := quantity.Write(f.Dimension, quantity.Point(f.Value), unitsOf(region))
			return fmt.Sprintf("%s; %s: %s (%s)\n", value, f.Source.Known, f.Source.Title, f.Source.Edition)
		})
	}
}
