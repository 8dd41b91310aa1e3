package cli

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/structure"
)

// A joistReader turns flags into a member, collecting what is wrong with them.
type joistReader struct {
	*app
	flags     *joistFlags
	catalogue *question.Catalogue // its words are those of a record
	inputs    []result.AnswerRow
	problems  assess.Problems
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

// refuseNothing asks back a flag that is named and given nothing, or a count of
// none: what stands in for a flag that is left out is no answer to one that is not.
// Nobody would see that a test's flag has no test to belong to.
func (r *joistReader) refuseNothing(f *pflag.Flag) {
	tested := r.flags.testWeight != "" || r.flags.testDrop != ""
	switch {
	case f.Value.Type() == "string" && strings.TrimSpace(f.Value.String()) == "":
		r.refuse(f.Name, message.New("cli/joist.nothing"), message.New("cli/joist.nothing_hint"))
	case f.Value.Type() == "int" && r.flags.testAlike < 1:
		r.refuse(f.Name, message.New("cli/joist.not_positive", "given", strconv.Quote(f.Value.String())), message.New("cli/joist.positive_hint"))
	case strings.HasPrefix(f.Name, "test-") && !tested:
		r.refuse(f.Name, message.New("cli/joist.half_test"), message.New("cli/joist.test_hint"))
	}
}

// amount reads a quantity that needs its unit; no range where the flag is empty.
// Nothing here may be zero or less: a number that cannot be meant is asked back,
// never put in place of another.
func (r *joistReader) amount(flag string, d quantity.Dimension, value string) quantity.Range {
	if value == "" {
		return quantity.Range{}
	}
	got, err := quantity.Read(d, value, r.system())
	switch {
	case err != nil:
		r.refuse(flag, message.Of(err), message.New("cli/joist.unit"))
	case got.Lo <= 0:
		r.refuse(flag, message.New("cli/joist.not_positive", "given", strconv.Quote(value)), message.New("cli/joist.positive_hint"))
	default:
		r.note(flag, quantity.Write(d, got, r.system()))
		return got
	}
	return quantity.Range{}
}

// load reads a load: a bare number is psf.
func (r *joistReader) load(flag, value string) quantity.Range {
	if _, err := strconv.ParseFloat(value, 64); err == nil {
		value += " psf"
	}
	return r.amount(flag, quantity.Load, value)
}

// words reads the words of a choice as a record does, with what the trade says
// for them; none where the flag is empty.
func (r *joistReader) words(flag, fact, value string) []string {
	if value == "" {
		return nil
	}
	d := r.catalogue.Schema().Find(fact)
	set, err := r.catalogue.Read(d, value, r.system())
	if err == nil {
		return set.Words(d)
	}
	hint := oneOf(d.Choices)
	var refused *question.Refused
	if errors.As(err, &refused) {
		hint = refused.Hint
	}
	r.refuse(flag, message.New("cli/joist.not_known", "given", strconv.Quote(value)), hint)
	return nil
}

// word is a choice of which one word alone is counted.
func (r *joistReader) word(flag, fact, value string) string {
	words := r.words(flag, fact, value)
	if len(words) > 1 {
		r.refuse(flag, message.New("cli/joist.which", "given", strconv.Quote(value)), oneOf(words))
	}
	return strings.Join(words, "")
}

// wood are words of which the softest counts, kept for the head of the printout.
func (r *joistReader) wood(flag, fact, value string) []string {
	words := r.words(flag, fact, value)
	if value == "" {
		r.note(flag, r.say("cli/joist.not_said"))
	}
	r.note(flag, strings.Join(words, ", "))
	return words
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
	m := structure.Member{Size: f.size, Wet: f.wet, Incised: f.incised}
	m.Kind = r.word("member", "joist.member", f.member)
	m.Continuity = r.word("continuity", "joist.continuity", f.continuity)
	m.Species = r.wood("species", "joist.species", f.species)
	m.Grades = r.wood("grade", "joist.grade", f.grade)
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
	b := r.tileBound(t)
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

// tileBound is the limit of the tile, the strictest where a word names several.
func (r *joistReader) tileBound(t *figure.Table) structure.Bound {
	var strictest structure.Bound
	for _, kind := range r.words("tile", "tile.kind", r.flags.tile) {
		if b := structure.BoundFor(kind, t); b.Ratio > strictest.Ratio {
			strictest = b
		}
	}
	return strictest
}

func (r *joistReader) test() (test structure.LoadTest, tested bool) {
	f := r.flags
	if f.testWeight == "" && f.testDrop == "" {
		return test, false
	}
	if f.testWeight == "" || f.testDrop == "" {
		r.refuse("test-drop", message.New("cli/joist.half_test"), message.New("cli/joist.test_hint"))
	}
	if _, known := structure.Uncertainties[f.testWith]; !known {
		instruments := slices.Sorted(maps.Keys(structure.Uncertainties))
		r.refuse("test-with", message.New("cli/joist.not_known", "given", strconv.Quote(f.testWith)), meant(f.testWith, instruments, oneOf(instruments)))
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
