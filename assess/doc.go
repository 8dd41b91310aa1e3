// Package assess holds the answers of a visit: the job with its rooms, zones and
// listed things, what was said of each and how firmly, and what can be wrong with
// an input. It knows nothing of files, rules, screens or report formats.
package assess
