// Package schema says what can be known of a floor: the facts with their kinds,
// choices and bounds, the addresses at which their answers stand, and a fact as
// it is known: whether it applies, the values that are possible, and on which
// addresses that hangs.
package schema
