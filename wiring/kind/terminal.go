package kind

import (
	"fmt"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/colour"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/source"
)

// terminalSpec is one entry of `terminals`; its name may be a range.
type terminalSpec struct {
	name   string
	form   wiring.Form
	holds  *source.Node // a count, or the name of a rating
	rated  *source.Node // a current, or the name of a rating
	spoken string
	also   []*source.Node
	pin    *source.Node
	torque quantity.NewtonMetre
	lead   wiring.LeadWire
	poles  []*source.Node
	at     *source.Node
}

// terminalKeys are the keys of a terminal, in the order of the reference.
var terminalKeys = []documented{
	{"form", "`stud M8`, `screw M4`, `spade 6.3`, `clamp`, `pin`, `lead`, `port` or `joint`"},
	{"name", "what it is called when spoken"},
	{"also", "other names: `[B+, pos]`"},
	{"pin", "its connector pin, accepted in references: `J1-7`"},
	{"holds", "how many wires it takes; default: stud 4, spade, screw and clamp 2, joint 8, else 1"},
	{"rated", "most current through it"},
	{"torque", "the maker's; left out: unknown"},
	{"colour", "of a lead"},
	{"size", "of a lead"},
	{"length", "of a lead"},
	{"lug", "at the end of a lead: `ring M8`; left out: bare"},
	{"poles", "conductors of a port: `[L, N, PE]`; a port without poles carries data only"},
}

// formHolds is how many wires a form takes if nothing is said: common practice, no
// published source, but for the four lugs of a stud (FAA AC 43.13-1B 11-174).
var formHolds = map[wiring.FormType]int{
	wiring.Stud: 4, wiring.Screw: 2, wiring.Spade: 2, wiring.Clamp: 2,
	wiring.Pin: 1, wiring.Lead: 1, wiring.Port: 1, wiring.Joint: 8,
}

// forms lists the forms in the order of the reference.
var forms = []string{"stud", "screw", "spade", "clamp", "pin", "lead", "port", "joint"}

func (r *reader) readTerminals(n *source.Node) {
	if n == nil {
		return
	}
	inherited := len(r.d.terminals)
	for _, e := range r.entries(n, "terminals", "{in: {form: spade 6.3}}") {
		if e.Value.Kind == source.Map {
			r.setTerminal(r.readTerminal(e), inherited)
		} else if e.Value.Kind != source.Null {
			r.fault(e.Value, "terminal "+e.Key.Text+" is a map, such as {form: spade 6.3}")
		}
	}
}

// setTerminal adds a terminal, or replaces the one of that name among those which `like`
// brought.
func (r *reader) setTerminal(t terminalSpec, inherited int) {
	for i := range inherited {
		if wiring.Fold(r.d.terminals[i].name) == wiring.Fold(t.name) {
			r.d.terminals[i] = t
			return
		}
	}
	r.d.terminals = append(r.d.terminals, t)
}

func (r *reader) readTerminal(e source.Entry) terminalSpec {
	t := terminalSpec{name: e.Key.Text, at: e.Key}
	r.checkTerminalName(e.Key)
	if form := e.Value.Get("form"); form != nil {
		t.form = r.form(form)
	} else {
		r.fault(e.Key, "terminal "+t.name+" has no form", "For example: "+t.name+": {form: spade 6.3}")
		t.form = wiring.Form{Type: wiring.Spade, Size: "6.3"}
	}
	for _, f := range e.Value.Entries {
		if f.Key.Text != "form" && f.Value.Kind != source.Null {
			r.terminalKey(&t, f)
		}
	}
	return t
}

// checkTerminalName looks at the name of a terminal, which may be a range.
func (r *reader) checkTerminalName(n *source.Node) {
	if !source.IsRange(n.Text) {
		r.checkName(n, "terminal")
		return
	}
	span, ok := cutRange(n.Text)
	if !ok {
		r.fault(n, n.Text+" is no range of terminals", "For example: 1..channels, or a1..pins, where channels and pins are ratings")
		return
	}
	whole := *n
	whole.Text = span.prefix + "1"
	r.checkName(&whole, "terminal")
}

