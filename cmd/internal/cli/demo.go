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

func (a *app) demoCommand() *cobra.Command {
	return a.describe(&cobra.Command{
		Use:  "demo [DIR]",
		Args: atMost(1, message.New("cli/demo.arguments")),
		RunE: func(_ *cobra.Command, dirs []string) error {
			dir := "underfoot-demo"
			if len(dirs) == 1 {
				dir = dirs[0]
			}
			return a.demo(dir)
		},
	}, "cli/demo.help.")
}

func (a *app) demo(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return &assess.Problem{Kind: assess.IO, Place: dir, What: message.New("cli/demo.folder"), Hint: message.New("cli/demo.folder_hint"), Cause: err}
	}
	name := filepath.Join(dir, "example.yaml")
	if err := disk.WriteNew(name, demoRecord); err != nil {
		return err
	}
	f, err := a.load(name)
	if err != nil {
		return err
	}
	r := a.explained(f)
	if err := a.printText(r, a.say("cli/demo.note"), false); err != nil {
		return err
	}
	for _, ending := range []string{".xlsx", ".html"} {
		if err := a.write(r, filepath.Join(dir, "example"+ending), "letter", a.say("cli/demo.note")); err != nil {
			return err
		}
	}
	return nil
}
