package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/cmd/internal/disk"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/page"
	"underfoot/reports/text"
	"underfoot/reports/workbook"
)

func (a *app) reportCommand() *cobra.Command {
	var out, paper string
	c := &cobra.Command{
		Use:   "report FILE -o OUT",
		Short: "Write the findings as a workbook, page, text or JSON file",
		Example: `  underfoot report kitchen.yaml -o kitchen.xlsx
  underfoot report kitchen.yaml -o kitchen.html --paper a4
  underfoot report kitchen.yaml -o kitchen.txt`,
		Args: args(cobra.ExactArgs(1), "name one record, or - for the standard input"),
		RunE: func(_ *cobra.Command, files []string) error {
			if out == "" {
				return usage("there is no -o OUT", "name the file to write, ending in .xlsx, .html, .txt or .json")
			}
			if paper != "letter" && paper != "a4" {
				return usage("--paper "+paper+" is not a paper", "it is letter or a4")
			}
			f, err := a.load(files[0])
			if err != nil {
				return err
			}
			r := a.assess(f)
			f.engine.Explain(r)
			return a.write(r, out, paper, "")
		},
	}
	c.Flags().StringVarP(&out, "output", "o", "", "file to write: .xlsx, .html, .txt or .json")
	c.Flags().StringVar(&paper, "paper", "letter", "paper of the workbook and the page: letter or a4")
	if err := c.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions([]string{"letter", "a4"}, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic("cli: " + err.Error())
	}
	return c
}

// write renders a result by the ending of the file's name and puts it in
// place whole, or not at all.
func (a *app) write(r *assess.Result, out, paper, note string) error {
	rendered, err := render(r, out, paper, note)
	if err != nil {
		return err
	}
	if err := disk.WriteNew(out, rendered); err != nil {
		return err
	}
	fmt.Fprintf(a.Err, "wrote %s\n", out)
	return nil
}

func render(r *assess.Result, out, paper, note string) ([]byte, error) {
	v := reports.NewView(r, reports.Options{Units: r.Units, Note: note})
	var b bytes.Buffer
	var err error
	switch strings.ToLower(filepath.Ext(out)) {
	case ".xlsx":
		return workbook.Build(v, workbook.Options{Paper: paper, Cached: true})
	case ".html":
		err = page.Write(&b, v, page.Options{Paper: paper})
	case ".txt":
		err = text.Write(&b, v, text.Options{Width: 80, All: true})
	case ".json":
		err = data.Write(&b, r, data.Options{All: true})
	default:
		return nil, usage(out+" does not end in a format that there is", "end it in .xlsx, .html, .txt or .json")
	}
	return b.Bytes(), err
}
