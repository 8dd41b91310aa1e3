package condition

import (
	"regexp"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
)

// Definitions are the names of one file, as records.
type Definitions struct {
	Families   []FamilyRecord `toml:"family"`
	Sets       []SetRecord    `toml:"set"`
	Conditions []PartRecord   `toml:"condition"`
}

// A FamilyRecord is one of the families that divide the words of a fact.
type FamilyRecord struct {
	ID    string   `toml:"id"`
	Of    string   `toml:"of"`
	Words []string `toml:"words"`
}

// A SetRecord is other sets and further words. Where it names some words of a
// family by themselves, it names those that it leaves too: a new word of that
// family is then a fault until somebody has decided on it.
type SetRecord struct {
	ID     string   `toml:"id"`
	Of     string   `toml:"of"`
	Sets   []string `toml:"sets"`
	Words  []string `toml:"words"`
	Leaves []string `toml:"leaves"`
}

// A PartRecord is a condition with its name.
type PartRecord struct {
	ID   string `toml:"id"`
	When string `toml:"when"`
}

// With is the vocabulary with the names of one file, which may build on those
// that there are. All problems come back at once, and say which record they are in.
func (v *Vocabulary) With(d Definitions, file string, names Names) (*Vocabulary, assess.Problems) {
	def := &definer{Vocabulary: v.grow(), file: file, names: names, open: map[string]func(){}}
	names.Words = def.Vocabulary
	def.names = names
	for _, r := range d.Families {
		def.declare(r.ID, func() { def.family(r) })
	}
	for _, r := range d.Sets {
		def.declare(r.ID, func() { def.set(r) })
	}
	for _, r := range d.Conditions {
		def.declare(r.ID, func() { def.part(r) })
	}
	for _, id := range def.ids {
		def.settle(id)
	}
	def.divided(d.Families)
	return def.Vocabulary, def.problems
}

// A definer settles names one after the other, those first that another needs.
type definer struct {
	*Vocabulary
	file     string
	names    Names
	ids      []string          // of the file, in its order
	open     map[string]func() // names that are not settled yet
	chain    []string          // names that are being settled
	problems assess.Problems
}

// nameForm is how the names of facts are written too.
var nameForm = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

// declare takes up a name of the file.
func (d *definer) declare(id string, settle func()) {
	switch {
	case !nameForm.MatchString(id) || slices.Contains(reserved, id) || id == "not":
		d.fault(id, message.New("condition/define.form"), message.New("condition/define.form_hint"))
	case slices.Contains(d.order, id):
		d.fault(id, message.New("condition/define.twice", "name", id), noHint)
	default:
		d.order, d.ids, d.open[id] = append(d.order, id), append(d.ids, id), settle
	}
}

// settle defines a name, unless that is done. A name that needs itself is told
// with the chain.
func (d *definer) settle(id string) {
	if at := slices.Index(d.chain, id); at >= 0 {
		d.fault(id, message.New("condition/define.cycle", "chain", strings.Join(append(d.chain[at:], id), " > ")), noHint)
		return
	}
	settle := d.open[id]
	if settle == nil {
		return
	}
	d.chain = append(d.chain, id)
	settle()
	d.chain = d.chain[:len(d.chain)-1]
	delete(d.open, id)
}

// need settles the names that a definition mentions.
func (d *definer) need(names []string) {
	for _, id := range names {
		d.used[id] = true
		d.settle(id)
	}
}

func (d *definer) fault(id string, what, hint message.Message) {
	d.problems = append(d.problems, &assess.Problem{Kind: assess.Invalid, Place: d.file + " " + id, What: what, Hint: hint})
}

// part compiles a condition. One that names a condition with a fault has that
// fault alone.
func (d *definer) part(r PartRecord) {
	mentioned := Mentions(r.When)
	known := len(d.problems)
	d.need(mentioned)
	if len(d.problems) > known {
		return
	}
	c, problems := Compile(r.When, Place{File: d.file + " " + r.ID}, d.names)
	d.problems = append(d.problems, problems...)
	if c != nil {
		d.parts[r.ID] = &Part{r.ID, r.When, c}
	}
}
