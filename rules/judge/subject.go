package judge

import (
	"strings"

	"underfoot/assess/schema"
)

// FindingID names the ruling in results: the rule, and what it was said of.
func (r *Ruling) FindingID() string {
	if s := r.Subject(); s != "" {
		return r.Rule.ID + "@" + s
	}
	return r.Rule.ID
}

// Subject is the item, the rest of a list, or the path that was looked at.
func (r *Ruling) Subject() string {
	switch scope := r.Rule.Scope; {
	case scope.Listed(), scope == schema.ScopePath:
		return r.Thing.ID()
	}
	return ""
}

// subjectIn is the subject with the zone before it, where the room has several
// and the rule is about no more than one.
func (r *Ruling) subjectIn(zone string, several bool) string {
	if several && r.Rule.Scope >= schema.ScopeZone {
		return strings.TrimSuffix(zone+"."+r.Subject(), ".")
	}
	return r.Subject()
}

// FindingIDIn names the ruling in a result of a room that may have several zones.
func (r *Ruling) FindingIDIn(zone string, several bool) string {
	if s := r.subjectIn(zone, several); s != "" {
		return r.Rule.ID + "@" + s
	}
	return r.Rule.ID
}
