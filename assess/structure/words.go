// Package structure computes how much a floor's framing bends: joists under
// live and total load, and the panels that lie on them. It computes sawn
// lumber alone; for every other member it says who has the figure.
package structure

import (
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// The choice facts that the checks read, with their words in the order of the
// question catalogue; a test holds the two together.
var (
	substrate = choices("zone.base", "joists", "beam-and-deck", "slab-on-ground", "suspended-slab", "precast-plank",
		"sleepers-on-slab", "brick-or-flagstone")
	member     = choices("joist.member", "sawn-lumber", "i-joist", "open-web-truss", "lvl", "glulam", "steel-joist")
	figureFrom = choices("joist.figure_from", "own-sum", "load-test", "document", "maker", "engineer")
	knownLoad  = choices("joist.known_load", "live", "total")
	species    = choices("joist.species", "douglas-fir-larch", "hem-fir", "spruce-pine-fir", "southern-pine",
		"douglas-fir-south", "western-woods", "spruce-pine-fir-south", "redwood", "western-cedars")
	grade      = choices("joist.grade", "select-structural", "no1", "no2", "no3", "c14", "c16", "c18", "c22", "c24", "c27", "c30")
	notched    = choices("joist.notched", "none", "within-limits", "beyond-limits")
	continuity = choices("joist.continuity", "one-span", "two-or-more-spans", "two-spans", "three-spans")
	tileKind   = choices("tile.kind", "ceramic", "porcelain", "mosaic", "quarry-tile", "terracotta", "glass-tile",
		"natural-stone", "porcelain-panel")
	deckKind = choices("deck.kind", "plywood", "osb", "particleboard", "boards", "tongue-and-groove-planks",
		"interior-plywood", "treated-plywood")
)

func choices(id string, words ...string) schema.Declaration {
	return schema.Declaration{ID: id, Kind: schema.KindChoice, Choices: words}
}

// is asks a thing whether a choice fact is one of the words.
func is(t result.Thing, d *schema.Declaration, words ...string) logic.Outcome {
	return t.Fact(d.ID).Among(d.Mask(words...))
}
