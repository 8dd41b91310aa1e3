package message_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
)

const module = "../.."

// sentences are the English sentences by key, with the holes of each.
func sentences(t *testing.T) map[string][]string {
	t.Helper()
	all := map[string][]string{}
	files, _ := filepath.Glob("en/*.toml")
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		var tree map[string]any
		if err := toml.Unmarshal(data, &tree); err != nil {
			t.Fatalf("%s: %v", f, err)
		}
		flatten(tree, strings.TrimSuffix(filepath.Base(f), ".toml")+"/", all)
	}
	return all
}

var hole = regexp.MustCompile(`\{([a-z][a-z0-9_]*)\}`)

func flatten(tree map[string]any, prefix string, into map[string][]string) {
	for name, v := range tree {
		switch v := v.(type) {
		case string:
			names := []string{}
			for _, m := range hole.FindAllStringSubmatch(v, -1) {
				names = append(names, m[1])
			}
			slices.Sort(names)
			into[prefix+name] = slices.Compact(names)
		case map[string]any:
			flatten(v, prefix+name+".", into)
		}
	}
}

// parsed calls visit for every Go file of the module that is no test.
func parsed(t *testing.T, visit func(path string, file *ast.File, set *token.FileSet)) {
	t.Helper()
	set := token.NewFileSet()
	err := filepath.WalkDir(module, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && d.Name() != ".." || d.Name() == "message"):
			if path != module {
				return filepath.SkipDir
			}
		case strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go"):
			file, err := parser.ParseFile(set, path, nil, 0)
			if err != nil {
				return err
			}
			visit(path, file, set)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// TestEveryKeyIsSaidAndEverySaidKeyIsThere holds the sentences against the code.
// A key stands in the code as one literal, or as a literal that ends in a dot
// with the rest joined to it, which stands for every key below it. Behind a key
// in a call stand the names and values of its holes.
func TestEveryKeyIsSaidAndEverySaidKeyIsThere(t *testing.T) {
	all := sentences(t)
	rooms := map[string]bool{}
	for key := range all {
		rooms[key[:strings.IndexByte(key, '/')]] = true
	}
	said := map[string]bool{}
	isKey := func(e ast.Expr) (string, bool) {
		text, ok := literal(e)
		room, _, slash := strings.Cut(text, "/")
		return text, ok && slash && rooms[room] && !strings.HasSuffix(text, ".toml")
	}
	parsed(t, func(path string, file *ast.File, set *token.FileSet) {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.CallExpr:
				for i, arg := range n.Args {
					if key, ok := isKey(arg); ok && all[key] != nil && n.Ellipsis == token.NoPos {
						checkHoles(t, set, n, key, all[key], n.Args[i+1:])
					}
				}
			case *ast.BasicLit:
				key, ok := isKey(n)
				switch {
				case !ok:
				case strings.HasSuffix(key, ".") || strings.HasSuffix(key, "/"):
					for k := range all {
						said[k] = said[k] || strings.HasPrefix(k, key)
					}
				case all[key] == nil:
					t.Errorf("%s: there is no sentence %s", set.Position(n.Pos()), key)
				default:
					said[key] = true
				}
			}
			return true
		})
	})
	for _, key := range slices.Sorted(maps.Keys(all)) {
		if !said[key] {
			t.Errorf("nobody says %s", key)
		}
	}
}

// checkHoles compares the pairs behind a key with the holes of its sentence.
func checkHoles(t *testing.T, set *token.FileSet, call *ast.CallExpr, key string, want []string, pairs []ast.Expr) {
	got := []string{}
	for i := 0; i < len(pairs); i += 2 {
		name, ok := literal(pairs[i])
		if !ok || strings.Contains(name, "/") {
			return // not pairs: a table of keys, or names that are worked out
		}
		got = append(got, name)
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("%s: %s has the holes %v, the call fills %v", set.Position(call.Pos()), key, want, got)
	}
}

func literal(e ast.Expr) (string, bool) {
	b, ok := e.(*ast.BasicLit)
	if !ok || b.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(b.Value)
	return text, err == nil
}
