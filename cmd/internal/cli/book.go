package cli

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/cmd/internal/disk"
	"underfoot/reports"
	"underfoot/reports/book"
	"underfoot/reports/markdown"
	"underfoot/reports/page"
	"underfoot/reports/text"
	"underfoot/reports/workbook"
	"underfoot/rules"
)

func (a *app) rulesBook() *cobra.Command {
	var out string
	c := a.describe(&cobra.Command{
		Use:  "book",
		Args: none(message.New("cli/book.arguments")),
		RunE: func(*cobra.Command, []string) error { return a.book(out) },
	}, "cli/book.help.")
	c.Flags().StringVarP(&out, "output", "o", "-", a.say("cli/book.flag.output"))
	return c
}

func (a *app) book(out string) error {
	ending := strings.ToLower(filepath.Ext(out))
	if out != "-" && !slices.Contains([]string{".md", ".html", ".txt", ".xlsx"}, ending) {
		return usage(message.New("cli/problem.no_format", "file", out), message.New("cli/book.end_in"))
	}
	var engines []*rules.Engine
	for _, region := range a.packRegions() {
		e, err := a.open(region, a.system())
		if err != nil {
			return err
		}
		engines = append(engines, e)
	}
	v, err := book.New(engines)
	if err != nil {
		return err
	}
	if out == "-" {
		return markdown.Write(a.Out, v)
	}
	rendered, err := renderBook(v, ending)
	if err != nil {
		return err
	}
	if err := disk.WriteNew(out, rendered); err != nil {
		return err
	}
	a.wrote(out)
	return nil
}

func renderBook(v *reports.View, ending string) (rendered []byte, err error) {
	var b bytes.Buffer
	switch ending {
	case ".html":
		err = page.Write(&b, v, page.Options{})
	case ".xlsx":
		return workbook.Build(v, workbook.Options{})
	case ".txt":
		err = text.Write(&b, v, text.Options{All: true})
	default:
		err = markdown.Write(&b, v)
	}
	return b.Bytes(), err
}
