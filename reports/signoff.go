package reports

// signOff is where the owner's decisions and the signatures go.
func (b *builder) signOff() Section {
	s := b.section(SignOffSection)
	s.Detail = true
	s.Lead = []Para{{Text: b.say("report/sign-off.lead")}}
	s.addTable(b.say("report/sign-off.decisions"), b.decisionTable().Of(b.language, b.decisions()))
	s.addTable(b.say("report/sign-off.signatures"), b.signatureTable().Of(b.language, []string{"owner", "setter", "inspector"}))
	return s
}

// A matter is what somebody has to decide.
type matter struct{ place, text string }

// decisions are what leads in each zone and the deciding question of each room.
func (b *builder) decisions() []matter {
	var list []matter
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for _, z := range a.Zones {
			list = append(list, matter{place(a, z.ID), b.say("report/sign-off.go_on", "path", b.path(z.Path))})
		}
		if q := deciding(a); q != "" {
			list = append(list, matter{areaName(a), b.say("report/sign-off.find", "question", q)})
		}
	}
	return list
}

// decisionTable has room for each decision, a refusal included.
func (b *builder) decisionTable() TableOf[matter] {
	return TableOf[matter]{ID: "decisions", Shape: Grid, Columns: []ColumnOf[matter]{
		TextColumn("report/column.place", Group, 18, func(m matter) string { return m.place }),
		TextColumn("report/column.matter", Title, 44, func(m matter) string { return m.text }),
		blankColumn[matter]("report/column.decision", 34),
		blankColumn[matter]("report/column.by", 22),
		blankColumn[matter]("report/column.date", 14),
	}}
}

// signatureTable has room for the signature of each role.
func (b *builder) signatureTable() TableOf[string] {
	return TableOf[string]{ID: "signatures", Shape: Grid, Columns: []ColumnOf[string]{
		TextColumn("report/column.role", Title, 16, func(role string) string { return b.say("report/sign-off." + role) }),
		TextColumn("report/column.statement", Detail, 50, func(role string) string { return b.say("report/sign-off." + role + "_text") }),
		blankColumn[string]("report/column.signer", 26),
		blankColumn[string]("report/column.signature", 26),
		blankColumn[string]("report/column.date", 14),
	}}
}
