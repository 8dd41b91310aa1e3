// Package sample builds an invented result by hand, with something of
// everything that a report has to print. Its house, readings and figures are
// made up; its sources are no documents.
package sample

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Invented sources, one of each way of being known.
var (
	read     = result.Source{ID: "S1", Title: "Invented handbook of floors", Edition: "first edition | section 4", Known: "lookup"}
	recalled = result.Source{ID: "S2", Title: "Invented table of tile weights", Edition: "second edition | table 3", Known: "memory"}
	practice = result.Source{ID: "S3", Title: "Habit of the invented trade", Edition: "no document", Known: "common-practice"}
	computed = result.Source{ID: "S4", Title: "Sum over the figures named in it", Edition: "this program", Known: "computed"}
)

// Result is the invented result, new for each call.
func Result() *result.Result {
	return &result.Result{
		File:    "houses/12-invented-lane.yaml",
		Job:     &assess.Job{Region: "us", Units: "us", Visited: "2026-05-04"},
		Region:  "us",
		Today:   "2026-05-06",
		Verdict: result.Stop,
		Span:    result.Span{Low: result.Stop, High: result.Stop},
		Areas:   []result.AreaResult{kitchen(), basement()},
		Answers: answers(),
		Packs: []result.PackRef{
			{ID: "base", Edition: "2026-05"},
			{ID: "invented-county", Edition: "1", Local: true, Relaxes: []message.Message{message.Verbatim("flat.limit: invented ordinance, section 2")}},
		},
	}
}

// At is an address of the invented record.
func At(text string) schema.Address {
	a, err := schema.ParseAddress(text)
	if err != nil {
		panic(err)
	}
	return a
}

func at(texts ...string) []schema.Address {
	out := make([]schema.Address, len(texts))
	for i, t := range texts {
		out[i] = At(t)
	}
	return out
}

func kitchen() result.AreaResult {
	return result.AreaResult{
		ID: "kitchen", Name: "Kitchen (invented)", Verdict: result.Stop,
		Span:     result.Span{Low: result.Stop, High: result.Stop},
		Sentence: "the old sheet floor is from a time when such floors often held asbestos, and no laboratory has looked at it.",
		Zones:    []result.ZoneResult{oldPart(), addition()},
		Findings: []result.Finding{
			{
				ID: "suspect-resilient@old-part.l1", Rule: "suspect-resilient", Subject: "old-part.l1", Zone: "old-part", Outcome: result.Fails, Presumed: true,
				Policy: "presume", Protects: "people",
				Text:   "The sheet floor is presumed to hold asbestos.",
				Why:    "It was laid between 1958 and 2026 as far as anybody can show, and a floor of 1980 or before is presumed.",
				Remedy: "Leave it whole. A laboratory or a qualified person answers first.",
				Failure: result.Failure{Mode: "fibres in the air", LikelihoodBefore: "likely", ConsequenceBefore: "severe",
					LikelihoodAfter: "unlikely", ConsequenceAfter: "severe"},
				Explanation: "all of these: open\n  Year it was laid (1958 to 2026) is at most 1980: open",
				Value:       "laid 1958 to 2026", Limit: "1980", Unit: "year", Missing: at("kitchen.old-part.layer.l1.lab_result"),
				Sources: []result.Source{read}, Calls: result.TestOrAbate,
			},
			{
				ID: "joist-too-limber@old-part", Rule: "joist-too-limber", Zone: "old-part", Outcome: result.NotSettled, Policy: "hold", Protects: "structure",
				Text:   "The joists may or may not be stiff enough for tile.",
				Why:    "The species and grade are not known, and the range over what is plausible straddles the limit.",
				Remedy: "Find the grade stamp, or have somebody who knows wood look.",
				Value:  "L/312 to L/439", Limit: "at least L/360", Missing: at("kitchen.old-part.joist.species", "kitchen.old-part.joist.grade"),
				Sources: []result.Source{read, recalled}, Basis: []result.Source{read, recalled}, Calls: result.Strengthen,
			},
			{
				ID: "added-weight@uncouple", Rule: "added-weight", Subject: "uncouple", Zone: "addition", Outcome: result.NotComputed, Policy: "verify", Protects: "structure",
				Text: "Whether the framing carries the added weight is not computed.", Missing: at("kitchen.addition.joist.dead_load"),
				Sources: []result.Source{practice}, Bars: []result.PathID{result.Uncouple},
			},
			{
				ID: "double-panel", Rule: "double-panel", Zone: "addition", Outcome: result.Holds, Protects: "bond",
				Text: "Two sheets of plywood lie on the joists of the addition.", Sources: []result.Source{read},
				Permits: []result.PathID{result.Uncouple, result.BackerBoard},
			},
			{
				ID: "slab-damp", Rule: "slab-damp", Zone: "addition", Outcome: result.NotApplicable, Protects: "bond",
				Text: "There is no slab to be damp.", Sources: []result.Source{read}, Calls: result.DryOut,
			},
		},
		Checks: []result.Check{joistCheck(), flatCheck(), trussCheck()},
		Questions: []result.Question{
			{Address: At("kitchen.old-part.layer.l1.lab_result"), Text: "What did the laboratory say of this layer and its glue?",
				How: "Ask the owner for a report. Where there is none, an accredited laboratory is asked; nobody takes a piece by himself.",
				Who: "laboratory", Decides: []string{"test-or-abate", "remove", "suspect-resilient@old-part.l1"}},
			{Address: At("kitchen.old-part.joist.species"), Text: "What wood are the joists?", How: "Look from below for a stamp on the side of a joist.",
				Who: "owner", Decides: []string{"strengthen", "backer-board"}},
		},
		Cautions: []result.Caution{
			{ID: "lead-paint", Text: "The house is older than 1978: paint on trim that has to come off is taken to hold lead. Work wet, keep children out; a paid worker is certified.", Sources: []result.Source{read}},
			{ID: "silica", Text: "Cutting board or tile sets dust free that harms lungs. Score and snap, or cut wet outdoors.", Sources: []result.Source{recalled}},
		},
	}
}

