package message_test

import (
	"go/ast"
	"go/token"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// stray is how many sentences still stand in the Go of a room, which may only
// become fewer. A room that is not here has none.
var stray = map[string]int{
	"assess/quantity": 3, // units as people write them
}

// words in a row make a sentence, or a part of one.
var fourWords = regexp.MustCompile(`(?:[A-Za-z][A-Za-z'’-]*[,;:]? +){3}[A-Za-z]`)

// TestNoSentenceStandsInGo counts literals of four words in a row. What only a
// programmer reads is left out: what panics, and what errors.New and fmt.Errorf
// say of the shipped data.
func TestNoSentenceStandsInGo(t *testing.T) {
	found := map[string][]string{}
	parsed(t, func(path string, file *ast.File, set *token.FileSet) {
		room, _ := filepath.Rel(module, filepath.Dir(path))
		if room == "reports/internal/sample" {
			return // an invented result, for tests
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				return !forProgrammers(n)
			case *ast.Field:
				return n.Tag == nil // struct tags are no text
			case *ast.BasicLit:
				if text, ok := literal(n); ok && fourWords.MatchString(text) {
					found[room] = append(found[room], set.Position(n.Pos()).String()+": "+text)
				}
			}
			return true
		})
	})
	for room, list := range found {
		if len(list) > stray[room] {
			t.Errorf("%s: %d sentences, allowed are %d\n%s", room, len(list), stray[room], strings.Join(list, "\n"))
		}
	}
	for room, n := range stray {
		if len(found[room]) < n {
			t.Errorf("%s has %d sentences left: write that number, or take the row out", room, len(found[room]))
		}
	}
}

func forProgrammers(call *ast.CallExpr) bool {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name == "panic"
	case *ast.SelectorExpr:
		x, _ := f.X.(*ast.Ident)
		return x != nil && (x.Name == "errors" && f.Sel.Name == "New" || x.Name == "fmt" && f.Sel.Name == "Errorf")
	}
	return false
}
