package schema

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
	ScopeCount
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