func oldPart() result.ZoneResult {
	return result.ZoneResult{
		ID: "old-part", Span: result.Span{Low: result.Stop, High: result.Stop}, Verdict: result.Stop, Path: result.TestOrAbate,
		Sentence: "A layer that may hold asbestos would be disturbed.",
		Paths: []result.PathStanding{
			{Path: result.TestOrAbate, State: result.PathOpen, FindingIDs: []string{"suspect-resilient@old-part.l1"}},
			{Path: result.Strengthen, State: result.PathWaiting, FindingIDs: []string{"joist-too-limber@old-part"},
				Questions: at("kitchen.old-part.joist.species", "kitchen.old-part.joist.grade")},
			{Path: result.BackerBoard, State: result.PathWaiting, Questions: at("kitchen.old-part.joist.species")},
			{Path: result.DirectBond, State: result.PathRuledOut, FindingIDs: []string{"joist-too-limber@old-part"}},
		},
		Plan: []result.PlanStep{
			{Path: result.TestOrAbate, Round: 1, Text: "Leave the sheet floor and its glue whole until a laboratory or a qualified person has answered.",
				Who: "laboratory", Hold: "Nothing starts before the report names this layer and its glue, with method and date.", Cautions: []string{"lead-paint"}},
			{Path: result.Strengthen, Round: 2, Text: "Bring the joists to the stiffness that tile asks for.", Who: "setter",
				If: "If the species and grade found leave them too limber, this step stands.", Verify: []string{"size, spacing and span of every joist", "holes and notches"},
				Quantities: []result.Quantity{{Text: message.Verbatim("lumber beside joists"), Value: quantity.Range{Lo: 96, Hi: 112}, Unit: message.Verbatim("ft"), Note: message.Verbatim("one side")}}},
			{Path: result.BackerBoard, Round: 3, Text: "Cement backer board in mortar, screwed to the panel, seams taped.", Who: "setter", Cautions: []string{"silica"},
				Verify: []string{"height at the dishwasher"}, Quantities: []result.Quantity{
					{Text: message.Verbatim("cement backer board 1/2 in"), Value: quantity.Point(150), Unit: message.Verbatim("ft2"), Note: message.Verbatim("with 10 % for waste")},
					{Text: message.Verbatim("mortar"), Value: quantity.AtLeast(3), Unit: message.Verbatim("bags"), Note: message.Verbatim("depends on the trowel")},
				}},
		},
		BuildUps: []result.BuildUp{{Path: result.BackerBoard, Height: quantity.Range{Lo: 0.9375, Hi: 1.0625}, Weight: quantity.Range{Lo: 7.6, Hi: 9}, Layers: []result.BuiltLayer{
			{Name: message.Verbatim("porcelain tile"), Thickness: quantity.Range{Lo: 0.3125, Hi: 0.375}, Weight: quantity.Range{Lo: 3.8, Hi: 4.7}, Source: recalled},
			{Name: message.Verbatim("mortar bed coat"), Thickness: quantity.Range{Lo: 0.125, Hi: 0.1875}, Weight: quantity.Range{Lo: 1.2, Hi: 1.7}, Source: practice},
			{Name: message.Verbatim("cement backer board"), Thickness: quantity.Point(0.5), Weight: quantity.Point(2.6), Source: read},
		}}},
	}
}

