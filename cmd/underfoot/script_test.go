package main

import (
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// TestMain lets scripts run the real program as the command `underfoot`.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"underfoot": main})
}

// TestScripts drives the whole program from the command line. Ages count from
// a fixed day, so that no script depends on the clock.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireUniqueNames:  true,
		RequireExplicitExec: true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("SOURCE_DATE_EPOCH", "1777852800") // 2026-05-04
			e.Setenv("COLUMNS", "80")
			return nil
		},
	})
}
