package cli

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strconv"

	"github.com/spf13/cobra"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/record"
	"underfoot/cmd/internal/disk"
	"underfoot/cmd/internal/line"
	"underfoot/cmd/internal/screen"
	"underfoot/rules/interview"
)

func (a *app) walkCommand() *cobra.Command {
	var plain bool
	c := a.describe(&cobra.Command{
		Use:  "walk FILE",
		Args: exactly(1, message.New("cli/walk.arguments")),
		RunE: func(cmd *cobra.Command, names []string) error {
			return a.walk(cmd.Context(), names[0], plain)
		},
	}, "cli/walk.help.")
	c.Flags().BoolVar(&plain, "plain", false, a.say("cli/walk.flag.plain"))
	return c
}

// walk asks, saves, and at the end prints what the answers point to.
func (a *app) walk(ctx context.Context, name string, plain bool) error {
	w, err := a.startWalk(name)
	if err != nil {
		return err
	}
	session := interview.New(w.doc.Job(), w.engine.Catalogue, a.language, func(job *assess.Job) interview.Judgment { return w.engine.Judge(job, a.today) })
	if plain || a.PlainMode() {
		err = (&line.Asker{In: a.In, Out: a.Err, Session: session, Language: a.language, System: w.doc.System(), Save: w.save}).Run(ctx)
	} else {
		err = (&screen.Interview{In: a.In, Out: a.Out, Session: session, Language: a.language, System: w.doc.System(), Save: w.save, Color: a.Color()}).Run(ctx)
		if errors.Is(err, screen.ErrStopped) {
			err = line.ErrStopped
		}
	}
	if err != nil {
		return err
	}
	f, err := a.withRules(name, w.doc)
	if err != nil {
		return err
	}
	fmt.Fprintf(a.Err, "%s: %s\n", name, session.Language.Text("interview/progress.saved"))
	return a.printBrief(a.assess(f), name)
}

// A walk is a record that is being answered: as it was last read or written,
// and as it stands.
type walk struct {
	*file
	app  *app
	base *record.Document
}

func (a *app) startWalk(name string) (*walk, error) {
	data, err := disk.Load(name)
	var doc *record.Document
	switch {
	case errors.Is(err, os.ErrNotExist):
		e, err := a.openRules()
		if err != nil {
			return nil, err
		}
		if doc, err = a.openOrNew(name, nil, e.Catalogue); err != nil {
			return nil, err
		}
	case err != nil:
		return nil, err
	default:
		f, err := a.parse(name, data)
		if err != nil {
			return nil, err
		}
		doc = f.doc
	}
	f, err := a.withRules(name, doc)
	if err != nil {
		return nil, err
	}
	w := &walk{file: f, app: a}
	out, err := doc.Bytes()
	if err != nil {
		return nil, err
	}
	return w, w.remember(out)
}

// remember keeps the record as it is on the disk, apart from the one that the
// interview goes on to change: only so can a later save tell whose change is whose.
func (w *walk) remember(data []byte) (err error) {
	w.base, err = record.Read(data, w.name, w.engine.Catalogue)
	return err
}

// save puts changes into the record and the record onto the disk. Where
// somebody else has changed the same address since, nothing is written.
func (w *walk) save(changes []interview.Change) error {
	for _, c := range changes {
		c.Answer.On = w.app.today
		put := func() error { return w.doc.Put(c.Address, c.Answer) }
		if c.Drop {
			put = func() error { return w.doc.DropItem(c.Address) }
		}
		if err := put(); err != nil {
			return &assess.Problem{Kind: assess.Internal, Place: c.Address.String(), What: message.Of(err)}
		}
	}
	return disk.Save(w.name, func(current []byte) ([]byte, error) {
		return w.merged(current)
	})
}

// clash says whose answers stand against each other.
func clash(c record.Clash) error {
	p := &assess.Problem{Kind: assess.Conflict, Place: c.Place, What: c.What, Hint: message.New("cli/walk.clash_hint")}
	if c.Mine != nil && c.Theirs != nil {
		p.What = message.New("cli/walk.clash", "theirs", strconv.Quote(c.Theirs.Text), "mine", strconv.Quote(c.Mine.Text))
	}
	return p
}

func (w *walk) merged(current []byte) ([]byte, error) {
	if len(current) == 0 {
		out, err := w.doc.Bytes()
		if err != nil {
			return nil, err
		}
		return out, w.remember(out)
	}
	theirs, err := record.Read(current, w.name, w.engine.Catalogue)
	if err != nil {
		return nil, err
	}
	merged, clashes, err := record.Merge(w.base, w.doc, theirs)
	if err != nil {
		return nil, err
	}
	if len(clashes) > 0 {
		return nil, clash(clashes[0])
	}
	out, err := merged.Bytes()
	if err != nil {
		return nil, err
	}
	w.doc = merged
	return out, w.remember(out)
}
