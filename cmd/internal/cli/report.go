package cli

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/cmd/internal/disk"
	"underfoot/reports"
	"underfoot/reports/data"
	"underfoot/reports/page"
	"underfoot/reports/text"
	"underfoot/reports/workbook"
)

func (a *app) reportCommand() *cobra.Command {
	var out, paper string
	c := a.describe(&cobra.Command{
		Use:  "report FILE -o OUT",
		Args: exactly(1, message.New("cli/report.arguments")),
		RunE: func(_ *cobra.Command, files []string) error {
			if out == "" {
				return usage(message.New("cli/report.no_output"), message.New("cli/report.name_file", "endings", message.New("cli/report.endings")))
			}
			if paper != "letter" && paper != "a4" {
				return usage(message.New("cli/report.paper", "given", paper), message.New("cli/report.papers"))
			}
			f, err := a.load(files[0])
			if err != nil {
				return err
			}
			return a.write(a.explained(f), out, paper, "")
		},
	}, "cli/report.help.")
	c.Flags().StringVarP(&out, "output", "o", "", a.say("cli/report.flag.output", "endings", message.New("cli/report.endings")))
	c.Flags().StringVar(&paper, "paper", "letter", a.say("cli/report.flag.paper"))
	completeFlag(c, "paper", []string{"letter", "a4"})
	return c
}

// write renders a result by the ending of the file's name and puts it in
// place whole, or not at all.
func (a *app) write(r *result.Result, out, paper, note string) error {
	rendered, err := render(r, out, paper, note)
	if err != nil {
		return err
	}
	if err := disk.WriteNew(out, rendered); err != nil {
		return err
	}
	a.wrote(out)
	return nil
}

func (a *app) wrote(file string) { fmt.Fprintln(a.Err, a.say("cli/problem.wrote", "file", file)) }

func render(r *result.Result, out, paper, note string) ([]byte, error) {
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
		return nil, usage(message.New("cli/problem.no_format", "file", out), message.New("cli/report.end_in", "endings", message.New("cli/report.endings")))
	}
	return b.Bytes(), err
}