func (r *reader) terminalKey(t *terminalSpec, f source.Entry) {
	switch f.Key.Text {
	case "name":
		t.spoken = r.text(f.Value, "name")
	case "also":
		t.also = r.names(f.Value, "also", "terminal")
	case "pin":
		if r.text(f.Value, "pin") != "" {
			r.checkName(f.Value, "pin")
			t.pin = f.Value
		}
	case "holds":
		t.holds = f.Value
	case "rated":
		t.rated = f.Value
	case "torque":
		t.torque = quantity.NewtonMetre(r.quantity(f.Value, "torque", quantity.Torque).Value)
	case "poles":
		if r.belongs(f.Key, t, wiring.Port) {
			t.poles = r.names(f.Value, "poles", "pole")
		}
	default:
		if !r.leadKey(&t.lead, f) {
			r.fault(f.Key, fmt.Sprintf("unknown key %s in terminal %s%s", f.Key.Text, t.name,
				source.DidYouMean(f.Key.Text, namesOf(terminalKeys))))
			return
		}
		r.belongs(f.Key, t, wiring.Lead)
	}
}

// belongs reports a key that only one form of terminal has.
func (r *reader) belongs(key *source.Node, t *terminalSpec, form wiring.FormType) bool {
	if t.form.Type != form {
		r.fault(key, fmt.Sprintf("%s belongs to a %s, and %s is a %s", key.Text, form, t.name, t.form.Type))
	}
	return t.form.Type == form
}

// names reads a list of names, each once.
func (r *reader) names(n *source.Node, key, what string) []*source.Node {
	var names []*source.Node
	seen := map[string]bool{}
	for _, item := range r.items(n, key, "[L, N]") {
		name := r.text(item, key)
		if seen[wiring.Fold(name)] {
			r.fault(item, name+" stands twice in "+key)
			continue
		}
		seen[wiring.Fold(name)] = true
		if name != "" {
			r.checkName(item, what)
			names = append(names, item)
		}
	}
	return names
}

// leadKey reads one of the keys of a lead; ok is false if the key is none.
func (r *reader) leadKey(l *wiring.LeadWire, f source.Entry) (ok bool) {
	text := ""
	switch f.Key.Text {
	case "colour", "color", "size", "length", "lug":
		text = r.text(f.Value, f.Key.Text)
	default:
		return false
	}
	if text == "" {
		return true // said where it stands
	}
	var err error
	switch f.Key.Text {
	case "colour", "color":
		l.Colour, err = colour.Parse(text)
	case "size":
		l.Size, err = quantity.ParseSize(text)
	case "length":
		l.Length, err = quantity.Parse(text, quantity.Length)
	case "lug":
		l.Lug = text
	}
	if err != nil {
		r.fault(f.Value, message(f.Key.Text, err))
	}
	return true
}

// message puts the key in front of what is wrong with its value; what is said of a colour
// speaks of colours already.
func message(key string, err error) string {
	if key == "colour" || key == "color" {
		return err.Error()
	}
	return key + " " + err.Error()
}

// form reads how a terminal is made.
func (r *reader) form(n *source.Node) wiring.Form {
	word, size, _ := strings.Cut(r.text(n, "form"), " ")
	f := wiring.Form{Type: wiring.FormType(strings.ToLower(word)), Size: strings.TrimSpace(size)}
	if _, ok := formHolds[f.Type]; !ok {
		if n.Kind == source.Scalar {
			r.fault(n, "no form "+word+source.DidYouMean(word, forms), "Forms: "+strings.Join(forms, ", "))
		}
		return wiring.Form{Type: wiring.Spade, Size: "6.3"}
	}
	r.checkFormSize(n, f)
	return f
}

// checkFormSize holds the size of a terminal to its form.
func (r *reader) checkFormSize(n *source.Node, f wiring.Form) {
	switch f.Type {
	case wiring.Stud, wiring.Screw:
		if f.Size == "" {
			r.fault(n, fmt.Sprintf("this %s has no thread: %s M8, %s 5/16 in or %s 10-32", f.Type, f.Type, f.Type, f.Type))
		} else if _, err := quantity.ParseThread(f.Size); err != nil {
			r.fault(n, fmt.Sprintf("%s %s", f.Type, err))
		}
	case wiring.Spade:
		if strings.Trim(f.Size, "0123456789.") != "" || f.Size == "" {
			r.fault(n, "the width of a spade is in millimetres, without a unit: spade 6.3")
		}
	default:
		if f.Size != "" {
			r.fault(n, fmt.Sprintf("a %s has no size: form: %s", f.Type, f.Type))
		}
	}
}

func (r *reader) quantity(n *source.Node, key string, d quantity.Dimension) quantity.Amount {
	text := r.text(n, key)
	if text == "" {
		return quantity.Amount{}
	}
	a, err := quantity.Parse(text, d)
	if err != nil {
		r.fault(n, key+" "+err.Error())
	}
	return a
}
