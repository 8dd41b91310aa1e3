// Package result is what an assessment says: verdicts, ways to go on, findings,
// checks, plans, and what has changed between two visits. It knows nothing of
// rules, screens or report formats.
package result
