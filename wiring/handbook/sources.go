package handbook

// Source says where a table or a law comes from.
type Source struct {
	Name    string   // "ampacity"
	About   string   // what it holds, in a few words
	Text    string   // the source: standard and clause, or what else
	Status  string   // how far to trust it: read, memory, computed, own choice, or a mix
	Columns []string // of a table that can be replaced; nil for a law
}

// laws are the sources of what is computed and not looked up.
var laws = []Source{
	{Name: "gauge", About: "diameter and area of an AWG conductor",
		Text: "ASTM B258: 0.127 mm x 92^((36-n)/39)", Status: "computed"},
	{Name: "copper", About: "resistance of annealed copper and its rise with temperature",
		Text: "IACS 100 % = 1/58 ohm mm2/m at 20 C, 0.00393 a kelvin (IEC 28; NBS Handbook 100)", Status: "read"},
	{Name: "ambient", About: "ampacity at other ambients than 30 C",
		Text:   "square-root law sqrt((Tc-Ta)/(Tc-30)), which the engine-space factors of 33 CFR 183.425 Table 5 note 1 follow to 0.01 but for 200 C",
		Status: "computed"},
	{Name: "heating", About: "time constant of a conductor, current for a short time",
		Text:   "heat of the copper alone, 3.45 MJ/(m3 K) (IEC 60949, from memory), over 75 K against the loss at the 105 C table current",
		Status: "computed"},
	{Name: "adiabatic", About: "time for which a conductor stands a fault current",
		Text: "IEC 60364-5-54: t = (k S / I)^2, k = 115 for copper in PVC", Status: "memory"},
	{Name: "length-temperature", About: "allowed length of a hot conductor",
		Text: "AC 43.13-1B para 11-66 d(4): L2 = 254.5 L1 / (234.5 + T2)", Status: "read"},
}

// Sources lists every table, in a fixed order, and then every law.
func (t *Tables) Sources() []Source {
	all := make([]Source, 0, len(list)+len(laws))
	for _, d := range list {
		all = append(all, t.sources[d.name])
	}
	return append(all, laws...)
}

// Source returns the source of one table or law, and whether there is one of that name.
func (t *Tables) Source(name string) (Source, bool) {
	for _, s := range t.Sources() {
		if s.Name == name {
			return s, true
		}
	}
	return Source{}, false
}

// Sources lists the sources of the tables that the program brings with it.
func Sources() []Source { return Default().Sources() }
