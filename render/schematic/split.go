package schematic

// content is what stands on one sheet.
type content struct {
	number   int
	clusters []int
	devices  []*device
	bars     []*bar
	repeats  map[*bar]bool // bars that have their home on another sheet
	lines    []*line       // both ends are here
	flags    []*flag       // one end is here
}

// flag is the end of a line that is not on the sheet: capped, loose, or on another one.
type flag struct {
	line *line
	here int // index of the end that is on this sheet
}

// there is the end that is not here.
func (f *flag) there() *lineEnd { return &f.line.ends[1-f.here] }

// leastRepeat is how many wires to a rail of another sheet make it worth drawing again.
const leastRepeat = 2

// split divides the circuit into sheets, each of which shows some clusters.
func (c *circuit) split(plan [][]int, first int) []*content {
	sheetOf := map[int]*content{}
	var sheets []*content
	for i, clusters := range plan {
		s := &content{number: first + i, clusters: clusters, repeats: map[*bar]bool{}}
		sheets = append(sheets, s)
		for _, k := range clusters {
			sheetOf[k] = s
		}
	}
	c.shelter(sheets, sheetOf)
	for _, d := range c.devices {
		s := sheetOf[d.cluster]
		s.devices = append(s.devices, d)
	}
	for _, b := range c.bars {
		s := sheetOf[b.cluster]
		s.bars = append(s.bars, b)
	}
	for _, s := range sheets {
		c.repeatBars(s, sheetOf)
	}
	for _, l := range c.lines {
		c.deal(l, sheets, sheetOf)
	}
	return sheets
}

// shelter gives what no plan has a sheet for, as the bars of a block that feeds nothing yet,
// a home on the last one.
func (c *circuit) shelter(sheets []*content, sheetOf map[int]*content) {
	last := sheets[len(sheets)-1]
	for _, d := range c.devices {
		if sheetOf[d.cluster] == nil {
			sheetOf[d.cluster] = last
		}
	}
	for _, b := range c.bars {
		if sheetOf[b.cluster] == nil {
			sheetOf[b.cluster] = last
		}
	}
}

// repeatBars draws a rail again on a sheet on which several of its wires land.
func (c *circuit) repeatBars(s *content, sheetOf map[int]*content) {
	for _, b := range c.bars {
		if sheetOf[b.cluster] == s || !c.isCommon(spot{bar: b}) {
			continue
		}
		n := 0
		for _, l := range b.lines {
			o := l.other(nil, b)
			if o.device != nil && sheetOf[o.device.cluster] == s {
				n++
			}
		}
		if n >= leastRepeat {
			s.bars = append(s.bars, b)
			s.repeats[b] = true
		}
	}
}

// shows reports whether an end of a line is on a sheet.
func (s *content) shows(e *lineEnd) bool {
	if e.device != nil {
		for _, k := range s.clusters {
			if e.device.cluster == k {
				return true
			}
		}
		return false
	}
	for _, b := range s.bars {
		if b == e.bar {
			return true
		}
	}
	return false
}

// deal gives a line to the sheet that shows both of its ends, or else to the home of each
// end, with a flag for the other.
func (c *circuit) deal(l *line, sheets []*content, sheetOf map[int]*content) {
	for _, s := range sheets {
		if s.shows(&l.ends[0]) && s.shows(&l.ends[1]) && s.isHome(l, sheetOf) {
			s.lines = append(s.lines, l)
			return
		}
	}
	for i := range l.ends {
		e := &l.ends[i]
		switch {
		case e.device != nil:
			s := sheetOf[e.device.cluster]
			s.flags = append(s.flags, &flag{l, i})
		case e.bar != nil:
			s := sheetOf[e.bar.cluster]
			s.flags = append(s.flags, &flag{l, i})
		}
	}
}

// isHome reports whether a sheet is the home of at least one end: metal inside a part is
// not drawn where its rail is only repeated.
func (s *content) isHome(l *line, sheetOf map[int]*content) bool {
	for _, e := range l.ends {
		if e.device != nil && sheetOf[e.device.cluster] == s || e.bar != nil && sheetOf[e.bar.cluster] == s {
			return true
		}
	}
	return false
}
