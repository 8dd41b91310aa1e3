package data

import (
	"underfoot/assess/result"
)

// The types below are the contract: the order of their fields is the order of
// the keys, and no list is ever null.

type document struct {
	Format  string `json:"format"`
	File    string `json:"file"`
	Verdict string `json:"verdict"`
	Areas   []area `json:"areas"`
	Packs   []pack `json:"packs"`
}

type area struct {
	ID        string     `json:"id"`
	Name      string     `json:"name"`
	Verdict   string     `json:"verdict"`
	Path      string     `json:"path"`
	Zones     []zone     `json:"zones"`
	Plan      []step     `json:"plan"`
	Paths     []path     `json:"paths"`
	Findings  []finding  `json:"findings"`
	Checks    []check    `json:"checks"`
	Questions []question `json:"questions"`
	Cautions  []caution  `json:"cautions"`
}

type zone struct {
	ID      string `json:"id"`
	Verdict string `json:"verdict"`
	Path    string `json:"path"`
	Plan    []step `json:"plan"`
	Paths   []path `json:"paths"`
}

type step struct {
	Path       string     `json:"path"`
	Text       string     `json:"text"`
	Who        string     `json:"who"`
	Quantities []material `json:"quantities"`
}

type material struct {
	Text  string `json:"text"`
	Value span   `json:"value"`
	Unit  string `json:"unit"`
	Note  string `json:"note"`
}

type path struct {
	Path      string   `json:"path"`
	State     string   `json:"state"`
	Because   []string `json:"because"`
	Questions []string `json:"questions"`
}

type finding struct {
	ID       string   `json:"id"`
	Rule     string   `json:"rule"`
	Subject  string   `json:"subject"`
	Outcome  string   `json:"outcome"`
	Presumed bool     `json:"presumed"`
	Protects string   `json:"protects"`
	Text     string   `json:"text"`
	Why      string   `json:"why"`
	Remedy   string   `json:"remedy"`
	Value    string   `json:"value"`
	Limit    string   `json:"limit"`
	Unit     string   `json:"unit"`
	Missing  []string `json:"missing"`
	Sources  []source `json:"sources"`
}

type check struct {
	ID      string   `json:"id"`
	Outcome string   `json:"outcome"`
	Value   span     `json:"value"`
	Limit   *float64 `json:"limit"`
	Unit    string   `json:"unit"`
	Margin  *float64 `json:"margin"`
	Formula string   `json:"formula"`
	Missing []string `json:"missing"`
	Sources []source `json:"sources"`

	Notes   []string      `json:"notes,omitempty"`
	Options []joistOption `json:"options,omitempty"`
}

type question struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	How     string   `json:"how"`
	Decides []string `json:"decides"`
}

type caution struct {
	ID      string   `json:"id"`
	Text    string   `json:"text"`
	Sources []source `json:"sources"`
}

type source struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition"`
	Known   string `json:"known"`
}

type pack struct {
	ID      string   `json:"id"`
	Edition string   `json:"edition"`
	Local   bool     `json:"local"`
	Relaxes []string `json:"relaxes"`
}

// span is a range whose unbounded ends are nil.
type span struct {
	Low  *float64 `json:"low"`
	High *float64 `json:"high"`
}

func newDocument(r *result.Result, all bool) document {
	t := tongue{r.Language}
	return document{
		Format:  Format,
		File:    r.File,
		Verdict: r.Verdict.String(),
		Areas:   each(r.Areas, func(a *result.AreaResult) area { return newArea(a, t, all) }),
		Packs: each(r.Packs, func(p *result.PackRef) pack {
			return pack{p.ID, p.Edition, p.Local, listed(p.Relaxed(r.Language))}
		}),
	}
}
