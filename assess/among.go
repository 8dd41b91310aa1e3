package assess

// Mask is the mask of several choice words. A word that is none of the
// declaration's choices is a programming error and panics.
func (d *Declaration) Mask(words ...string) uint64 {
	var mask uint64
	for _, w := range words {
		bit, ok := d.ChoiceBit(w)
		if !ok {
			panic("assess: " + d.ID + " has no choice " + w)
		}
		mask |= bit
	}
	return mask
}

// Among is the truth of: the fact is there, and its choice is one of the mask.
func (f Fact) Among(mask uint64) Outcome {
	var o Outcome
	switch {
	case f.Set.Mask&^mask == 0:
		o = Proven
	case f.Set.Mask&mask == 0:
		o = Refuted
	default:
		o = OpenOn(f.Deps)
	}
	return f.Presence.And(o)
}
