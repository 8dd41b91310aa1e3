package judge

import (
	"underfoot/assess/logic"
	"underfoot/assess/result"
)

// A reading is one way to take what is open.
type reading struct {
	trouble func(*Ruling) bool // the open trouble counts as there
	permit  func(*Ruling) bool // the open permit counts as given
	least   result.Verdict     // where no base is left and no permit is proven
	clean   bool               // an open trouble that asks for a look keeps ready away
}

func never(*Ruling) bool  { return false }
func always(*Ruling) bool { return true }

// span is the pair of verdicts between which the answers leave the zone: what
// waits is taken in our favour at the low end and against us at the high end,
// and what is presumed raises both. A floor for which no base is left asks for
// repair at the high end: what lies there would have to come out or be rebuilt.
func (e *Evaluation) span() result.Span {
	low := e.end(reading{trouble: (*Ruling).Presumed, permit: always, least: result.Prepare})
	high := e.end(reading{
		trouble: func(r *Ruling) bool { return r.Policy == result.PolicyHold || r.Policy == result.PolicyPresume },
		permit:  (*Ruling).Verifies,
		least:   result.Repair,
		clean:   true,
	})
	return result.Span{Low: low, High: max(low, high)}
}

// The raw readings count every open rule both ways, whatever its policy, and
// presume nothing.
var (
	rawLow  = reading{trouble: never, permit: always, least: result.Prepare}
	rawHigh = reading{trouble: always, permit: never, least: result.Repair}
)

// RawSpan is the span under the raw readings. More knowledge only ever narrows
// it, which the policies hide from Span: it is worked out for those who hold the
// rules to that.
func (e *Evaluation) RawSpan() result.Span {
	low, high := e.end(rawLow), e.end(rawHigh)
	return result.Span{Low: low, High: max(low, high)}
}

// end is the verdict under one reading.
func (e *Evaluation) end(rd reading) result.Verdict {
	v := e.baseEnd(rd)
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls != result.NoPath && rd.counts(r) {
			v = max(v, r.Rule.Calls.MinVerdict())
		}
	}
	return v
}

// counts reports whether the trouble is there under the reading.
func (rd reading) counts(r *Ruling) bool {
	return r.Outcome.Truth == logic.Yes || r.Outcome.Truth == logic.Open && rd.trouble(r)
}

// baseEnd is what the best base left under the reading asks for: ready where a
// direct bond leaves nothing to prepare, prepare for any other.
func (e *Evaluation) baseEnd(rd reading) result.Verdict {
	best, found := rd.least, false
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !r.Rule.IsPermit() || r.Outcome.Truth == logic.No || r.Outcome.Truth == logic.Open && !rd.permit(r) {
			continue
		}
		sure := r.Outcome.Truth == logic.Yes
		for _, b := range r.Rule.Permits {
			struck, contested := e.barredUnder(b, rd)
			switch {
			case struck:
				if sure && !found {
					best = result.Repair
				}
				continue
			case r.Rule.Ready && b == result.DirectBond && !(rd.clean && e.verifies()):
				return result.Ready
			}
			best, found = result.Prepare, true
			if sure && !contested {
				return best
			}
		}
	}
	return best
}

// barredUnder reports whether a bar strikes the base out under the reading, and
// whether an open bar may yet.
func (e *Evaluation) barredUnder(base result.PathID, rd reading) (struck, contested bool) {
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !bars(r, base) {
			continue
		}
		struck = struck || rd.counts(r)
		contested = contested || r.Outcome.Truth == logic.Open
	}
	return struck, contested
}

// verifies reports whether any open rule asks for a look before the work.
func (e *Evaluation) verifies() bool {
	for i := range e.Rulings {
		if e.Rulings[i].Verifies() {
			return true
		}
	}
	return false
}
