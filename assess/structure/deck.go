package structure

import (
	"fmt"
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A Layer is one layer of a deck.
type Layer struct {
	Kind      string         // plywood, osb, boards or tongue-and-groove-planks; other kinds count nothing
	Rating    string         // span rating as figure.PanelRatings has it, 32/16 or 24oc; empty: by thickness
	Thickness quantity.Range // in
	Along     bool           // its strong direction lies along the joists
	Diagonal  bool           // boards laid at an angle
}

// A Deck is the panels or boards on a row of joists.
type Deck struct {
	Layers     []Layer        // from the top
	Spacing    quantity.Range // of the joists, centre to centre, in
	JoistWidth quantity.Range // in; nought: 1-1/2
	Bays       int            // spans that a panel runs over, 1 to 3; nought: not known, counted as one
	Live, Dead quantity.Range // psf; nought: 40 and 10
}

// A DeckAnalysis is what the sums say of the deck between the joists.
type DeckAnalysis struct {
	Outcome    assess.CheckOutcome
	Refusal    string
	Stiffness  quantity.Range // E I, lb in^2 per ft, of all layers; nothing glued is counted
	Live       quantity.Range // ratio under uniform live load
	Total      quantity.Range
	Deflection quantity.Range // in, under uniform live load
	Point      quantity.Range // rated span over the most that the standard lets the panel bend under 200 lb there; Everything without such a rating
	Limit      float64
	Memory     bool // some figure in it was remembered
	Notes      []string
	Sources    []figure.Source
	Sheet      *formula.Sheet
}

// panelBeams are the greatest deflections of a panel over one, two and three
// bays, as the numbers under w L^4 / (k E I) with w in psf and E I per foot.
// For two bays the number is that of theory: the design guide prints 2220,
// which bends 0.2 percent less than a finite-element solver finds.
var panelBeams = [...]string{1: "921.6", 2: "2215.6", 3: "1743"}

// panelSource is where the panel formula was read.
var panelSource = map[int]figure.Source{
	1: {Title: "Wood Handbook FPL-GTR-190", Edition: "2010, Table 9-1: simple span, uniform load, 5/384, for psf and a foot of width: 384 / 5 x 12 = 921.6; allowance for the support as in D510C 2012", Known: "lookup"},
	2: {Title: "theorem of three moments, two equal spans", Edition: "computed: 184.634 x 12 = 2215.6 for psf and a foot of width; the panel design specification D510C 2012 prints 2220 (from memory); allowance for the support as in D510C 2012", Known: "computed"},
	3: {Title: "panel design specification of the engineered wood association", Edition: "D510C 2012, uniform loads, three spans", Known: "lookup"},
}

// boardModulus is the least E of boards that the code's table for planks asks
// for on wide supports, in psi; boards of an old floor are taken for as stiff.
var (
	boardModulus = 1.1e6
	boardSource  = figure.Source{Title: "International Residential Code", Edition: "2018, Table R503.1: E at least 1,100,000 psi for planks on supports 48 in apart, taken for boards on joists", Known: "lookup"}
)

const (
	notePanelMean  = "a uniform load hardly bends a panel: what decides under tile is the thickness that the methods ask for, and point loads, which this sum does not stand for"
	noteBoards     = "boards lie side by side and do not share a load; boards alone are no base for tile"
	noteBays       = "the number of bays that a panel runs over is not known: one is counted, the softest"
	notePanelPoint = "under 200 lb at one place the standard lets a panel of this rating bend at most so far at its rated span; remembered, and a comparison, not a limit for tile"
	noteMemory     = "some panel figures are from memory: read them again in the current standard"
	noteOSB        = "a tile contractors' manual takes osb as a subfloor under an underlayment only, not for tile bonded to it"
	// supportAllowance is added to the clear span of a panel on 2 in framing, in inches.
	supportAllowance = "0.25"
)

// AnalyzeDeck computes a deck between its joists under uniform load, against
// the ratio that is given:
//
//	deflection = w L^4 / (k E I)    w psf, L clear span + 1/4 in, k 921.6, 2215.6 or 1743 for one, two or three bays
//
// E I is the sum of the layers. A layer of boards has E t^3 for each foot.
// Source: panelSource, and each layer's row.
func AnalyzeDeck(d Deck, limit float64, _ *figure.Table) DeckAnalysis {
	q := quantity.Everything
	a := DeckAnalysis{Outcome: assess.CheckRefused, Stiffness: q, Live: q, Total: q, Deflection: q, Point: q, Limit: limit}
	if said(d.Spacing).Lo > widestSpacing {
		a.Refusal = noteBeyond
		return a
	}
	s := &formula.Sheet{Title: message.Verbatim("Deck between joists under uniform load")}
	sum := a.layers(s, d)
	if sum == "" {
		a.Refusal = "no layer of the deck is a panel or a board whose stiffness is known: name the kind, and the stamp or the thickness"
		return a
	}
	a.Sheet = s
	a.compute(d, sum)
	a.Outcome = against(quantity.Point(limit), a.Live).Outcome
	a.remark(d)
	return a
}

// layers writes the stiffness of each layer and gives their sum as an expression.
func (a *DeckAnalysis) layers(s *formula.Sheet, d Deck) string {
	sum := ""
	for i, l := range d.Layers {
		ei, source, ok := l.stiffness()
		if !ok {
			continue
		}
		name := "layer_" + strconv.Itoa(i+1)
		s.Input(name, message.Verbatim(fmt.Sprintf("E I of layer %d, %s", i+1, l.Kind)), "lb in^2/ft", quantity.Number, ei, message.Verbatim(source.Title))
		a.Sources = append(a.Sources, source)
		a.Memory = a.Memory || source.Known == "memory"
		if sum != "" {
			sum += " + "
		}
		sum += name
	}
	return sum
}

// stiffness is E I of a foot of a layer; ok is false for a kind that counts nothing.
func (l Layer) stiffness() (ei quantity.Range, source figure.Source, ok bool) {
	switch l.Kind {
	case "plywood", "osb":
		p, ok := figure.Panel(l.Kind, l.Rating, !l.Along, said(l.Thickness))
		return p.EI, p.Source, ok
	case "boards", "tongue-and-groove-planks":
		if l.Along || !said(l.Thickness).Bounded() {
			return ei, source, false
		}
		ei = quantity.Range{Lo: boardModulus * cube(l.Thickness.Lo), Hi: boardModulus * cube(l.Thickness.Hi)}
		if l.Diagonal { // a span along the boards of the spacing over cos 45 degrees
			ei = ei.Mul(quantity.Point(0.25))
		}
		return ei, boardSource, true
	}
	return ei, source, false
}

func (a *DeckAnalysis) compute(d Deck, sum string) {
	s, bays := a.Sheet, max(d.Bays, 1)
	width := d.JoistWidth
	if width == (quantity.Range{}) {
		width = quantity.Point(1.5)
	}
	s.Input("spacing", message.Verbatim("joist spacing, centre to centre"), "in", quantity.Length, positive(said(d.Spacing)), formula.Stated)
	s.Input("joist_width", message.Verbatim("thickness of a joist"), "in", quantity.Length, positive(width), formula.Stated)
	s.Input("live", message.Verbatim("live load"), "psf", quantity.Load, positive(orUsual(d.Live, 40)), formula.Stated)
	s.Input("dead", message.Verbatim("dead load"), "psf", quantity.Load, positive(orUsual(d.Dead, 10)), formula.Stated)
	a.Stiffness = s.Let("stiffness", message.Verbatim("E I of all layers, unglued"), "lb in^2/ft", quantity.Number, sum)
	s.Let("bay", message.Verbatim("clear span and the allowance for the support"), "in", quantity.Length, "spacing - joist_width + "+supportAllowance)
	k := panelBeams[bays]
	a.Deflection = s.Let("sag", message.Verbatim("deflection under live load"), "in", quantity.Length, "live * bay^4 / ("+k+" * stiffness)")
	a.Total = s.Let("ratio_total", message.Verbatim("span over deflection under live and dead load"), "L/", quantity.Ratio, k+" * stiffness / ((live + dead) * bay^3)")
	a.Live = s.Let("ratio", message.Verbatim("span over deflection under live load"), "L/", quantity.Ratio, k+" * stiffness / (live * bay^3)")
	a.Sources = once(append(a.Sources, panelSource[bays]))
	a.Memory = a.Memory || panelSource[bays].Known == "memory"
}

func (a *DeckAnalysis) remark(d Deck) {
	a.Notes = append(a.Notes, notePanelMean)
	for _, l := range d.Layers {
		if l.Kind == "boards" || l.Kind == "tongue-and-groove-planks" {
			a.Notes = append(a.Notes, noteBoards)
		}
		if f, ok := figure.PanelPointDeflection(l.Rating); ok && a.Point == quantity.Everything {
			rated, _ := strconv.ParseFloat(strings.TrimSuffix(l.Rating, "oc"), 64)
			a.Point = quantity.Point(rated / f.Value)
			a.Notes, a.Sources, a.Memory = append(a.Notes, notePanelPoint), append(a.Sources, f.Source), true
		}
	}
	if len(d.Layers) > 0 && d.Layers[0].Kind == "osb" {
		a.Notes = append(a.Notes, noteOSB)
	}
	if d.Bays == 0 {
		a.Notes = append(a.Notes, noteBays)
	}
	if a.Memory {
		a.Notes = append(a.Notes, noteMemory)
	}
}
