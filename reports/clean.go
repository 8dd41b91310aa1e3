package reports

import "underfoot/assess/plaintext"

// Clean cleans every text of the view, so that no format has to. Who makes a view
// does it last.
func (v *View) Clean() {
	cleanParas(v.Lead)
	for _, text := range []*string{&v.Title, &v.Subtitle} {
		*text = plaintext.Clean(*text)
	}
	for i := range v.Banners {
		v.Banners[i] = plaintext.Clean(v.Banners[i])
	}
	for i := range v.Sections {
		s := &v.Sections[i]
		cleanParas(s.Lead)
		for j := range s.Parts {
			s.Parts[j].clean()
		}
	}
}

func (p *Part) clean() {
	p.Heading = plaintext.Clean(p.Heading)
	cleanParas(p.Lead)
	if p.Table != nil {
		for _, row := range p.Table.Rows {
			for i := range row.Cells {
				row.Cells[i].Text = plaintext.Clean(row.Cells[i].Text)
				cleanLinks(row.Cells[i].Links)
			}
		}
	}
	if p.Calculation != nil {
		for i := range p.Calculation.Lines {
			l := &p.Calculation.Lines[i]
			l.What, l.Source = plaintext.Clean(l.What), plaintext.Clean(l.Source)
		}
	}
	if p.Build != nil {
		for i := range p.Build.Layers {
			l := &p.Build.Layers[i]
			l.Name, l.Source = plaintext.Clean(l.Name), plaintext.Clean(l.Source)
		}
	}
}

func cleanParas(list []Para) {
	for i := range list {
		list[i].Label, list[i].Text = plaintext.Clean(list[i].Label), plaintext.Clean(list[i].Text)
		cleanLinks(list[i].Links)
	}
}

func cleanLinks(list []Link) {
	for i := range list {
		list[i].Text, list[i].Note = plaintext.Clean(list[i].Text), plaintext.Clean(list[i].Note)
	}
}
