package cli

import (
	"bytes"
	"strings"
	"testing"

	"underfoot/cmd/internal/console"
)

// run calls the program as a person would, on a fixed day and a wide screen.
func run(t *testing.T, stdin string, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	env := func(key string) string {
		return map[string]string{"SOURCE_DATE_EPOCH": "1777852800", "COLUMNS": "4000"}[key] // 2026-05-04
	}
	code = Run(t.Context(), console.Over(strings.NewReader(stdin), &o, &e, env), args)
	return code, o.String(), e.String()
}
