package cli

import (
	_ "embed"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/cmd/internal/disk"
)

//go:embed demo.yaml
var demoRecord []byte

const demoNote = "Invented example: the street, the people and every reading are made up for the demonstration."

func (a *app) demoCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "demo [DIR]",
		Short: "The whole way on an invented job: record, findings, workbook, page",
		Long: `demo writes an invented record into DIR (default: underfoot-demo), assesses it,
prints the findings, and writes the workbook and the page beside it.`,
		Example: `  underfoot demo
  underfoot demo ~/Desktop/example`,
		Args: args(cobra.MaximumNArgs(1), "name at most one folder"),
		RunE: func(_ *cobra.Command, dirs []string) error {
			dir := "underfoot-demo"
			if len(dirs) == 1 {
				dir = dirs[0]
			}
			return a.demo(dir)
		},
	}
}

func (a *app) demo(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return &assess.Problem{Kind: assess.IO, Place: dir, What: message.Verbatim("the folder cannot be made"), Hint: message.Verbatim("name another: underfoot demo DIR"), Cause: err}
	}
	name := filepath.Join(dir, "example.yaml")
	if err := disk.WriteNew(name, demoRecord); err != nil {
		return err
	}
	f, err := a.load(name)
	if err != nil {
		return err
	}
	r := a.assess(f)
	if err := a.printText(r, demoNote, false); err != nil {
		return err
	}
	f.engine.Explain(r)
	for _, ending := range []string{".xlsx", ".html"} {
		if err := a.write(r, filepath.Join(dir, "example"+ending), "letter", demoNote); err != nil {
			return err
		}
	}
	return nil
}
