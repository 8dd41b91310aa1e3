package cli

import (
	"bytes"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/cmd/internal/disk"
	"underfoot/rules"
	"underfoot/rules/book"
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
	if out != "-" && ending != ".md" && ending != ".html" {
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
	b, err := book.New(engines)
	if err != nil {
		return err
	}
	if out == "-" {
		return b.Markdown(a.Out)
	}
	var text bytes.Buffer
	write := b.Markdown
	if ending == ".html" {
		write = b.HTML
	}
	if err := write(&text); err != nil {
		return err
	}
	if err := disk.WriteNew(out, text.Bytes()); err != nil {
		return err
	}
	a.wrote(out)
	return nil
}
