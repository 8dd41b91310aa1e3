package structure

import (
	"strconv"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// A Layer is one layer of a deck.
type Layer struct {
	Kind      string         // plywood, osb, boards or tongue-and-groove-planks; other kinds count nothing
	Rating    string         // span rating as panel.csv has it, 32/16 or 24oc; empty: by thickness
	Thickness quantity.Range // in
	Along     bool           // its strong direction lies along the joists
	Diagonal  bool           // boards laid at an angle
}

// A Deck is the panels or boards on a row of joists.
type Deck struct {
	Layers     []Layer        // from the top
	Spacing    quantity.Range // of the joists, centre to centre, in
	JoistWidth quantity.Range // in; zero: 1-1/2
	Bays       int            // spans that a panel runs over, 1 to 3; zero: not known, counted as one
	Live, Dead quantity.Range // psf; zero: 40 and 10
}

// A DeckAnalysis is what the sums say of the deck between the joists.
type DeckAnalysis struct {
	Outcome    result.CheckOutcome
	Refusal    message.Message
	Stiffness  quantity.Range // E I, lb in^2 per ft, of all layers; nothing glued is counted
	Live       quantity.Range // ratio under uniform live load
	Total      quantity.Range
	Deflection quantity.Range // in, under uniform live load
	Point      quantity.Range // rated span over the most that the standard lets the panel bend under 200 lb there; Everything without such a rating
	Limit      float64
	Memory     bool // some figure in it was remembered
	Notes      []message.Message
	Sources    []figure.Source
	Sheet      *formula.Sheet
}

// panelBeams are the greatest deflections of a panel over one, two and three
// bays, as the numbers under w L^4 / (k E I) with w in psf and E I per foot.
// For two bays the number is that of theory: the design guide prints 2220,
// which bends 0.2 percent less than a finite-element solver finds.
var panelBeams = [...]string{1: "921.6", 2: "2215.6", 3: "1743"}

// boardModulus is the least E of boards that the code's table for planks asks
// for on wide supports, in psi; boards of an old floor are taken for as stiff.
const boardModulus = 1.1e6

// supportAllowance is added to the clear span of a panel on 2 in framing, in inches.
const supportAllowance = "0.25"

// AnalyzeDeck computes a deck between its joists under uniform load, against
// the ratio that is given:
//
//	deflection = w L^4 / (k E I)    w psf, L clear span + 1/4 in, k 921.6, 2215.6 or 1743 for one, two or three bays
//
// E I is the sum of the layers. A layer of boards has E t^3 for each foot.
// Source: figure.Method, and each layer's row.
func AnalyzeDeck(d Deck, limit float64, _ *figure.Table) DeckAnalysis {
	q := quantity.Everything
	a := DeckAnalysis{Outcome: result.CheckRefused, Stiffness: q, Live: q, Total: q, Deflection: q, Point: q, Limit: limit}
	if stated(d.Spacing).Lo > widestSpacing {
		a.Refusal = message.New("structure/check.panel_beyond")
		return a
	}
	s := &formula.Sheet{Title: message.New("structure/title.deck")}
	sum := a.layers(s, d)
	if sum == "" {
		a.Refusal = message.New("structure/refusal.deck")
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
		s.Input(name, message.New("structure/line.layer", "number", i+1, "kind", l.Kind), "lb in^2/ft", quantity.Number, ei, message.Verbatim(source.Title))
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
		p, ok := figure.Panel(l.Kind, l.Rating, !l.Along, stated(l.Thickness))
		return p.EI, p.Source, ok
	case "boards", "tongue-and-groove-planks":
		if l.Along || !stated(l.Thickness).Bounded() {
			return ei, source, false
		}
		ei = quantity.Range{Lo: boardModulus * cube(l.Thickness.Lo), Hi: boardModulus * cube(l.Thickness.Hi)}
		if l.Diagonal { // a span along the boards of the spacing over cos 45 degrees
			ei = ei.Mul(quantity.Point(0.25))
		}
		return ei, figure.Method("boards"), true
	}
	return ei, source, false
}

func (a *DeckAnalysis) compute(d Deck, sum string) {
	s, bays := a.Sheet, max(d.Bays, 1)
	width := d.JoistWidth
	if width == (quantity.Range{}) {
		width = quantity.Point(1.5)
	}
	s.Input("spacing", message.New("structure/line.spacing"), "in", quantity.Length, positive(stated(d.Spacing)), formula.Stated)
	s.Input("joist_width", message.New("structure/line.width"), "in", quantity.Length, positive(width), formula.Stated)
	s.Input("live", message.New("structure/line.live"), "psf", quantity.Load, positive(orUsual(d.Live, 40)), formula.Stated)
	s.Input("dead", message.New("structure/line.dead"), "psf", quantity.Load, positive(orUsual(d.Dead, 10)), formula.Stated)
	a.Stiffness = s.Let("stiffness", message.New("structure/line.layers"), "lb in^2/ft", quantity.Number, sum)
	s.Let("bay", message.New("structure/line.bay"), "in", quantity.Length, "spacing - joist_width + "+supportAllowance)
	k := panelBeams[bays]
	a.Deflection = s.Let("sag", message.New("structure/line.live_sag"), "in", quantity.Length, "live * bay^4 / ("+k+" * stiffness)")
	a.Total = s.Let("ratio_total", message.New("structure/line.ratio_total"), "L/", quantity.Ratio, k+" * stiffness / ((live + dead) * bay^3)")
	a.Live = s.Let("ratio", message.New("structure/line.ratio_live"), "L/", quantity.Ratio, k+" * stiffness / (live * bay^3)")
	a.Sources = once(append(a.Sources, figure.Method("panel-"+strconv.Itoa(bays))))
}

func (a *DeckAnalysis) remark(d Deck) {
	a.Notes = append(a.Notes, message.New("structure/note.panel_mean"))
	for _, l := range d.Layers {
		if l.Kind == "boards" || l.Kind == "tongue-and-groove-planks" {
			a.Notes = append(a.Notes, message.New("structure/note.boards"))
		}
		if f, ok := figure.PanelPointDeflection(l.Rating); ok && a.Point == quantity.Everything {
			rated, _ := strconv.ParseFloat(strings.TrimSuffix(l.Rating, "oc"), 64)
			a.Point = quantity.Point(rated / f.Value)
			a.Notes, a.Sources, a.Memory = append(a.Notes, message.New("structure/note.panel_point")), append(a.Sources, f.Source), true
		}
	}
	if len(d.Layers) > 0 && d.Layers[0].Kind == "osb" {
		a.Notes = append(a.Notes, message.New("structure/note.osb"))
	}
	if d.Bays == 0 {
		a.Notes = append(a.Notes, message.New("structure/note.bays"))
	}
	if a.Memory {
		a.Notes = append(a.Notes, message.New("structure/note.memory"))
	}
}
