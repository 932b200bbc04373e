package route

// tearUp routes the wires that found no way by letting them tear up others, which then
// look for another one. What was fought over grows dearer each time.
func (r *Router) tearUp(rounds int) {
	for range rounds {
		missing := r.missing()
		if len(missing) == 0 {
			return
		}
		before := r.snapshot()
		for _, w := range missing {
			if r.paths[w] == nil {
				r.find(w, true, firstEffort)
			}
		}
		r.layMissing(firstEffort)
		if now := len(r.missing()); now > len(missing) {
			r.restore(before)
		}
	}
}

// improve lays anew each wire that costs noticeably more than it must, which it can only
// better, since the others stay.
func (r *Router) improve() {
	for range rerouteRounds {
		gained := false
		for w := range r.paths {
			if r.paths[w] == nil || !r.fresh[w] || r.price[w] <= r.bound(w)+worthRerouting {
				continue
			}
			if r.relay(w) {
				gained = true
			}
		}
		if !gained {
			return
		}
	}
}

// relay looks for a cheaper path of a wire and reports whether there is one.
func (r *Router) relay(w int) bool {
	old := r.paths[w]
	r.lift(w)
	price, _ := r.walk(w, old)
	if r.find(w, false, firstEffort) && r.price[w] < price {
		return true
	}
	if r.paths[w] != nil {
		r.lift(w)
	}
	r.put(w, old, price)
	return false
}

// snapshot and restore keep all paths while something is tried.
func (r *Router) snapshot() [][]int { return append([][]int(nil), r.paths...) }

func (r *Router) restore(paths [][]int) {
	for w := range r.paths {
		if r.paths[w] != nil {
			r.lift(w)
		}
	}
	for w, p := range paths {
		if p != nil {
			r.put(w, p, r.price[w])
		}
	}
}
