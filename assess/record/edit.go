package record

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/plaintext"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

func refuse(place string, what, hint message.Message) error {
	return &assess.Problem{Kind: assess.Usage, Place: place, What: what, Hint: hint}
}

// Put stores an answer. What the address leaves out is filled in where there
// is only one to choose from; an item that is not there is added at the end of
// its list. The answer's text decides; where it has none, it gets the text of
// its set. Errors are *assess.Problem of the kind Usage.
func (d *Document) Put(addr schema.Address, ans assess.Answer) error {
	decl, err := d.declaration(addr)
	if err != nil {
		return err
	}
	if ans, err = d.readable(addr, decl, ans); err != nil {
		return err
	}
	return d.put(addr, ans)
}

func (d *Document) put(addr schema.Address, ans assess.Answer) error {
	job := d.job.Normal()
	where, err := job.Locate(addr)
	if err != nil {
		return refuse("", message.Of(err), noHint)
	}
	if what, hint := checkID(where.Item); where.Item != "" && !what.IsZero() {
		return refuse(addr.String(), what, hint)
	}
	if scope, _ := schema.TopicScope(addr.Topic); scope == schema.ScopeJob {
		job = d.change()
	}
	job.Put(where, ans)
	d.job = job
	return nil
}

// declaration is the declaration of what an address names, where that can be answered.
func (d *Document) declaration(addr schema.Address) (*schema.Declaration, error) {
	all := d.values.Schema()
	scope, ok := schema.TopicScope(addr.Topic)
	decl := all.Find(addr.Short())
	if decl == nil && ok && scope.Listed() && addr.Field == "complete" {
		decl = completeWords(all, scope)
	}
	switch {
	case decl == nil:
		return nil, refuse(addr.String(), message.New("record/question.none"), assess.DidYouMean(addr.Short(), answerNames(all, scope)))
	case decl.Nature == schema.Derived:
		return nil, refuse(addr.String(), message.New("record/question.derived"), noHint)
	case decl.Scope.Listed() != (addr.Item != ""):
		return nil, refuse(addr.String(), message.New("record/question.which", "item", decl.Scope), message.New("record/question.example", "address", example(addr, decl)))
	}
	return decl, nil
}

func example(addr schema.Address, decl *schema.Declaration) string {
	if decl.Scope.Listed() {
		return addr.Topic + ".the-id." + addr.Field
	}
	return decl.ID
}

// readable is an answer as reading it from a file would give it.
func (d *Document) readable(addr schema.Address, decl *schema.Declaration, ans assess.Answer) (assess.Answer, error) {
	for _, text := range append([]string{ans.Text, ans.With, ans.Note}, ans.Photos...) {
		if plaintext.HasHidden(text) {
			return ans, refuse(addr.String(), message.New("record/hidden.in_answer"), message.New("record/hidden.hint"))
		}
	}
	if ans.On != "" && !validDay(string(ans.On)) {
		return ans, refuse(addr.String(), message.New("record/header.day", "day", strconv.Quote(string(ans.On))), message.New("record/header.write_day"))
	}
	if ans.Reply != assess.Given {
		ans.Set, ans.Text = schema.Set{}, ""
		return ans, nil
	}
	if ans.Text == "" {
		ans.Text = d.values.Write(decl, ans.Set, d.System())
	}
	set, err := read(d.values, decl, ans.Text, d.System(), d.job.Visited)
	if err != nil {
		what, hint := explain(d.values, decl, ans.Text, d.System(), err)
		return ans, refuse(addr.String(), what, hint)
	}
	ans.Set = set
	return ans, nil
}

// PutFamily answers every member of a family, such as danger or joist.trouble,
// with no, or with the reply of one who could not tell.
func (d *Document) PutFamily(area, zone, family string, like assess.Answer) error {
	ms := members(d.values.Schema(), family, schema.ScopeZone)
	if len(ms) == 0 {
		return refuse(family, message.New("record/question.no_family"),
			message.New("record/question.families", "families", strings.Join(families(d.values.Schema(), schema.ScopeZone), ", ")))
	}
	for _, m := range ms {
		topic, field, _ := strings.Cut(m.ID, ".")
		addr := schema.Address{Area: area, Zone: zone, Topic: topic, Field: field}
		if err := d.Put(addr, none(m, like)); err != nil {
			return err
		}
	}
	return nil
}

// Forget takes the answer at a located address away; it does nothing where
// there is none.
func (d *Document) Forget(addr schema.Address) { d.change().Forget(addr) }

// SetHeader stores region, units and day of the visit; an empty word leaves
// what stands. Where another system of units would read an answer otherwise,
// its text is written anew, so that it keeps its meaning.
func (d *Document) SetHeader(region, unitWord string, visited assess.Day) error {
	switch {
	case region != "" && !slices.Contains(figure.Regions, region):
		return refuse("region", message.New("record/header.word", "word", strconv.Quote(region), "key", "region"), assess.OneOf(region, figure.Regions))
	case unitWord != "" && !slices.Contains(units, unitWord):
		return refuse("units", message.New("record/header.word", "word", strconv.Quote(unitWord), "key", "units"), assess.OneOf(unitWord, units))
	case visited != "" && !validDay(string(visited)):
		return refuse("visited", message.New("record/header.day", "day", strconv.Quote(string(visited))), message.New("record/header.write_day"))
	}
	if late := d.after(visited); late != "" {
		return refuse("visited", message.New("record/header.late", "address", late, "visited", visited), message.New("record/header.first"))
	}
	before, job := d.System(), d.change()
	keep(&job.Region, region)
	keep(&job.Units, unitWord)
	keep((*string)(&job.Visited), string(visited))
	if now := d.System(); now != before {
		d.reword(now)
	}
	return nil
}

// after is the address of a year that lies after a day; empty where none does.
func (d *Document) after(day assess.Day) string {
	for _, s := range statements(d.job) {
		decl := d.values.Schema().Find(s.addr.Short())
		if day != "" && decl != nil && late(decl, s.ans.Set, day) {
			return s.addr.String()
		}
	}
	return ""
}

func keep(old *string, given string) {
	if given != "" {
		*old = given
	}
}

// reword writes anew what the system of units would read otherwise.
func (d *Document) reword(sys quantity.System) {
	for _, said := range statements(d.job) {
		decl := d.values.Schema().Find(said.addr.Short())
		if decl == nil || decl.Kind != schema.KindQuantity || said.ans.Reply != assess.Given {
			continue
		}
		if set, err := d.values.Read(decl, said.ans.Text, sys); err == nil && set == said.ans.Set {
			continue
		}
		ans := said.ans
		ans.Text = d.values.Write(decl, ans.Set, sys)
		d.job.Put(said.addr, ans)
	}
}
