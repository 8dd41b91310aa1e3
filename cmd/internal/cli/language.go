package cli

import (
	"strings"

	"underfoot/assess/message"
)

// languageOf is the language that a command line asks for. It is looked up
// before the command line is read, for what is wrong with it, and help, are said
// in that language too. Where there is no such language it is English, which
// also refuses the word.
func languageOf(args []string) *message.Language {
	if l, ok := message.Open(tagIn(args)); ok {
		return l
	}
	return message.English()
}

// tagIn is the value of the last --lang, empty where none is said.
func tagIn(args []string) (tag string) {
	for i, arg := range args {
		switch value, joined := strings.CutPrefix(arg, "--lang="); {
		case arg == "--":
			return tag
		case joined:
			tag = value
		case arg == "--lang" && i+1 < len(args):
			tag = args[i+1]
		}
	}
	return tag
}
