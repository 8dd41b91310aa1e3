package schema

import "underfoot/assess/logic"

// An Index gives each address a number, so that sets of addresses are cheap.
type Index struct {
	list  []Address
	index map[Address]logic.Ref
}

// Ref is the number of the address, new where it has none yet.
func (x *Index) Ref(a Address) logic.Ref {
	if r, ok := x.index[a]; ok {
		return r
	}
	if x.index == nil {
		x.index = make(map[Address]logic.Ref)
	}
	r := logic.Ref(len(x.list))
	x.list = append(x.list, a)
	x.index[a] = r
	return r
}

// Address is the address of a number.
func (x *Index) Address(r logic.Ref) Address { return x.list[r] }

// Addresses are those of a set, in order of their numbers.
func (x *Index) Addresses(d logic.Deps) []Address {
	if len(d) == 0 {
		return nil
	}
	out := make([]Address, len(d))
	for i, r := range d {
		out[i] = x.list[r]
	}
	return out
}
