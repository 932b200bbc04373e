package handbook

import (
	"embed"
	"fmt"
	"io"
	"strings"
	"sync"
)

//go:embed tables/*.csv
var embedded embed.FS

// Tables holds all tables. It is never changed once made, and may be read by many
// goroutines at once.
type Tables struct {
	ampacity     ampacityTable
	derating     deratingTable
	sae          saeTable
	series       []FuseSeries
	classes      []FuseClass
	fuseColours  []FuseColour
	gates        []fuseGate
	studs        []studRow
	inchHexes    []inchHex
	lugs         []lugRow
	cells        []Chemistry
	restLFP      restCurve
	restLeadAcid restCurve
	flexibleCord []cordRow
	chargerCord  []chargerRow
	faaDrop      []faaDropRow
	faaProtector []faaProtectorRow
	faaWire      []FAAWire
	faaSwitch    []faaSwitchRow
	limits       []Limit
	sources      map[string]Source
}

// table is one table: where it is, which columns it must have, and how its rows are read.
// The columns are part of the product's interface: a shop's own file must have them.
type table struct {
	name    string
	about   string
	columns []string
	load    func(*Tables, *sheet)
}

// list holds every table. Adding one is a CSV file, a Go file, and a line here.
var list = []table{
	ampacityDefinition,
	deratingDefinition,
	saeDefinition,
	seriesDefinition,
	classesDefinition,
	fuseColoursDefinition,
	gatesDefinition,
	studsDefinition,
	inchHexesDefinition,
	lugsDefinition,
	cellsDefinition,
	restLFPDefinition,
	restLeadAcidDefinition,
	flexibleCordDefinition,
	chargerCordDefinition,
	faaDropDefinition,
	faaProtectorDefinition,
	faaWireDefinition,
	faaSwitchDefinition,
	limitsDefinition,
}

// Default returns the tables that the program brings with it.
func Default() *Tables { return loadDefault() }

// loadDefault reads the embedded tables once. They are part of the program: a fault in
// them is found by the tests and cannot depend on input.
var loadDefault = sync.OnceValue(func() *Tables {
	t := &Tables{sources: map[string]Source{}}
	for _, d := range list {
		file, err := embedded.Open("tables/" + d.name + ".csv")
		if err != nil {
			panic("handbook: " + err.Error())
		}
		if err := t.read(d, file); err != nil {
			panic("handbook: " + err.Error())
		}
		if err := file.Close(); err != nil {
			panic("handbook: " + err.Error())
		}
	}
	return t
})

// read reads one table into t.
func (t *Tables) read(d table, r io.Reader) error {
	s, err := readSheet(d.name, r, d.columns)
	if err != nil {
		return err
	}
	d.load(t, s)
	if err := s.err(); err != nil {
		return err
	}
	t.sources[d.name] = Source{Name: d.name, About: d.about, Text: s.source, Status: s.status, Columns: d.columns}
	return nil
}

// With returns tables that are the same but for one, which is read from r: a CSV text
// with the columns that [Tables.Sources] lists for it and a first line
//
//	# source: where the figures come from; status: read
//
// The error is a [*TableError] with every fault of the text, or says which tables exist.
func (t *Tables) With(name string, r io.Reader) (*Tables, error) {
	for _, d := range list {
		if d.name != name {
			continue
		}
		with := *t
		with.sources = make(map[string]Source, len(t.sources))
		for n, s := range t.sources {
			with.sources[n] = s
		}
		if err := with.read(d, r); err != nil {
			return nil, err
		}
		return &with, nil
	}
	return nil, fmt.Errorf("the handbook has no table %q: it has %s", name, strings.Join(Names(), ", "))
}

// Names lists the tables that [Tables.With] can replace.
func Names() []string {
	names := make([]string, len(list))
	for i, d := range list {
		names[i] = d.name
	}
	return names
}
