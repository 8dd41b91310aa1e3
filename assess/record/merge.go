package record

import (
	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// A Clash is one place that both sides changed, each in its own way. The
// merged document holds theirs.
type Clash struct {
	Place  string          // an address, a word of the header, or an area, a zone or an item
	What   message.Message // how the two differ, for a thing; says nothing for an answer
	Answer schema.Address  // of an answer; zero for the header and for things
	Mine   *assess.Answer  // nil where the answer was taken away
	Theirs *assess.Answer
}

// Merge brings together what two sides made of the same base, address by
// address: theirs, with every change of mine that they left alone. The order
// of things, comments and unknown keys are theirs. Mine and theirs are not
// changed. It fails, with a *assess.Problem of the kind Conflict, where the day
// of the visit from one side and a year from the other cannot both be so.
func Merge(base, mine, theirs *Document) (*Document, []Clash, error) {
	m := &merger{base: base.job, mine: mine.job, theirs: theirs.job, out: theirs.clone()}
	m.header()
	m.things()
	m.answers()
	if sys := m.out.System(); sys != mine.System() || sys != theirs.System() {
		m.out.reword(sys)
	}
	if late := m.out.after(m.out.job.Visited); late != "" {
		return nil, nil, &assess.Problem{Kind: assess.Conflict, Place: late,
			What: message.New("record/merge.late"), Hint: message.New("record/merge.late_hint")}
	}
	return m.out, m.clashes, nil
}

type merger struct {
	base, mine, theirs *assess.Job
	out                *Document
	clashes            []Clash
	gone               []schema.Address // things that one of the sides took away
}

func (m *merger) header() {
	job := m.out.change()
	m.word("region", m.base.Region, m.mine.Region, &job.Region)
	m.word("units", m.base.Units, m.mine.Units, &job.Units)
	m.word("visited", string(m.base.Visited), string(m.mine.Visited), (*string)(&job.Visited))
}

func (m *merger) word(place, base, mine string, out *string) {
	switch {
	case mine == base || mine == *out:
	case *out == base:
		*out = mine
	default:
		m.clashes = append(m.clashes, Clash{Place: place, Mine: &assess.Answer{Text: mine}, Theirs: &assess.Answer{Text: *out}})
	}
}

// things merges which areas, zones and items there are, and their names.
func (m *merger) things() {
	base, mine, theirs := set(things(m.base)), set(things(m.mine)), set(things(m.theirs))
	for _, t := range things(m.base) {
		switch {
		case m.isGone(t):
		case !mine[t] && theirs[t]:
			m.takeAway(t, m.theirs, message.New("record/merge.mine_gone"), func() { drop(m.out.job, t) })
		case mine[t] && !theirs[t]:
			m.takeAway(t, m.mine, message.New("record/merge.theirs_gone"), func() {})
		}
	}
	for _, t := range things(m.mine) {
		if !base[t] && !theirs[t] && !m.isGone(t) {
			add(m.out.job, t)
		}
	}
	for _, a := range m.out.job.Areas {
		m.name(a.ID)
	}
}

// takeAway settles a thing that one side took away and the other may have changed.
func (m *merger) takeAway(thing schema.Address, other *assess.Job, what message.Message, act func()) {
	m.gone = append(m.gone, thing)
	if changedIn(thing, m.base, other) {
		m.clashes = append(m.clashes, Clash{Place: thingName(thing), What: what})
		return
	}
	act()
}

func (m *merger) name(area string) {
	mine, out := m.mine.Area(area), m.out.job.Area(area)
	if mine == nil {
		return
	}
	base := ""
	if b := m.base.Area(area); b != nil {
		base = b.Name
	}
	m.word(area+", name", base, mine.Name, &out.Name)
}

// answers merges the answers of the things that both sides still have.
func (m *merger) answers() {
	seen := map[schema.Address]bool{}
	for _, s := range append(statements(m.base), statements(m.mine)...) {
		if seen[s.addr] || m.isGone(thingOf(s.addr)) {
			continue
		}
		seen[s.addr] = true
		m.answer(s.addr)
	}
}

func (m *merger) answer(addr schema.Address) {
	base, mine, theirs := answerAt(m.base, addr), answerAt(m.mine, addr), answerAt(m.theirs, addr)
	switch {
	case alike(mine, base) || alike(mine, theirs):
	case !alike(theirs, base):
		m.clashes = append(m.clashes, Clash{Place: addr.String(), Answer: addr, Mine: mine, Theirs: theirs})
	case mine == nil:
		m.out.job.Forget(addr)
	default:
		m.out.job.Put(addr, *mine)
	}
}

func (m *merger) isGone(thing schema.Address) bool {
	for _, g := range m.gone {
		if within(thing, g) {
			return true
		}
	}
	return false
}

// changedIn reports whether a thing or anything in it differs between two jobs.
func changedIn(thing schema.Address, base, other *assess.Job) bool {
	now := set(things(other))
	before := set(things(base))
	for _, t := range append(things(base), things(other)...) {
		if within(t, thing) && now[t] != before[t] {
			return true
		}
	}
	for _, s := range append(statements(base), statements(other)...) {
		if within(s.addr, thing) && !alike(answerAt(base, s.addr), answerAt(other, s.addr)) {
			return true
		}
	}
	return false
}

func answerAt(j *assess.Job, addr schema.Address) *assess.Answer {
	if a, ok := j.Answer(addr); ok {
		return &a
	}
	return nil
}

func alike(a, b *assess.Answer) bool {
	if a == nil || b == nil {
		return a == b
	}
	return same(*a, *b)
}

func set(list []schema.Address) map[schema.Address]bool {
	out := make(map[schema.Address]bool, len(list))
	for _, t := range list {
		out[t] = true
	}
	return out
}

// add puts an empty thing at the end of its list; what encloses it is there.
func add(j *assess.Job, thing schema.Address) {
	area := j.Area(thing.Area)
	switch {
	case thing.Zone == "":
		j.Areas = append(j.Areas, assess.Area{ID: thing.Area})
	case thing.Item == "":
		area.Zones = append(area.Zones, assess.Zone{ID: thing.Zone})
	default:
		list, _ := schema.TopicScope(thing.Topic)
		zone := area.Zone(thing.Zone)
		zone.Lists[list] = append(zone.Lists[list], assess.Item{ID: thing.Item})
	}
}
