package data

import (
	"underfoot/assess/result"
)

type joist struct {
	Outcome        string        `json:"outcome"`
	Refusal        string        `json:"refusal,omitempty"`
	Deflection     span          `json:"deflection_live_in"`
	LongTerm       span          `json:"deflection_long_term_in"`
	RatioLive      span          `json:"ratio_live"`
	RatioTotal     span          `json:"ratio_total"`
	Limit          *float64      `json:"limit"`
	LimitLoad      string        `json:"limit_load"`
	Margin         span          `json:"margin"`
	Longest        longest       `json:"longest_span_in"`
	Share          span          `json:"share_of_joists_below"`
	Bending        span          `json:"bending_utilisation"`
	Shear          span          `json:"shear_utilisation"`
	Deciding       string        `json:"deciding,omitempty"`
	Options        []joistOption `json:"options"`
	DoesNotStiffen []string      `json:"does_not_stiffen"`
	Assumed        []string      `json:"assumed"`
	Notes          []string      `json:"notes"`
	Sources        []source      `json:"sources"`
}

type longest struct {
	Deflection span `json:"deflection"`
	Bending    span `json:"bending"`
	Governing  span `json:"governing"`
}

type joistOption struct {
	ID         string     `json:"id"`
	Outcome    string     `json:"outcome"`
	RatioLive  span       `json:"ratio_live"`
	RatioTotal span       `json:"ratio_total"`
	Height     span       `json:"added_height_in"`
	Weight     span       `json:"added_weight_psf"`
	Text       string     `json:"text"`
	Needs      []string   `json:"needs"`
	Quantities []material `json:"quantities"`
}

func (t tongue) joist(s *result.JoistSheet) joist {
	return joist{
		Outcome: s.Outcome.String(), Refusal: t.text(s.Refusal),
		Deflection: newSpan(s.Deflection), LongTerm: newSpan(s.LongTerm),
		RatioLive: newSpan(s.Live), RatioTotal: newSpan(s.Total),
		Limit: bound(s.Limit), LimitLoad: s.LimitLoad, Margin: newSpan(s.Margin),
		Longest: longest{newSpan(s.Longest.Deflection), newSpan(s.Longest.Bending), newSpan(s.Longest.Governing)},
		Share:   newSpan(s.Share),
		Bending: newSpan(s.Bending), Shear: newSpan(s.Shear),
		Deciding: t.text(s.Deciding),
		Options:  each(s.Options, t.option), DoesNotStiffen: listed(t.tellAll(s.NoHelp)),
		Assumed: listed(t.tellAll(s.Assumed)), Notes: listed(t.tellAll(s.Notes)), Sources: sources(s.Sources),
	}
}

func (t tongue) option(o *result.Option) joistOption {
	return joistOption{
		ID: o.ID, Outcome: o.Outcome.String(), RatioLive: newSpan(o.Live), RatioTotal: newSpan(o.Total),
		Height: newSpan(o.Height), Weight: newSpan(o.Weight), Text: t.text(o.Text), Needs: listed(t.tellAll(o.Needs)),
		Quantities: each(o.Quantities, t.material),
	}
}

func (t tongue) material(q *result.Quantity) material {
	return material{t.text(q.Text), newSpan(q.Value), t.text(q.Unit), t.text(q.Note)}
}
