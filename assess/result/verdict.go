package result

import "slices"

// A Verdict is the one word for an area, a zone or a job.
type Verdict uint8

// The verdicts. Ready to Stop are the ends of a span, in rising order of what
// is asked of the reader; Hold says that the ends differ.
const (
	Ready Verdict = iota
	Prepare
	Repair
	Stop
	Hold
)

// String is the word the contract uses.
func (v Verdict) String() string {
	return [...]string{"ready", "prepare", "repair", "stop", "hold"}[v]
}

// A PathID names a way to go on.
type PathID uint8

// Steps are called for, in working order; bases must be permitted. NoPath says
// that nothing leads: another finish is the answer.
const (
	NoPath PathID = iota
	CallService
	TestOrAbate
	Engineer
	DryOut
	Remove
	Strengthen
	FindOut
	Level
	IsolateStrip
	IsolateFull
	Uncouple
	BackerBoard
	DirectBond
	pathCount
)

var pathNames = [...]string{"none", "call-service", "test-or-abate", "engineer", "dry-out", "remove", "strengthen", "find-out", "level",
	"isolate-strip", "isolate-full", "uncouple", "backer-board", "direct-bond"}

// String is the word the contract uses.
func (p PathID) String() string { return pathNames[p] }

// ParsePath finds the path of a word.
func ParsePath(word string) (PathID, bool) {
	for i, n := range pathNames {
		if n == word && i > 0 {
			return PathID(i), true
		}
	}
	return NoPath, false
}

// IsAssembly reports whether tile can be laid on the path, rather than it being a step.
func (p PathID) IsAssembly() bool { return p >= IsolateStrip }

// Paths lists every path in working order, steps before bases.
func Paths() []PathID {
	all := make([]PathID, 0, pathCount-1)
	for p := CallService; p < pathCount; p++ {
		all = append(all, p)
	}
	return all
}

// Assemblies are the paths on which tile can be laid, in working order.
func Assemblies() []PathID {
	return slices.DeleteFunc(Paths(), func(p PathID) bool { return !p.IsAssembly() })
}

// MinVerdict is the least verdict that a called step or a chosen base allows. A rule
// that calls for finding out does so because something is broken.
func (p PathID) MinVerdict() Verdict {
	switch p {
	case CallService, TestOrAbate, Engineer:
		return Stop
	case DryOut, Remove, Strengthen, FindOut:
		return Repair
	}
	return Prepare
}
