package pack

import (
	"reflect"
	"regexp"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
)

// The bounds of a local pack. Those of a condition stand in assess/condition.
const (
	MaxLocalBytes   = 1 << 20
	maxLocalRecords = 2000 // of one kind
)

// A Local is a pack that the program does not ship, read from one file: the
// rules of a town, of an insurer, of one's own trade. It may add rules, tighten
// figures and raise what rules ask for. What it relaxes needs a source and is
// named in every report; a rule that protects people cannot be relaxed.
type Local struct {
	ID, Title, Edition string
	records            localFile
	doc                *document
	unknown            assess.Problems // keys that no record has, told with the rest
}

// ReadLocal reads a pack. What it names is checked when it is added to the
// rules of a region. A file that is too large, is no TOML or holds values of a
// wrong kind is refused here, with all that is wrong as assess.Problems.
func ReadLocal(file string, data []byte) (*Local, error) {
	if len(data) > MaxLocalBytes {
		return nil, assess.Problems{{Kind: assess.Invalid, Place: file, What: message.New("pack/size.bytes", "most", MaxLocalBytes),
			Hint: message.New("pack/size.split")}}
	}
	doc, err := readDocument(file, data)
	if err != nil {
		return nil, err
	}
	s := &shaper{doc: doc}
	s.table(doc.root, reflect.TypeFor[localFile]())
	if s.wrong {
		return nil, s.problems
	}
	p := &Local{doc: doc, unknown: s.problems}
	if err := toml.Unmarshal(data, &p.records); err != nil {
		return nil, assess.Problems{{Kind: assess.Invalid, Place: file, What: message.Verbatim(err.Error())}}
	}
	p.ID, p.Title, p.Edition = p.records.Pack.ID, p.records.Pack.Title, p.records.Pack.Edition
	p.settle()
	return p, nil
}

// settle fills in what a rule of the pack need not say.
func (p *Local) settle() {
	for i := range p.records.Rules {
		r := &p.records.Rules[i]
		r.file = p.doc.file
		if r.Since == "" {
			r.Since = p.Edition
		}
		for k := range r.Cases {
			if r.Cases[k].Region == "" && len(p.records.Pack.Regions) > 0 {
				r.Cases[k].Region = p.records.Pack.Regions[0]
			}
		}
	}
}

// place is where the pack itself stands.
func (p *Local) place() place { return place{doc: p.doc, node: p.doc.root} }

// Regions are those in which the pack holds.
func (p *Local) Regions() []string {
	if len(p.records.Pack.Regions) > 0 {
		return p.records.Pack.Regions
	}
	return figure.Regions
}

// in is the pack in the loader's region: nothing but its head where it does not
// hold there.
func (p *Local) in(l *loader) *Local {
	at := p.place().key("pack")
	for i, region := range p.records.Pack.Regions {
		if !slices.Contains(figure.Regions, region) {
			l.misspelt(at.key("regions").item(i), region, figure.Regions, message.New("pack/no_such.region", "word", quoted(region)))
		}
	}
	if slices.Contains(p.Regions(), l.region) {
		return p
	}
	l.problem(at.key("regions"), message.New("pack/head.elsewhere", "region", l.region))
	head := *p
	head.records = localFile{Pack: p.records.Pack}
	return &head
}

// packID is the form of a pack's id; ids in it start with it and a hyphen.
var packID = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

// head holds the pack's own lines against what every pack must have.
func (p *Local) head(l *loader, ours *Pack) {
	at := p.place().key("pack")
	switch {
	case !packID.MatchString(p.ID):
		l.problem(at.key("id"), message.New("pack/head.id"))
	case ours.prefixed(p.ID + "-"):
		l.problem(at.key("id"), message.New("pack/head.taken", "id", p.ID))
	}
	if p.Title == "" || p.Edition == "" {
		l.problem(at, message.New("pack/head.title"))
	}
}

// prefixed reports whether an id of the program's begins with the prefix.
func (p *Pack) prefixed(prefix string) bool {
	for _, r := range p.Rules {
		if !r.Local && strings.HasPrefix(r.ID, prefix) {
			return true
		}
	}
	for id := range p.Cautions {
		if strings.HasPrefix(id, prefix) {
			return true
		}
	}
	return prefix == p.ID+"-"
}