func addition() result.ZoneResult {
	return result.ZoneResult{
		ID: "addition", Span: result.Span{Low: result.Prepare, High: result.Repair}, Verdict: result.Hold, Path: result.FindOut, Blocked: result.Remove,
		Sentence: "The kind of roof truss below is known, its stiffness is not.",
		Paths: []result.PathStanding{
			{Path: result.Remove, State: result.PathOpen, FindingIDs: []string{"floating-floor@addition.l1"}},
			{Path: result.FindOut, State: result.PathOpen},
			{Path: result.Uncouple, State: result.PathWaiting, Questions: at("kitchen.addition.joist.known_ratio")},
		},
		Plan: []result.PlanStep{{Path: result.Remove, Round: 1, Text: "Take up the floating floor.", Who: "owner"}},
	}
}

func basement() result.AreaResult {
	return result.AreaResult{
		ID: "basement", Name: "Basement", Verdict: result.Prepare, Span: result.Span{Low: result.Prepare, High: result.Prepare},
		Sentence: "the slab is sound; the one crack is small and shown not to move.",
		Zones: []result.ZoneResult{{
			ID: "main", Span: result.Span{Low: result.Prepare, High: result.Prepare}, Verdict: result.Prepare, Path: result.IsolateStrip,
			Sentence: "One crack in one plane, watched over a winter, is all that the slab shows.",
			Paths: []result.PathStanding{
				{Path: result.IsolateStrip, State: result.PathOpen, FindingIDs: []string{"single-crack"}},
				{Path: result.IsolateFull, State: result.PathOpen},
				{Path: result.BackerBoard, State: result.PathRuledOut},
			},
			Plan: []result.PlanStep{{Path: result.IsolateStrip, Round: 1, Text: "A strip of crack isolation membrane over the crack, a soft joint on each side.", Who: "setter",
				Verify:     []string{"moisture of the slab, by the method that the membrane's maker names"},
				Quantities: []result.Quantity{{Text: message.Verbatim("strip of membrane, 36 in wide"), Value: quantity.Point(14), Unit: message.Verbatim("ft")}}}},
			BuildUps: []result.BuildUp{{Path: result.IsolateStrip, Height: quantity.Point(0.4375), Weight: quantity.AtMost(5), Layers: []result.BuiltLayer{
				{Name: message.Verbatim("ceramic tile"), Thickness: quantity.Point(0.3125), Weight: quantity.AtMost(4), Source: recalled},
				{Name: message.Verbatim("mortar bed coat"), Thickness: quantity.Point(0.125), Weight: quantity.Point(1), Source: practice},
			}}},
		}},
		Findings: []result.Finding{{
			ID: "single-crack", Rule: "single-crack", Outcome: result.Holds, Protects: "bond",
			Text: "One crack, 1/32 in wide, no step, watched from autumn to spring.", Sources: []result.Source{read}, Permits: []result.PathID{result.IsolateStrip},
		}},
		Cautions: []result.Caution{{ID: "silica", Text: "Cutting board or tile sets dust free that harms lungs. Score and snap, or cut wet outdoors.", Sources: []result.Source{recalled}}},
	}
}

