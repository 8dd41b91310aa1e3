package workbook

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"
)

// setPage sets paper, margins, header and footer, what stays in sight and what
// is repeated on each printed page.
func (s *sheet) setPage() {
	landscape, wide, tall := "landscape", 1, 0
	if s.width(s.printed) <= 90 {
		landscape = "portrait"
	}
	s.try(s.file.SetPageLayout(s.name, &excelize.PageLayoutOptions{
		Size: &s.paper, Orientation: &landscape, FitToWidth: &wide, FitToHeight: &tall,
	}))
	fit := true
	s.try(s.file.SetSheetProps(s.name, &excelize.SheetPropsOptions{FitToPage: &fit}))
	side, end, edge := 0.5, 0.75, 0.3
	s.try(s.file.SetPageMargins(s.name, &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &end, Bottom: &end, Header: &edge, Footer: &edge,
	}))
	s.running()
	s.inSight()
	s.onPaper()
	grid := false
	s.try(s.file.SetSheetView(s.name, 0, &excelize.ViewOptions{ShowGridLines: &grid}))
}

// running sets the header and footer; the first sentence of the first banner
// stands on every page.
func (s *sheet) running() {
	banner := ""
	if len(s.view.Banners) > 0 {
		banner, _, _ = strings.Cut(s.view.Banners[0], ". ")
	}
	s.try(s.file.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{
		OddHeader: "&L&8" + running(s.view.Title+" - "+s.view.Subtitle, 200),
		OddFooter: "&L&8" + running(banner, 150) + "&R&8" + running(s.say("report/workbook.page"), 20) + " &P " + running(s.say("report/workbook.of"), 20) + " &N",
	}))
}

// running is a text as headers take it: an ampersand doubled, no line feed, no
// leading digit that would be read as a size, and short enough.
func running(text string, most int) string {
	runes := []rune(strings.ReplaceAll(text, "\n", " "))
	if len(runes) > most {
		runes = append(runes[:most-len(cut)], []rune(cut)...)
	}
	text = strings.ReplaceAll(string(runes), "&", "&&")
	if text != "" && text[0] >= '0' && text[0] <= '9' {
		return " " + text
	}
	return text
}

func (s *sheet) inSight() {
	s.try(s.file.SetPanes(s.name, &excelize.Panes{
		Freeze: true, YSplit: s.frozen, TopLeftCell: cellName(1, s.frozen+1), ActivePane: "bottomLeft",
	}))
}

// onPaper repeats the last frozen row on each page and keeps the columns for
// looking things up off it.
func (s *sheet) onPaper() {
	ref := reference(s.name)
	s.try(s.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", Scope: s.name, RefersTo: fmt.Sprintf("%s!$%d:$%d", ref, s.frozen, s.frozen),
	}))
	letter, _ := excelize.ColumnNumberToName(s.printed)
	s.try(s.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", Scope: s.name, RefersTo: fmt.Sprintf("%s!$A$1:$%s$%d", ref, letter, s.row),
	}))
}

// contents lists the other sheets with links to them.
func (s *sheet) contents() {
	s.row++
	for _, other := range s.view.Sections[1:] {
		s.line(other.Heading, linkLook)
		s.try(s.file.SetCellHyperLink(s.name, s.at(1), reference(other.Sheet)+"!A1", "Location"))
	}
}
