package rules

import (
	"fmt"
	"strings"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A countryTopic is what countries are known to settle each in its own way.
type countryTopic struct {
	title   string
	figures []string
	rules   []string // shown where the country has them
}

// countryTopics are what a reader asks of his own country first.
var countryTopics = []countryTopic{
	{"asbestos: years of a layer, share by weight", []string{"presumed_to", "test_to", "asbestos_share"},
		[]string{"asbestos-hard-layer", "asbestos-hard-layer-before-breaking", "asbestos-share", "asbestos-share-elsewhere"}},
	{"crystalline silica in the air, mg in a cubic meter over 8 hours", []string{"silica_limit"},
		[]string{"silica-limit", "silica-limit-elsewhere"}},
	{"moisture of a slab", []string{"slab_rh", "slab_mver"}, []string{"moisture-limits-elsewhere"}},
	{"flatness: under 10 ft with small and large tile, under 2 m", []string{"flat_small", "flat_large", "flat_2m"},
		[]string{"slab-not-flat-under-2m", "flatness-class-germany", "finish-tolerance-australia"}},
	{"adhesive classes, beside those of the step for a direct bond", nil, []string{"adhesive-class-on-wood"}},
	{"deflection of joists", []string{"ceramic_limit", "stone_limit"},
		[]string{"joist-too-soft-under-all-load", "panel-edges-canada", "span-tables-elsewhere"}},
	{"distance of movement joints: inside, in sun, outdoors", []string{"joint_inside", "joint_sun", "joint_outside"},
		[]string{"joint-spacing-elsewhere"}},
	{"stairs: difference of risers, greatest riser", []string{"riser_difference", "riser_most"}, []string{"stair-figures-elsewhere"}},
	{"waterproofing of wet rooms", nil, []string{"wet-room-australia", "waterproofing-class-europe"}},
}

// writeSubjects prints for each subject what each region goes by.
func writeSubjects(t *testing.T, b *strings.Builder) {
	engines := map[string]*Engine{}
	for _, region := range figure.Regions {
		e, err := Open(region, unitsOf(region), message.English())
		if err != nil {
			t.Fatal(err)
		}
		engines[region] = e
	}
	b.WriteString("\nBy subject\n==========\n")
	for _, s := range countryTopics {
		fmt.Fprintf(b, "%s\n", s.title)
		writeGroups(b, "    ", func(region string) string { return s.line(engines[region], region) + "\n" })
	}
}

// line is what one region has on the subject.
func (s countryTopic) line(e *Engine, region string) string {
	var parts []string
	for _, id := range s.figures {
		f, _ := e.Figures.Figure(id)
		value := quantity.Write(f.Dimension, quantity.Point(f.Value), unitsOf(region))
		if f.Source.Known == "common-practice" {
			value += " (a choice)"
		}
		parts = append(parts, value)
	}
	for _, id := range s.rules {
		switch {
		case e.Pack.Rule(id) == nil:
		case strings.HasSuffix(id, "-elsewhere"):
			parts = append(parts, "not known here, ask: "+id)
		default:
			parts = append(parts, id)
		}
	}
	if len(parts) == 0 {
		return "nothing of its own, ask"
	}
	return strings.Join(parts, "; ")
}
