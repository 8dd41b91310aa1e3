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
		RunE: func(*cobra.Command, []string) error { return a.joist(&f) },
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

// A joistReader turns flags into a member, collecting what is wrong with them.
type joistReader struct {
	*app
	flags    *joistFlags
	inputs   []result.AnswerRow
	problems assess.Problems
}

// note keeps what was given by a flag, for the head of the printout.
func (r *joistReader) note(flag, value string) {
	if value != "" {
		r.inputs = append(r.inputs, result.AnswerRow{Label: r.say("cli/joist.given." + strings.ReplaceAll(flag, "-", "_")), Value: value})
	}
}

func (r *joistReader) refuse(flag string, what, hint message.Message) {
	r.problems = append(r.problems, &assess.Problem{Kind: assess.Usage, Place: "--" + flag, What: what, Hint: hint})
}

// amount reads a quantity that needs its unit; nought where the flag is empty.
func (r *joistReader) amount(flag string, d quantity.Dimension, value string) quantity.Range {
	if value == "" {
		return quantity.Range{}
	}
	got, err := quantity.Read(d, value, r.system())
	if err != nil {
		r.refuse(flag, message.Of(err), message.New("cli/joist.unit"))
		return quantity.Range{}
	}
	r.note(flag, quantity.Write(d, got, r.system()))
	return got
}

// load reads a load: a bare number is psf.
func (r *joistReader) load(flag, value string) quantity.Range {
	if _, err := strconv.ParseFloat(value, 64); err == nil {
		value += " psf"
	}
	return r.amount(flag, quantity.Load, value)
}

func (r *joistReader) word(flag, value string, words []string) []string {
	if value == "" {
		r.note(flag, r.say("cli/joist.not_said"))
		return nil
	}
	value = strings.ToLower(value)
	if !slices.Contains(words, value) {
		r.refuse(flag, message.New("cli/joist.not_known", "given", strconv.Quote(value)), meant(value, words, oneOf(words)))
	}
	r.note(flag, value)
	return []string{value}
}

func (r *joistReader) member() structure.Member {
	f := r.flags
	if f.size == "" {
		r.refuse("size", message.New("cli/joist.no_size"), message.New("cli/joist.size_hint"))
	} else if _, err := quantity.ReadSize(f.size); err != nil {
		r.refuse("size", message.Of(err), message.New("cli/joist.sizes_hint"))
	}
	r.note("size", f.size)
	if f.span == "" {
		r.refuse("span", message.New("cli/joist.no_span"), message.New("cli/joist.span_hint"))
	}
	if f.spacing == "" {
		r.refuse("spacing", message.New("cli/joist.no_spacing"), message.New("cli/joist.spacing_hint"))
	}
	m := structure.Member{Kind: f.member, Size: f.size, Continuity: f.continuity, Wet: f.wet, Incised: f.incised}
	m.Species = r.word("species", f.species, figure.Species())
	m.Grades = r.word("grade", f.grade, slices.Compact(append(slices.Concat(grades()...), figure.Grades("")...)))
	m.Span = r.amount("span", quantity.Length, f.span)
	m.Spacing = r.amount("spacing", quantity.Length, f.spacing)
	m.Overhang = r.amount("overhang", quantity.Length, f.overhang)
	return m
}

func (r *joistReader) loads() structure.Loads {
	f := r.flags
	return structure.Loads{Live: r.load("live", f.live), Dead: r.load("dead", f.dead),
		Point: r.amount("point", quantity.Weight, f.point)}
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
		r.refuse("limit", message.New("cli/joist.no_limit", "given", strconv.Quote(r.flags.limit)), message.New("cli/joist.limit_hint"))
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
		r.refuse("test-drop", message.New("cli/joist.half_test"), message.New("cli/joist.test_hint"))
	}
	return structure.LoadTest{Weight: r.amount("test-weight", quantity.Weight, f.testWeight),
		Drop:  r.amount("test-drop", quantity.Length, f.testDrop),
		Place: r.amount("test-place", quantity.Length, f.testPlace), With: f.testWith, Alike: f.testAlike}, true
}

// addTest says how the load test stands to the sum, and uses it where it is better.
func (r *joistReader) addTest(s *result.JoistSheet, m structure.Measured) {
	for _, said := range []message.Message{m.Refusal, m.Text} {
		if !said.IsZero() {
			s.Notes = append([]message.Message{said}, s.Notes...)
		}
	}
	if m.Sheet != nil {
		s.Sheets = append(s.Sheets, m.Sheet)
	}
	s.Sources = append(s.Sources, m.Sources...)
}
