package reports

// signOff is where the owner's decisions and the signatures go.
func (b *builder) signOff() Section {
	s := b.section(SignOffSection)
	s.Detail = true
	s.Lead = []Para{{Text: b.say("report/sign-off.lead")}}
	s.addTable(b.say("report/sign-off.decisions"), b.decisions())
	s.addTable(b.say("report/sign-off.signatures"), b.signatures())
	return s
}

// decisions has a row for what leads in each zone and one for the deciding
// question of each room, with room for the decision, a refusal included.
func (b *builder) decisions() *Table {
	t := &Table{ID: "decisions", Shape: Grid, Columns: []Column{
		b.column("place", Group, 18), b.column("matter", Title, 44), b.column("decision", Detail, 34),
		b.column("by", Detail, 22), b.column("date", Detail, 14),
	}}
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for _, z := range a.Zones {
			t.addBlank(3, place(a, z.ID), b.say("report/sign-off.go_on", "path", b.path(z.Path)))
		}
		if q := deciding(a); q != "" {
			t.addBlank(3, areaName(a), b.say("report/sign-off.find", "question", q))
		}
	}
	return t
}

func (b *builder) signatures() *Table {
	t := &Table{ID: "signatures", Shape: Grid, Columns: []Column{
		b.column("role", Title, 16), b.column("statement", Detail, 50), b.column("signer", Detail, 26),
		b.column("signature", Detail, 26), b.column("date", Detail, 14),
	}}
	for _, role := range []string{"owner", "setter", "inspector"} {
		t.addBlank(3, b.say("report/sign-off."+role), b.say("report/sign-off."+role+"_text"))
	}
	return t
}

// addBlank adds a row that ends in n cells to be filled in by hand.
func (t *Table) addBlank(n int, texts ...string) {
	row := Row{Cells: cells(texts...)}
	for range n {
		row.Cells = append(row.Cells, Cell{Blank: true})
	}
	t.Rows = append(t.Rows, row)
}
