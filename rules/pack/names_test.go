package pack

import (
	"fmt"
	"sync"
	"testing"

	"underfoot/assess/check"
	"underfoot/assess/condition"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// A country is the catalogue, the figures and the rules of one region, as the
// program opens them.
type country struct {
	catalogue *question.Catalogue
	names     condition.Names
	pack      *Pack
	err       error
}

func (c *country) read(d *schema.Declaration, text string) (schema.Set, error) {
	return c.catalogue.Read(d, text, quantity.US)
}

func (c *country) stage() stage { return stage{c.names.Schema, c.pack.Words, c.read} }

// countries opens every region once.
var countries = sync.OnceValue(func() map[string]*country {
	all := map[string]*country{}
	for _, region := range figure.Regions {
		figures := figure.For(region, quantity.US)
		catalogue, err := question.Open(figures, facts.Derived(check.All(figures)), message.English())
		if err != nil {
			panic(fmt.Sprint(region, ": ", err))
		}
		c := &country{catalogue: catalogue, names: catalogue.Names()}
		c.pack, c.err = Shipped(c.names, region, message.English())
		all[region] = c
	}
	return all
})

// each runs a test in every region whose rules load.
func each(t *testing.T, test func(t *testing.T, c *country)) {
	for _, region := range figure.Regions {
		t.Run(region, func(t *testing.T) {
			c := countries()[region]
			if c.pack == nil {
				t.Skip("the rules do not load: TestShippedRulesLoad says why")
			}
			test(t, c)
		})
	}
}
