package kind

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/source"
)

// rangeSpan is a range of names: "a1..pins" counts from 1 up to the rating pins.
type rangeSpan struct {
	prefix string
	low    int
	high   string // a number or the name of a rating
}

// cutRange reads a range of terminal names; ok is false if the text is none.
func cutRange(text string) (s rangeSpan, ok bool) {
	low, high, found := strings.Cut(text, "..")
	s.prefix, s.low, ok = cutNumber(low)
	if !found || !ok || high == "" {
		return s, false
	}
	s.high = high
	if rest, same := strings.CutPrefix(high, s.prefix); same && s.prefix != "" {
		if _, err := strconv.Atoi(rest); err == nil {
			s.high = rest
		}
	}
	return s, true
}

// cutNumber takes the number off the end of a name.
func cutNumber(name string) (prefix string, n int, ok bool) {
	prefix = strings.TrimRight(name, "0123456789")
	digits := name[len(prefix):]
	n, err := strconv.Atoi(digits)
	return prefix, n, err == nil && (digits == "0" || digits[0] != '0')
}

// checkNodeNames holds the names of terminals, poles and hidden nodes apart.
func (r *reader) checkNodeNames(kind *source.Node) {
	if len(r.d.terminals) == 0 {
		r.fault(kind, "kind "+kind.Text+" has no terminals", "For example: terminals: {in: {form: spade 6.3}, out: {form: spade 6.3}}")
	}
	seen := map[string]string{"frame": "the vehicle's frame"}
	add := func(name, what string, at *source.Node) {
		if other, taken := seen[wiring.Fold(name)]; taken {
			r.fault(at, fmt.Sprintf("%s is the name of %s already", name, other))
			return
		}
		seen[wiring.Fold(name)] = what
	}
	for _, t := range r.d.terminals {
		add(t.name, "a terminal", t.at)
	}
	for _, t := range r.d.terminals {
		for _, also := range t.also {
			add(also.Text, "a terminal", also)
		}
		if t.pin != nil {
			add(t.pin.Text, "a pin", t.pin)
		}
	}
	for _, h := range r.d.hidden {
		add(h.Text, "a node", h)
	}
}

// nodeNames lists what may stand in an element, in the order of the file: terminals by
// name, poles by port and pole, and by the pole alone where that is enough.
func (r *reader) nodeNames() []string {
	var names []string
	for _, t := range r.d.terminals {
		if t.form.Type != wiring.Port {
			names = append(names, t.name)
		}
	}
	for _, t := range r.d.terminals {
		for _, pole := range t.poles {
			if len(r.portsWith(pole.Text)) == 1 && !slices.Contains(names, pole.Text) {
				names = append(names, pole.Text)
			}
			names = append(names, t.name+"."+pole.Text)
		}
	}
	for _, h := range r.d.hidden {
		names = append(names, h.Text)
	}
	return append(names, "frame")
}

// portsWith lists the ports that have a pole.
func (r *reader) portsWith(pole string) []string {
	var ports []string
	for _, t := range r.d.terminals {
		for _, p := range t.poles {
			if strings.EqualFold(p.Text, pole) {
				ports = append(ports, t.name+"."+p.Text)
			}
		}
	}
	return ports
}

func (r *reader) firstNodes() []string {
	names := r.nodeNames()
	return names[:min(2, len(names))]
}

func (r *reader) checkNodes(nodes []*source.Node) {
	for _, n := range nodes {
		r.checkNode(n)
	}
}

// checkNode reports a name that is no terminal, pole or hidden node.
func (r *reader) checkNode(n *source.Node) {
	if n.Kind != source.Scalar {
		if n.Kind != source.Null {
			r.fault(n, "the name of a terminal belongs here, not a list or a map")
		}
		return
	}
	names := r.nodeNames()
	fits := func(name string) bool { return strings.EqualFold(name, n.Text) }
	if slices.ContainsFunc(names, fits) || r.inRange(n) {
		return
	}
	if ports := r.portsWith(n.Text); len(ports) > 1 {
		r.fault(n, n.Text+" is a pole of more than one port: write "+strings.Join(ports, " or "))
		return
	}
	r.fault(n, "no terminal, pole or hidden node "+n.Text+source.DidYouMean(n.Text, names))
}

// inRange reports whether a name is a member or a part of a range of terminals. Whether
// a part has that many is known only when it is built.
func (r *reader) inRange(n *source.Node) bool {
	span, isRange := cutRange(n.Text)
	if isRange {
		r.checkRangeEnd(span.high, n)
	} else {
		var ok bool
		if span.prefix, span.low, ok = cutNumber(n.Text); !ok {
			return false
		}
	}
	return slices.ContainsFunc(r.d.terminals, func(t terminalSpec) bool {
		has, ok := cutRange(t.name)
		return ok && strings.EqualFold(has.prefix, span.prefix) && has.low <= span.low
	})
}
