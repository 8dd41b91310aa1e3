package cli

import (
	"fmt"
	"strings"

	"underfoot/assess"
	"underfoot/rules"
)

// why prints what decided the findings that an id names.
func (a *app) why(f *file, id string) error {
	name, _, _ := strings.Cut(id, "@")
	if _, err := findRule(f.engine, name); err != nil {
		return err
	}
	reasons := f.engine.Why(f.doc.Job(), id, a.today)
	if len(reasons) == 0 {
		fmt.Fprintf(a.Out, "%s: nothing in this record that the rule looks at under that name\n", id)
	}
	for i := range reasons {
		if i > 0 {
			fmt.Fprintln(a.Out)
		}
		a.reason(&reasons[i])
	}
	return nil
}

func (a *app) reason(r *rules.Reason) {
	place := r.Area
	if r.Several {
		place += ", zone " + r.Zone
	}
	f := &r.Finding
	state := f.Outcome.String()
	if f.Presumed {
		state += ", presumed until shown otherwise"
	} else if f.Policy != "" {
		state += ", so: " + f.Policy
	}
	fmt.Fprintf(a.Out, "%s in %s: %s\n", f.ID, place, state)
	if f.Text != "" {
		fmt.Fprintf(a.Out, "  %s\n", f.Text)
	}
	switch {
	case r.Gone:
		fmt.Fprintln(a.Out, "  decided by: the layer is to come out, so this rule judges it as gone")
		return
	case r.Rest:
		fmt.Fprintln(a.Out, "  decided by: the list is not closed, so there may be more than was named")
	default:
		fmt.Fprintln(a.Out, "  decided by:")
		for _, x := range r.Decided {
			fmt.Fprintln(a.Out, "    "+strings.ReplaceAll(x.String(), "\n", "\n    "))
		}
	}
	if len(f.Missing) > 0 {
		fmt.Fprintln(a.Out, "  waits for: "+missing(f.Missing))
	}
}

func missing(list []assess.Address) string {
	texts := make([]string, len(list))
	for i, m := range list {
		texts[i] = m.Local()
	}
	return strings.Join(texts, ", ")
}
