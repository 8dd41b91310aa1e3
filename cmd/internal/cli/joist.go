package cli

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/structure"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/text"
)

// joistFlags are the words of one joist as they stand on the command line.
type joistFlags struct {
	member, size, species, grade, spacing, span, continuity, overhang string
	live, dead, point, limit, tile                                    string
	testWeight, testDrop, testPlace, testWith                         string
	testAlike                                                         int
	wet, incised, asJSON                                              bool
}

func (a *app) joistCommand() *cobra.Command {
	var f joistFlags
	c := a.describe(&cobra.Command{
		Use:  "joist",
		Args: none(message.New("cli/joist.arguments")),
		RunE: func(c *cobra.Command, _ []string) error { return a.joist(&f, c.Flags()) },
	}, "cli/joist.help.")
	p := c.Flags()
	p.StringVar(&f.member, "member", "sawn-lumber", a.say("cli/joist.flag.member"))
	p.StringVar(&f.size, "size", "", a.say("cli/joist.flag.size"))
	p.StringVar(&f.species, "species", "", a.say("cli/joist.flag.species"))
	p.StringVar(&f.grade, "grade", "", a.say("cli/joist.flag.grade"))
	p.StringVar(&f.spacing, "spacing", "", a.say("cli/joist.flag.spacing"))
	p.StringVar(&f.span, "span", "", a.say("cli/joist.flag.span"))
	p.StringVar(&f.continuity, "continuity", "one-span", a.say("cli/joist.flag.continuity"))
	p.StringVar(&f.overhang, "overhang", "", a.say("cli/joist.flag.overhang"))
	p.StringVar(&f.live, "live", "40", a.say("cli/joist.flag.live"))
	p.StringVar(&f.dead, "dead", "10", a.say("cli/joist.flag.dead"))
	p.StringVar(&f.point, "point", "", a.say("cli/joist.flag.point"))
	p.StringVar(&f.limit, "limit", "", a.say("cli/joist.flag.limit"))
	p.StringVar(&f.tile, "tile", "ceramic", a.say("cli/joist.flag.tile"))
	p.BoolVar(&f.wet, "wet", false, a.say("cli/joist.flag.wet"))
	p.BoolVar(&f.incised, "incised", false, a.say("cli/joist.flag.incised"))
	p.StringVar(&f.testWeight, "test-weight", "", a.say("cli/joist.flag.test_weight"))
	p.StringVar(&f.testDrop, "test-drop", "", a.say("cli/joist.flag.test_drop"))
	p.StringVar(&f.testPlace, "test-place", "", a.say("cli/joist.flag.test_place"))
	p.StringVar(&f.testWith, "test-with", "dial-gauge", a.say("cli/joist.flag.test_with"))
	p.IntVar(&f.testAlike, "test-alike", 1, a.say("cli/joist.flag.test_alike"))
	p.BoolVar(&f.asJSON, "json", false, a.say("cli/joist.flag.json"))
	a.completeJoist(c)
	return c
}

func (a *app) completeJoist(c *cobra.Command) {
	for flag, words := range map[string][]string{
		"species": figure.Species(), "size": figure.Sizes(), "continuity": {"one-span", "two-spans", "three-spans"},
		"grade":  append(slices.Concat(grades()...), figure.Grades("")...),
		"member": {"sawn-lumber", "i-joist", "open-web-truss", "lvl", "glulam", "steel-joist"}, "test-with": {"dial-gauge", "laser", "string"},
		"tile": {"ceramic", "porcelain", "natural-stone"},
	} {
		slices.Sort(words)
		completeFlag(c, flag, slices.Compact(words))
	}
}

func grades() [][]string {
	var all [][]string
	for _, s := range figure.Species() {
		all = append(all, figure.Grades(s))
	}
	return all
}

// joist reads the flags, computes, and prints.
func (a *app) joist(f *joistFlags, given *pflag.FlagSet) error {
	e, err := a.bare()
	if err != nil {
		return err
	}
	r := &joistReader{app: a, flags: f, catalogue: e.Catalogue}
	given.Visit(r.refuseNothing)
	m, loads := r.member(), r.loads()
	table := figure.For(a.region, a.system())
	bound := r.bound(table)
	test, tested := r.test()
	if err := r.problems.Err(); err != nil {
		return err
	}
	var measured structure.Measured
	if tested {
		measured = structure.Measure(m, loads, test, table)
	}
	sheet := joistSheet(measured.Of(m), loads, bound, table)
	if tested {
		r.addTest(sheet, measured)
	}
	sheet.Inputs, sheet.Language = r.inputs, a.language
	if f.asJSON {
		return data.WriteJoist(a.Out, sheet)
	}
	if picture := reports.JoistDrawing(sheet, a.Width(), a.system()); picture != "" {
		fmt.Fprintln(a.Out, picture)
	}
	v := reports.NewJoistView(sheet, reports.Options{Units: a.system()})
	return text.Write(a.Out, v, text.Options{Width: a.Width(), Color: a.Color(), All: true})
}

// joistSheet is the analysis as a reader gets it.
func joistSheet(m structure.Member, loads structure.Loads, b structure.Bound, t *figure.Table) *result.JoistSheet {
	an := structure.Analyze(m, loads, b, t)
	s := &result.JoistSheet{Outcome: an.Outcome, Refusal: an.Refusal, Deflection: an.Deflection, LongTerm: an.LongTerm,
		Live: an.Live, Total: an.Total, Limit: an.Bound.Ratio, Least: an.Least, Margin: an.Margin, Span: m.Span, LimitLoad: "live",
		Share: an.Share, Bending: an.Bending, Shear: an.Shear, Deciding: an.Deciding.Text, Assumed: an.Assumed, Notes: an.Notes,
		Sources: an.Sources, Sheets: an.Sheets, Options: structure.Options(m, loads, b, t), NoHelp: structure.NoHelp()}
	if an.Outcome != result.CheckRefused {
		s.LoadTest = structure.LoadTestMethod()
	}
	if an.Bound.Load == structure.TotalLoad {
		s.LimitLoad = "total"
	}
	s.Longest.Deflection, s.Longest.Bending = an.Longest.Deflection, an.Longest.Bending
	s.Longest.Governing = quantity.Range{Lo: min(an.Longest.Deflection.Lo, an.Longest.Bending.Lo), Hi: min(an.Longest.Deflection.Hi, an.Longest.Bending.Hi)}
	return s
}
