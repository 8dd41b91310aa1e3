// Package page writes a view as one HTML file that needs nothing else: no
// network, no script, no other file.
package page

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"sync"

	"underfoot/reports"
)

// Options say how the page is set.
type Options struct {
	Paper string // letter or a4, for printing; empty is letter
}

var (
	//go:embed page.tmpl
	layout string
	//go:embed page.css
	sheet string
	// the template is read when the first page is written, not when the program starts
	parsed = sync.OnceValue(func() *template.Template {
		return template.Must(template.New("page").Funcs(template.FuncMap{
			"tone": tone, "blocks": blocks, "outline": outline, "several": several,
		}).Parse(layout))
	})
)

// Write writes the page. The error names an unknown paper, or is that of the writer.
func Write(w io.Writer, v *reports.View, o Options) error {
	size, ok := map[string]string{"": "letter", "letter": "letter", "a4": "A4"}[o.Paper]
	if !ok {
		return fmt.Errorf("paper %q is neither letter nor a4", o.Paper)
	}
	var b bytes.Buffer
	err := parsed().Execute(&b, map[string]any{
		"View":     v,
		"Contents": v.Language.Text("report/page.contents"),
		"Style":    template.CSS("@page { size: " + size + "; }\n" + sheet),
	})
	if err != nil {
		return fmt.Errorf("fill in the page: %w", err)
	}
	if _, err := w.Write(b.Bytes()); err != nil {
		return fmt.Errorf("write the page: %w", err)
	}
	return nil
}
