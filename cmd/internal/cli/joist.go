package cli

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
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
	c := &cobra.Command{
		Use:   "joist",
		Short: "Compute how much one joist bends, and what would cure it",
		Long: `joist computes the sag of a sawn joist under its loads, how far it is from the
limit that tile asks for, how sure that is, what decides, and what stiffness a
change would give. Species or grade that is not known leaves a range, and its
low end decides. Trusses, I-joists, LVL, glulam and steel are never computed.`,
		Example: `  underfoot joist --size 2x10 --species hem-fir --grade no2 --spacing 16in --span 14ft
  underfoot joist --size 2x8 --spacing '16 OC' --span "13' 6" --tile natural-stone
  underfoot joist --size 47x220mm --grade c24 --spacing 400mm --span 3,8m --units mm --region uk
  underfoot joist --size 2x8 --spacing 16in --span 12ft --test-weight '200 lb' --test-drop '0.06 in' --test-with dial-gauge`,
		Args: args(cobra.NoArgs, "joist takes flags alone, such as --size 2x10 --span 14ft"),
		RunE: func(*cobra.Command, []string) error { return a.joist(&f) },
	}
	p := c.Flags()
	p.StringVar(&f.member, "member", "sawn-lumber", "kind of member; only sawn-lumber is computed")
	p.StringVar(&f.size, "size", "", "nominal (2x10) or measured (1.5x9.25, 47x220mm)")
	p.StringVar(&f.species, "species", "", "species group; not said: every plausible one")
	p.StringVar(&f.grade, "grade", "", "grade, or a strength class such as c24; not said: every plausible one")
	p.StringVar(&f.spacing, "spacing", "", "centre to centre, with its unit: 16in")
	p.StringVar(&f.span, "span", "", "clear span between supports, with its unit: 14ft, 13 ft 6 in, a range")
	p.StringVar(&f.continuity, "continuity", "one-span", "one-span, two-spans or three-spans")
	p.StringVar(&f.overhang, "overhang", "", "past the last support, with its unit")
	p.StringVar(&f.live, "live", "40", "live load, psf or with kPa")
	p.StringVar(&f.dead, "dead", "10", "dead load, psf or with kPa")
	p.StringVar(&f.point, "point", "", "weight at mid span of one joist, with its unit: 300 lb")
	p.StringVar(&f.limit, "limit", "", "N of L/N under live load, or L/480 total; not said: that of the tile")
	p.StringVar(&f.tile, "tile", "ceramic", "kind of tile, which sets the limit: ceramic, natural-stone ...")
	p.BoolVar(&f.wet, "wet", false, "in service wet: above 19 percent moisture")
	p.BoolVar(&f.incised, "incised", false, "cut with small slits for preservative")
	p.StringVar(&f.testWeight, "test-weight", "", "load test: known weight on one joist, with its unit")
	p.StringVar(&f.testDrop, "test-drop", "", "load test: measured drop, with its unit")
	p.StringVar(&f.testPlace, "test-place", "", "load test: from the nearer support; not said: mid span")
	p.StringVar(&f.testWith, "test-with", "dial-gauge", "load test: dial-gauge, laser or string")
	p.IntVar(&f.testAlike, "test-alike", 1, "load test: joists side by side that carried this weight each, the measured one in the middle")
	p.BoolVar(&f.asJSON, "json", false, "print one JSON document")
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
		if err := c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(slices.Compact(words), cobra.ShellCompDirectiveNoFileComp)); err != nil {
			panic("cli: " + err.Error())
		}
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
func (a *app) joist(f *joistFlags) error {
	r := &joistReader{app: a, flags: f}
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
func joistSheet(m structure.Member, loads structure.Loads, b structure.Bound, t *figure.Table) *assess.JoistSheet {
	an := structure.Analyze(m, loads, b, t)
	s := &assess.JoistSheet{Outcome: an.Outcome, Refusal: an.Refusal, Deflection: an.Deflection, LongTerm: an.LongTerm,
		Live: an.Live, Total: an.Total, Limit: an.Bound.Ratio, Least: an.Least, Margin: an.Margin, Span: m.Span, LimitLoad: "live",
		Share: an.Share, Bending: an.Bending, Shear: an.Shear, Deciding: an.Deciding.Text, Assumed: an.Assumed, Notes: an.Notes,
		Sources: an.Sources, Sheets: an.Sheets, Options: structure.Options(m, loads, b, t), NoHelp: structure.NoHelp()}
	if an.Outcome != assess.CheckRefused {
		s.LoadTest = structure.LoadTestMethod()
	}
	if an.Bound.Load == structure.TotalLoad {
		s.LimitLoad = "total"
	}
	s.Longest.Deflection, s.Longest.Bending = an.Longest.Deflection, an.Longest.Bending
	s.Longest.Governing = quantity.Range{Lo: min(an.Longest.Deflection.Lo, an.Longest.Bending.Lo), Hi: min(an.Longest.Deflection.Hi, an.Longest.Bending.Hi)}
	return s
}

// A joistReader turns flags into a member, collecting what is wrong with them.
type joistReader struct {
	*app
	flags    *joistFlags
	inputs   []assess.Said
	problems assess.Problems
}

func (r *joistReader) note(label, value string) {
	if value != "" {
		r.inputs = append(r.inputs, assess.Said{Label: label, Value: value})
	}
}

func (r *joistReader) refuse(flag, what, hint string) {
	r.problems = append(r.problems, &assess.Problem{Kind: assess.Usage, Place: "--" + flag, What: message.Verbatim(what), Hint: message.Verbatim(hint)})
}

// amount reads a quantity that needs its unit; nought where the flag is empty.
func (r *joistReader) amount(flag, label string, d quantity.Dimension, value string) quantity.Range {
	if value == "" {
		return quantity.Range{}
	}
	got, err := quantity.Read(d, value, r.system())
	if err != nil {
		r.refuse(flag, err.Error(), "write it with its unit")
		return quantity.Range{}
	}
	r.note(label, quantity.Write(d, got, r.system()))
	return got
}

// load reads a load: a bare number is psf.
func (r *joistReader) load(flag, label, value string) quantity.Range {
	if _, err := strconv.ParseFloat(value, 64); err == nil {
		value += " psf"
	}
	return r.amount(flag, label, quantity.Load, value)
}

func (r *joistReader) word(flag, label, value string, words []string) []string {
	if value == "" {
		r.note(label, "not said")
		return nil
	}
	value = strings.ToLower(value)
	if !slices.Contains(words, value) {
		hint := "one of: " + strings.Join(words, ", ")
		if near := assess.Nearest(value, words); near != "" {
			hint = "did you mean " + near + "? " + hint
		}
		r.refuse(flag, fmt.Sprintf("%q is not known", value), hint)
	}
	r.note(label, value)
	return []string{value}
}

func (r *joistReader) member() structure.Member {
	f := r.flags
	if f.size == "" {
		r.refuse("size", "the size of the joist is missing", "for example --size 2x10")
	} else if _, err := quantity.ReadSize(f.size); err != nil {
		r.refuse("size", err.Error(), "for example 2x10, 1.5x9.25 or 47x220mm")
	}
	r.note("Size", f.size)
	if f.span == "" {
		r.refuse("span", "the clear span is missing", "for example --span 14ft")
	}
	if f.spacing == "" {
		r.refuse("spacing", "the spacing is missing", "for example --spacing 16in")
	}
	m := structure.Member{Kind: f.member, Size: f.size, Continuity: f.continuity, Wet: f.wet, Incised: f.incised}
	m.Species = r.word("species", "Species", f.species, figure.Species())
	m.Grades = r.word("grade", "Grade", f.grade, slices.Compact(append(slices.Concat(grades()...), figure.Grades("")...)))
	m.Span = r.amount("span", "Clear span", quantity.Length, f.span)
	m.Spacing = r.amount("spacing", "Spacing, centre to centre", quantity.Length, f.spacing)
	m.Overhang = r.amount("overhang", "Overhang", quantity.Length, f.overhang)
	return m
}

func (r *joistReader) loads() structure.Loads {
	f := r.flags
	return structure.Loads{Live: r.load("live", "Live load", f.live), Dead: r.load("dead", "Dead load", f.dead),
		Point: r.amount("point", "Weight at mid span", quantity.Weight, f.point)}
}

// bound is the limit of the tile, or the one given: 480, L/480, L/480 total.
func (r *joistReader) bound(t *figure.Table) structure.Bound {
	b := structure.BoundFor(r.flags.tile, t)
	if r.flags.limit == "" {
		return b
	}
	word, total := strings.CutSuffix(strings.TrimSpace(r.flags.limit), "total")
	got, err := quantity.Read(quantity.Ratio, strings.TrimSpace(word), r.system())
	if err != nil || !got.IsPoint() || got.Lo <= 0 {
		r.refuse("limit", fmt.Sprintf("%q is not a limit", r.flags.limit), "for example 360, L/480 or L/720 total")
		return b
	}
	b.Ratio, b.Load, b.Sources = got.Lo, structure.LiveLoad, nil
	if total {
		b.Load = structure.TotalLoad
	}
	return b
}

func (r *joistReader) test() (test structure.LoadTest, tested bool) {
	f := r.flags
	if f.testWeight == "" && f.testDrop == "" {
		return test, false
	}
	if f.testWeight == "" || f.testDrop == "" {
		r.refuse("test-drop", "a load test needs the weight and the drop", "for example --test-weight '200 lb' --test-drop '0.06 in'")
	}
	return structure.LoadTest{Weight: r.amount("test-weight", "Load test: weight", quantity.Weight, f.testWeight),
		Drop:  r.amount("test-drop", "Load test: drop", quantity.Length, f.testDrop),
		Place: r.amount("test-place", "Load test: place", quantity.Length, f.testPlace), With: f.testWith, Alike: f.testAlike}, true
}

// addTest says how the load test stands to the sum, and uses it where it is better.
func (r *joistReader) addTest(s *assess.JoistSheet, m structure.Measured) {
	for _, sentence := range []string{m.Refusal, m.Text} {
		if sentence != "" {
			s.Notes = append([]string{sentence}, s.Notes...)
		}
	}
	if m.Sheet != nil {
		s.Sheets = append(s.Sheets, m.Sheet)
	}
	s.Sources = append(s.Sources, m.Sources...)
}
