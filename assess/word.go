// Package assess holds the words and types of an assessment: what can be said
// of a floor, what follows from it and how sure that is. It knows nothing of
// files, rules' texts, screens or report formats.
package assess

// A Scope is the kind of thing that a fact is about or a rule looks at.
type Scope uint8

// The scopes, from the whole job inwards. Layer to Load are the listed items
// of a zone; Path is one way to build on a zone.
const (
	ScopeJob Scope = iota
	ScopeArea
	ScopeZone
	ScopeLayer
	ScopeDeck
	ScopeCrack
	ScopeEdge
	ScopeService
	ScopeLoad
	ScopePath
	scopeCount
)

var scopeNames = [...]string{"job", "area", "zone", "layer", "deck", "crack", "edge", "service", "load", "path"}

// String is the word that records use for the scope.
func (s Scope) String() string { return scopeNames[s] }

// ParseScope finds the scope of a word.
func ParseScope(word string) (Scope, bool) {
	for i, n := range scopeNames {
		if n == word {
			return Scope(i), true
		}
	}
	return ScopeJob, false
}

// Listed reports whether things of the scope stand in a list of a zone.
func (s Scope) Listed() bool { return s >= ScopeLayer && s <= ScopeLoad }

// ListScopes are the item lists of a zone in the order in which they are written.
var ListScopes = [...]Scope{ScopeLayer, ScopeDeck, ScopeCrack, ScopeEdge, ScopeService, ScopeLoad}

// topics maps each reserved first word of an address to the scope it belongs to.
var topics = map[string]Scope{
	"site": ScopeJob,
	"room": ScopeArea, "tile": ScopeArea,
	"danger": ScopeZone, "zone": ScopeZone, "joist": ScopeZone, "beam": ScopeZone, "slab": ScopeZone, "water": ScopeZone,
	"flat": ScopeZone, "paper": ScopeZone, "work": ScopeZone, "plan": ScopeZone, "floor": ScopeZone, "panel": ScopeZone,
	"layer": ScopeLayer, "deck": ScopeDeck, "crack": ScopeCrack, "edge": ScopeEdge, "service": ScopeService, "load": ScopeLoad,
	"path": ScopePath,
}

// TopicScope is the scope that a topic belongs to; ok is false for a word that
// is no topic.
func TopicScope(topic string) (scope Scope, ok bool) {
	scope, ok = topics[topic]
	return scope, ok
}

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

// IsBase reports whether tile can be laid on the path, rather than it being a step.
func (p PathID) IsBase() bool { return p >= IsolateStrip }

// Paths lists every path in working order, steps before bases.
func Paths() []PathID {
	all := make([]PathID, 0, pathCount-1)
	for p := CallService; p < pathCount; p++ {
		all = append(all, p)
	}
	return all
}

// Asks is the least verdict that a called step or a chosen base allows. A rule
// that calls for finding out does so because something is broken.
func (p PathID) Asks() Verdict {
	switch p {
	case CallService, TestOrAbate, Engineer:
		return Stop
	case DryOut, Remove, Strengthen, FindOut:
		return Repair
	}
	return Prepare
}
