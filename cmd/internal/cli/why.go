package cli

import (
	"fmt"
	"strings"

	"underfoot/assess/schema"
	"underfoot/rules"
)

// why prints what decided the findings that an id names.
func (a *app) why(f *file, id string) error {
	name, _, _ := strings.Cut(id, "@")
	if _, err := findRule(f.engine, name); err != nil {
		return err
	}
	reasons := f.engine.Judge(f.doc.Job(), a.today).Why(id)
	if len(reasons) == 0 {
		fmt.Fprintln(a.Out, a.say("cli/why.none", "id", id))
	}
	for i := range reasons {
		if i > 0 {
			fmt.Fprintln(a.Out)
		}
		a.reason(&reasons[i])
	}
	return nil
}

func (a *app) reason(r *rules.Explanation) {
	place := r.Area
	if r.Several {
		place = a.say("cli/why.place", "area", r.Area, "zone", r.Zone)
	}
	f := &r.Finding
	state := f.Outcome.String()
	if f.Presumed {
		state = a.say("cli/why.presumed", "state", state)
	} else if f.Policy != "" {
		state = a.say("cli/why.policy", "state", state, "policy", f.Policy)
	}
	fmt.Fprintln(a.Out, a.say("cli/why.head", "id", f.ID, "place", place, "state", state))
	if f.Text != "" {
		fmt.Fprintf(a.Out, "  %s\n", f.Text)
	}
	switch {
	case r.Gone:
		fmt.Fprintln(a.Out, "  "+a.say("cli/why.gone"))
		return
	case r.Rest:
		fmt.Fprintln(a.Out, "  "+a.say("cli/why.rest"))
	default:
		fmt.Fprintln(a.Out, "  "+a.say("cli/why.decided"))
		for _, x := range r.Conditions {
			fmt.Fprintln(a.Out, "    "+strings.ReplaceAll(x.Lines(a.language), "\n", "\n    "))
		}
	}
	if len(f.Missing) > 0 {
		fmt.Fprintln(a.Out, "  "+a.say("cli/why.missing", "list", missing(f.Missing)))
	}
}

func missing(list []schema.Address) string {
	texts := make([]string, len(list))
	for i, m := range list {
		texts[i] = m.Local()
	}
	return strings.Join(texts, ", ")
}
