// Package cli is the command tree: flags in, exit code out. Each command is a
// thin shell over the rooms below.
package cli

import (
	"context"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/cmd/internal/console"
	"underfoot/rules/pack"
)

// app is what all commands share: the streams, the day, the global flags.
type app struct {
	*console.Streams
	today    assess.Day
	region   string
	units    string
	lang     string
	language *message.Language
	day      string
	plain    bool     // --no-color
	files    []string // --pack
	packs    []*pack.Local
	engines  engines
}

// Run runs the command line and returns the exit code.
func Run(ctx context.Context, s *console.Streams, args []string) int {
	a := &app{Streams: s, engines: engines{}, language: languageOf(args)}
	root := a.root()
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	err := asUsage(root, root.ExecuteContext(ctx))
	if failed := s.Out.Problem(); failed != nil {
		err = failed
	}
	a.report(err)
	return codeOf(err)
}

// say is a sentence in the language of the reader.
func (a *app) say(key string, pairs ...any) string { return a.language.Text(key, pairs...) }

func (a *app) root() *cobra.Command {
	root := a.describe(&cobra.Command{
		Use:               "underfoot",
		SilenceUsage:      true,
		SilenceErrors:     true,
		PersistentPreRunE: func(*cobra.Command, []string) error { return a.settle() },
	}, "cli/root.help.")
	a.globalFlags(root)
	root.SetFlagErrorFunc(flagProblem)
	root.AddCommand(a.demoCommand(), a.walkCommand(), a.assessCommand(), a.compareCommand(), a.reportCommand(), a.setCommand(),
		a.schemaCommand(), a.rulesCommand(), a.joistCommand(), a.describe(&cobra.Command{Use: "exit-codes"}, "cli/exit_codes.help."))
	a.complete(root)
	a.help(root)
	return root
}

func (a *app) globalFlags(root *cobra.Command) {
	f := root.PersistentFlags()
	f.StringVar(&a.units, "units", "", a.say("cli/root.flag.units"))
	f.StringVar(&a.lang, "lang", message.English().Tag, a.say("cli/root.flag.lang"))
	f.StringVar(&a.day, "today", "", a.say("cli/root.flag.today"))
	f.StringVar(&a.region, "region", "", a.say("cli/root.flag.region", "regions", strings.Join(figure.Regions, ", ")))
	f.StringArrayVar(&a.files, "pack", nil, a.say("cli/root.flag.pack"))
	f.BoolVar(&a.plain, "no-color", false, a.say("cli/root.flag.no_color"))
}

// settle reads the global flags that have a value to check.
func (a *app) settle() error {
	var err error
	if a.today, err = a.Today(a.day, time.Now); err != nil {
		return err
	}
	if a.units != "" && !slices.Contains(systems, a.units) {
		return usage(message.New("cli/wrong.units", "given", a.units), message.New("cli/hint.units"))
	}
	if a.region != "" && !slices.Contains(figure.Regions, a.region) {
		return usage(message.New("cli/wrong.region", "given", a.region), oneOf(figure.Regions))
	}
	if a.lang != a.language.Tag {
		return usage(message.New("cli/wrong.lang", "given", a.lang), oneOf(message.Tags()))
	}
	if a.plain {
		a.NoColor()
	}
	return a.readPacks(a.files)
}

// systems are the words of --units.
var systems = []string{"us", "mm"}

func (a *app) system() quantity.System {
	if a.units == "mm" {
		return quantity.Metric
	}
	return quantity.US
}

// complete gives the global flags their completions.
func (a *app) complete(root *cobra.Command) {
	for flag, words := range map[string][]string{"units": systems, "region": figure.Regions, "lang": message.Tags()} {
		completeFlag(root, flag, words)
	}
}

// completeFlag offers the words of a flag. A flag that is not there is a
// programming error and panics.
func completeFlag(c *cobra.Command, flag string, words []string) {
	if err := c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp)); err != nil {
		panic("cli: " + err.Error())
	}
}
