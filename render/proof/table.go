package proof

import "fmt"

// Row is one line of the table of what a drawing is allowed in measure.
type Row struct {
	Name   string `json:"name"`
	Have   string `json:"have"`
	Limit  string `json:"limit"` // "" where there is none
	Missed bool   `json:"missed"`
}

// Table holds a drawing to the soft limits, and to the lettering that is aimed at.
func (s Soft) Table() []Row {
	wires := float64(max(1, s.Wires))
	return []Row{
		{Name: "wires", Have: fmt.Sprint(s.Wires)},
		share("crossings", s.Crossings, wires, MostCrossings),
		share("bends", s.Bends, wires, MostBends),
		count("bends of one wire", s.MostBends, MostBendsOfOne),
		share("leaders", s.Leaders, wires, MostLeaders),
		count("turned labels", s.Turned, MostTurned),
		share("labels nearer to another wire", s.NearForeign, wires, MostNearForeign),
		{"fill", fmt.Sprintf("%.0f %%", 100*s.Fill), fmt.Sprintf("%.0f to %.0f %%", 100*LeastFill, 100*MostFill), s.Fill < LeastFill || s.Fill > MostFill},
		{"lettering", fmt.Sprintf("%.2f mm", s.Smallest), fmt.Sprintf("at least %.1f mm", Lettering), s.Smallest < Lettering-0.01},
	}
}

// share is a row of what may occur so often for each wire.
func share(name string, n int, wires, most float64) Row {
	return Row{name, fmt.Sprintf("%d (%.2f a wire)", n, float64(n)/wires), fmt.Sprintf("at most %.2f a wire", most), float64(n) > most*wires}
}

// count is a row of what may occur so often on a sheet.
func count(name string, n, most int) Row {
	return Row{name, fmt.Sprint(n), fmt.Sprintf("at most %d", most), n > most}
}
