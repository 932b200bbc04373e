package difference

import (
	"fmt"
	"slices"
	"strings"

	"github.com/lugwright/lugwright/wiring"
)

// Note is what changed in one line for a revision list, of at most so many characters: every
// part and wire by name if that fits, else how many. Where no part or wire changed it is
// empty.
func (d Difference) Note(most int) string {
	groups := d.groups()
	var names, counts, sums []string
	for _, g := range groups {
		names = append(names, strings.Join(g.names, ", ")+" "+string(g.class))
		counts = append(counts, g.count())
		sums = append(sums, fmt.Sprintf("%d %s", g.parts+g.wires, g.class))
	}
	for _, text := range []string{strings.Join(names, "; "), strings.Join(counts, ", "), strings.Join(sums, ", ")} {
		if len([]rune(text)) <= most {
			return text
		}
	}
	return plural(d.things(), "change")
}

// things counts the parts and wires that changed.
func (d Difference) things() int {
	changed := map[string]bool{}
	for _, c := range d.Changes {
		if c.What != AStack {
			changed[string(c.What)+c.Name] = true
		}
	}
	return len(changed)
}

// group is the parts and wires with which the same happened.
type group struct {
	class        Class
	names        []string
	parts, wires int
}

func (g group) count() string {
	var words []string
	for _, n := range []struct {
		n    int
		noun string
	}{{g.parts, "part"}, {g.wires, "wire"}} {
		if n.n > 0 {
			words = append(words, plural(n.n, n.noun))
		}
	}
	return strings.Join(words, " and ") + " " + string(g.class)
}

func plural(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

// groups puts changes of parts and wires together by class, in the order in which the
// classes first occur. Stacks follow from their wires.
func (d Difference) groups() []group {
	var all []group
	for _, c := range d.Changes {
		if c.What == AStack {
			continue
		}
		i := slices.IndexFunc(all, func(g group) bool { return g.class == c.Class })
		if i < 0 {
			all, i = append(all, group{class: c.Class}), len(all)
		}
		g := &all[i]
		if slices.Contains(g.names, c.Name) {
			continue
		}
		g.names = append(g.names, c.Name)
		if c.What == APart {
			g.parts++
		} else {
			g.wires++
		}
	}
	return all
}

// letters are those of revision indexes: I, O, Q, S, X and Z are left out, since they are
// taken for numbers or for deletions (common practice; ASME Y14.35, from memory).
const letters = "ABCDEFGHJKLMNPRTUVWY"

// NextIndex is the index of the revision after a history: the letter after the last one, two
// letters after the last letter; "" if the last index is none of these.
func NextIndex(history []wiring.Revision) string {
	if len(history) == 0 {
		return letters[:1]
	}
	number := 0
	for _, r := range history[len(history)-1].Index {
		i := strings.IndexRune(letters, r)
		if i < 0 {
			return ""
		}
		number = number*len(letters) + i + 1
	}
	return index(number + 1)
}

// index writes a number from 1 in letters: A ... Y, AA, AB ...
func index(number int) string {
	text := ""
	for number > 0 {
		number--
		text = letters[number%len(letters):number%len(letters)+1] + text
		number /= len(letters)
	}
	return text
}
