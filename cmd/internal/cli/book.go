package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/cmd/internal/disk"
	"underfoot/rules"
	"underfoot/rules/book"
)

func (a *app) rulesBook() *cobra.Command {
	var out string
	c := &cobra.Command{
		Use:   "book",
		Short: "Write the whole logic as one readable document",
		Long: `book writes every rule, way to go on, figure, caution and source as one document,
generated from the records that the program works with. Without --region it
holds the rules of every region and says where each applies; conditions are put
in words with the figures of the first.`,
		Example: `  underfoot rules book                       Markdown on the standard output
  underfoot rules book -o rules.html
  underfoot rules book --region uk --units mm -o rules-uk.md`,
		Args: args(cobra.NoArgs, "rules book takes no arguments; name the file with -o"),
		RunE: func(*cobra.Command, []string) error { return a.book(out) },
	}
	c.Flags().StringVarP(&out, "output", "o", "-", "file to write, .md or .html; - is Markdown on the standard output")
	return c
}

func (a *app) book(out string) error {
	ending := strings.ToLower(filepath.Ext(out))
	if out != "-" && ending != ".md" && ending != ".html" {
		return usage(out+" does not end in a format that there is", "end it in .md or .html")
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
	fmt.Fprintf(a.Err, "wrote %s\n", out)
	return nil
}
