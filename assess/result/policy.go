package result

// A Policy is what an open rule does: a word of the rules' records.
type Policy string

// The policies: act as if the trouble were there; make paths wait; leave the
// path open with a hold point in the plan; print only. A settled rule has none.
const (
	PolicyPresume Policy = "presume"
	PolicyHold    Policy = "hold"
	PolicyVerify  Policy = "verify"
	PolicyNote    Policy = "note"
	NoPolicy      Policy = ""
)

// Policies are all of them, the least demanding first.
func Policies() []Policy { return []Policy{PolicyNote, PolicyVerify, PolicyHold, PolicyPresume} }

// Protects is whom or what a rule protects: a word of the rules' records.
type Protects string

// What may be protected. A rule that protects people is never left to a look
// before the work.
const (
	ProtectsPeople    Protects = "people"
	ProtectsStructure Protects = "structure"
	ProtectsBond      Protects = "bond"
	ProtectsFinish    Protects = "finish"
)

// Protected are all of them, what weighs most first.
func Protected() []Protects {
	return []Protects{ProtectsPeople, ProtectsStructure, ProtectsBond, ProtectsFinish}
}