func joistCheck() result.Check {
	s := &formula.Sheet{Title: message.Verbatim("Live-load deflection of one joist")}
	s.Input("load", message.Verbatim("live load"), "psf", quantity.Load, quantity.Point(40), message.Verbatim("S1"))
	s.Input("spacing", message.Verbatim("spacing of the joists"), "in", quantity.Length, quantity.Point(16), formula.Stated)
	s.Input("span", message.Verbatim("clear span"), "in", quantity.Length, quantity.Range{Lo: 180, Hi: 182}, formula.Stated)
	s.Input("modulus", message.Verbatim("stiffness of the wood"), "psi", quantity.Strength, quantity.Range{Lo: 1.1e6, Hi: 1.5e6}, message.Verbatim("S2"))
	s.Input("width", message.Verbatim("thickness of the joist"), "in", quantity.Length, quantity.Point(1.5), formula.Stated)
	s.Input("depth", message.Verbatim("depth of the joist"), "in", quantity.Length, quantity.Point(9.25), formula.Stated)
	s.Let("line_load", message.Verbatim("load on an inch of joist"), "lb/in", quantity.Number, "load / 144 * spacing")
	s.Let("inertia", message.Verbatim("second moment of area"), "in^4", quantity.Number, "width * depth^3 / 12")
	s.Let("sag", message.Verbatim("deflection at midspan"), "in", quantity.Length, "5 * line_load * span^4 / (384 * modulus * inertia)")
	value := s.Let("ratio", message.Verbatim("span over deflection"), "", quantity.Ratio, "384 * modulus * inertia / (5 * line_load * span^3)")
	return result.Check{
		ID: "joist.ratio_live", Zone: "old-part", Title: message.Verbatim("Stiffness of the joists under live load"), Outcome: outcome(value, 360),
		Value: value, Limit: quantity.Point(360), Dimension: quantity.Ratio, AtLeast: true,
		Margin: quantity.Range{Lo: value.Lo/360 - 1, Hi: value.Hi/360 - 1}, Work: s,
		Missing: at("kitchen.old-part.joist.species", "kitchen.old-part.joist.grade"), Sources: []result.Source{read, recalled},
	}
}

func outcome(r quantity.Range, least float64) result.CheckOutcome {
	switch {
	case r.Lo >= least:
		return result.CheckHolds
	case r.Hi < least:
		return result.CheckFails
	}
	return result.CheckOpen
}

func flatCheck() result.Check {
	s := &formula.Sheet{Title: message.Verbatim("Gap under a straight edge")}
	s.Input("gap", message.Verbatim("largest gap measured"), "in", quantity.Length, quantity.Range{Lo: 0.125, Hi: math.Inf(1)}, formula.Stated)
	value := s.Let("worst", message.Verbatim("gap that counts"), "in", quantity.Length, "max(gap, 0.0625)")
	return result.Check{
		ID: "flat.gap", Zone: "addition", Title: message.Verbatim("Flatness"), Outcome: result.CheckOpen, Value: value, Limit: quantity.Point(0.25),
		Dimension: quantity.Length, Margin: quantity.Range{Lo: math.Inf(-1), Hi: 0.5}, Work: s, Note: message.Verbatim("Only one place was measured."),
		Missing: at("kitchen.addition.flat.gap_10ft"), Sources: []result.Source{computed},
	}
}

func trussCheck() result.Check {
	return result.Check{
		ID: "joist.ratio_live", Zone: "addition", Title: message.Verbatim("Stiffness of the trusses"), Outcome: result.CheckRefused, Dimension: quantity.Ratio, AtLeast: true,
		Note:    message.Verbatim("Trusses do not go through the sums for sawn joists: ask their maker or an engineer for the ratio under live load."),
		Missing: at("kitchen.addition.joist.known_ratio"), Sources: []result.Source{read},
	}
}

func answers() []result.AnswerRow {
	return []result.AnswerRow{
		{Address: At("site.year_built"), Label: "Year the house was built", Value: "1958", Answer: assess.Answer{Basis: assess.Document, Note: "invented deed"}},
		{Address: At("kitchen.old-part.joist.span"), Label: "Clear span of the joists", Value: "15 ft to 15 ft 2 in",
			Answer: assess.Answer{Basis: assess.Measured, With: "tape", On: "2026-05-04", Photos: []string{"photos/span one.jpg"}, Note: "=measured from below"}},
		{Address: At("kitchen.old-part.joist.species"), Label: "Wood of the joists", Answer: assess.Answer{Reply: assess.NotSure}},
		{Address: At("kitchen.addition.water.leak"), Label: "Leak, cured or not", Answer: assess.Answer{Reply: assess.CouldNotSee, Note: "cupboard\x1b[31m full\x07"}},
		{Address: At("kitchen.old-part.joist.live_load"), Label: "Design live load", Value: "40 psf", Default: true},
		{Address: At("basement.main.joist.size"), Label: "Size of the joists", Value: "2x10", Parked: true, Answer: assess.Answer{Basis: assess.Told}},
		{Address: At("basement.main.crack.c1.width"), Label: "Width of the crack", Value: "1/32 in", Answer: assess.Answer{Basis: assess.Measured, With: "feeler gauge", On: "2026-05-04"}},
	}
}
