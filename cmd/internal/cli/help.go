package cli

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// describe gives a command its help: key is the table in which its texts stand.
func (a *app) describe(c *cobra.Command, key string) *cobra.Command {
	c.Short = a.say(key + "short")
	c.Long = a.language.Or(key+"long", "")
	if example := a.language.Or(key+"example", ""); example != "" {
		c.Example = "  " + strings.ReplaceAll(example, "\n", "\n  ")
	}
	return c
}

// help says what the library says of commands and flags in the language of the
// reader. The scripts that it writes for shells stay its own.
func (a *app) help(root *cobra.Command) {
	root.SetHelpCommand(a.helpCommand())
	root.SetUsageFunc(func(c *cobra.Command) error { return a.printUsage(c.OutOrStderr(), c) })
	root.SetHelpFunc(func(c *cobra.Command, _ []string) { a.printHelp(c) })
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Short = a.say("cli/completion.help.short")
		}
	}
	a.helpFlags(root)
}

// helpFlags gives every command its --help.
func (a *app) helpFlags(c *cobra.Command) {
	c.Flags().BoolP("help", "h", false, a.say("cli/help.flag", "command", c.Name()))
	for _, below := range c.Commands() {
		a.helpFlags(below)
	}
}

func (a *app) helpCommand() *cobra.Command {
	return a.describe(&cobra.Command{
		Use: "help [command]",
		ValidArgsFunction: func(c *cobra.Command, args []string, _ string) (names []string, d cobra.ShellCompDirective) {
			if of, _, err := c.Root().Find(args); err == nil {
				for _, below := range of.Commands() {
					names = append(names, cobra.CompletionWithDesc(below.Name(), below.Short))
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			of, _, err := c.Root().Find(args)
			if err != nil {
				return err
			}
			return of.Help()
		},
	}, "cli/help_command.help.")
}

func (a *app) printHelp(c *cobra.Command) {
	text := c.Long
	if text == "" {
		text = c.Short
	}
	fmt.Fprintf(a.Out, "%s\n\n", strings.TrimRight(text, "\n"))
	if c.Runnable() || c.HasSubCommands() {
		_ = a.printUsage(a.Out, c) // Out remembers what went wrong
	}
}

// printUsage is how a command is called, in the order that people know from
// other programs.
func (a *app) printUsage(w io.Writer, c *cobra.Command) error {
	parts := []string{a.callLines(c)}
	add := func(head, body string) {
		if body != "" {
			parts = append(parts, head+"\n"+body)
		}
	}
	add(a.say("cli/help.examples"), c.Example)
	add(a.say("cli/help.commands"), commandLines(c))
	add(a.say("cli/help.flags"), a.flagLines(c.LocalFlags()))
	add(a.say("cli/help.global"), a.flagLines(c.InheritedFlags()))
	add(a.say("cli/help.topics"), topicLines(c))
	if c.HasAvailableSubCommands() {
		parts = append(parts, a.say("cli/help.more", "command", c.CommandPath()))
	}
	_, err := fmt.Fprintln(w, strings.Join(parts, "\n\n"))
	return err
}

func (a *app) callLines(c *cobra.Command) string {
	text := a.say("cli/help.usage")
	if c.Runnable() {
		text += "\n  " + c.UseLine()
	}
	if c.HasAvailableSubCommands() {
		text += "\n  " + c.CommandPath() + " [command]"
	}
	return text
}

func commandLines(c *cobra.Command) string {
	var lines []string
	for _, below := range c.Commands() {
		if below.IsAvailableCommand() || below.Name() == "help" {
			lines = append(lines, fmt.Sprintf("  %-*s %s", below.NamePadding(), below.Name(), below.Short))
		}
	}
	return strings.Join(lines, "\n")
}

func topicLines(c *cobra.Command) string {
	var lines []string
	for _, below := range c.Commands() {
		if below.IsAdditionalHelpTopicCommand() {
			lines = append(lines, fmt.Sprintf("  %-*s %s", below.CommandPathPadding(), below.CommandPath(), below.Short))
		}
	}
	return strings.Join(lines, "\n")
}

// standard is where the library says what a flag is when nobody sets it.
var standard = regexp.MustCompile(`\(default (.*)\)\n`)

func (a *app) flagLines(f *pflag.FlagSet) string {
	if !f.HasAvailableFlags() {
		return ""
	}
	lines := standard.ReplaceAllStringFunc(f.FlagUsages(), func(m string) string {
		return a.say("cli/help.default", "value", standard.FindStringSubmatch(m)[1]) + "\n"
	})
	return strings.TrimRight(lines, "\n")
}
