package handbook

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/lugwright/lugwright/wiring/quantity"
)

// text returns an embedded table as its file has it.
func text(t testing.TB, name string) string {
	t.Helper()
	b, err := embedded.ReadFile("tables/" + name + ".csv")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestEveryTableIsListed(t *testing.T) {
	files, err := embedded.ReadDir("tables")
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, name := range Names() {
		if listed[name] {
			t.Errorf("table %s is listed twice", name)
		}
		listed[name] = true
	}
	for _, f := range files {
		name := strings.TrimSuffix(f.Name(), ".csv")
		if !listed[name] {
			t.Errorf("the file %s is no table", f.Name())
		}
	}
	if len(files) != len(Names()) {
		t.Errorf("%d files, %d tables", len(files), len(Names()))
	}
}

func TestSources(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Sources() {
		if s.Name == "" || s.About == "" || s.Text == "" || s.Status == "" || seen[s.Name] {
			t.Errorf("source %+v is incomplete or doubled", s)
		}
		if statusOf(s.Status) == Shop {
			t.Errorf("source %s has the status %q", s.Name, s.Status)
		}
		seen[s.Name] = true
	}
	for _, name := range append(Names(), "gauge", "copper", "ambient") {
		if _, ok := Default().Source(name); !ok {
			t.Errorf("no source for %s", name)
		}
	}
	if _, ok := Default().Source("potato"); ok {
		t.Error("there is a source for potato")
	}
	if diff := cmp.Diff(Sources(), Default().Sources()); diff != "" {
		t.Errorf("the order of sources is not fixed:\n%s", diff)
	}
}

const shopHead = "# source: our own bench; status: read\n"

func TestWith(t *testing.T) {
	own := shopHead + "awg,A_60C,A_75C,A_80C,A_90C,A_105C,A_125C,A_200C,note\n2,100,110,120,130,140,150,160,half\n"
	with, err := Default().With("ampacity", strings.NewReader("\ufeff"+strings.ReplaceAll(own, "\n", "\r\n")))
	if err != nil {
		t.Fatal(err)
	}
	got, err := with.Ampacity(quantity.Gauge(2), 105)
	if err != nil || got.Amps != 140 {
		t.Errorf("with a table of our own 2 AWG carries %v, %v; want 140 A", got.Amps, err)
	}
	if s, _ := with.Source("ampacity"); s.Text != "our own bench" || s.Status != "read" {
		t.Errorf("its source is %+v", s)
	}
	if _, err := with.Ampacity(quantity.Gauge(4), 105); err == nil {
		t.Error("the old rows are still there")
	}
	old, err := Default().Ampacity(quantity.Gauge(2), 105)
	if err != nil || old.Amps != 210 {
		t.Errorf("the default has changed: %v, %v", old.Amps, err)
	}
	if s, _ := Default().Source("ampacity"); s.Text == "our own bench" {
		t.Error("the default's source has changed")
	}
}

// Each table can be replaced by its own text, and then all is as before.
func TestWithItself(t *testing.T) {
	for _, name := range Names() {
		with, err := Default().With(name, strings.NewReader(text(t, name)))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !reflect.DeepEqual(Default(), with) {
			t.Errorf("with its own text the table %s is another", name)
		}
	}
}

func TestWithFaults(t *testing.T) {
	tests := []struct {
		what, table, text string
		says              []string
	}{
		{"no source", "sae", "gauge,cmil\n2,60000\n",
			[]string{"table sae: line 1 must say where the figures come from: # source: …; status: …"}},
		{"no status", "sae", "# source: bench\ngauge,cmil\n2,60000\n",
			[]string{"table sae: line 1 must say where the figures come from: # source: …; status: …"}},
		{"nothing", "sae", "",
			[]string{"table sae: line 1 must say where the figures come from: # source: …; status: …", "table sae: has no line of column names"}},
		{"no rows", "sae", shopHead + "gauge,cmil\n", []string{"table sae: has no rows"}},
		{"columns", "sae", shopHead + "gauge,area,area\n2,1,1\n",
			[]string{"table sae: column area stands twice", "table sae: column cmil is missing"}},
		{"cells", "sae", shopHead + "gauge,cmil\n2,60000,1\n4,x\n",
			[]string{"table sae: line 3 has more or fewer cells than there are columns"}},
		{"several faults", "sae", shopHead + "gauge,cmil\n2,sixty\nx,0\n6,NaN\n8,-1\n",
			[]string{
				`table sae: line 3, column cmil: "sixty" is no number`,
				`table sae: line 4, column gauge: "x" is no gauge`, "table sae: line 4, column cmil: must be above 0",
				`table sae: line 5, column cmil: "NaN" is no number`,
				`table sae: line 6, column cmil: "-1" is no number`,
			}},
		{"order", "sae", shopHead + "gauge,cmil\n2,60000\n1,80000\n",
			[]string{"table sae: line 4, column cmil: rows go from thick to thin, and copper must fall with them"}},
		{"quotes", "sae", shopHead + "gauge,cmil\n\"2,60000\n", []string{`table sae: line 3: extraneous or missing " in quoted-field`}},
		{"not UTF-8", "sae", shopHead + "gauge,cmil\n2,\xff\n", []string{"table sae: is no UTF-8 text"}},
		{"ampacity falls", "ampacity", shopHead + "awg,A_60C,A_75C,A_80C,A_90C,A_105C,A_125C,A_200C\n10,40,40,50,55,60,70,60\n8,30,65,70,70,80,90,100\n",
			[]string{
				"table ampacity: line 3, column A_200C: 60 A is less than at a lower insulation rating",
				"table ampacity: line 4, column A_60C: 30 A is less than a thinner conductor carries",
			}},
		{"ampacity order", "ampacity", shopHead + "awg,A_60C,A_75C,A_80C,A_90C,A_105C,A_125C,A_200C\n8,1,1,1,1,1,1,1\n10,1,1,1,1,1,1,1\n",
			[]string{"table ampacity: line 4, column awg: rows go from thin to thick"}},
		{"bundles", "derating", shopHead + "kind,key,factor\nbundle,1-2,1\nbundle,4+,0.5\n",
			[]string{"table derating: 0 rows give the factor of a bundle of 3 conductors, not one"}},
		{"derating", "derating", shopHead + "kind,key,factor\nbundle,1+,1.5\nbundle,9-2,1\nhot,60,1\n",
			[]string{
				"table derating: line 3, column factor: must be at most 1",
				`table derating: line 4, column key: "9-2" is no number of conductors such as 3, 4-6 or 25+`,
				`table derating: line 5, column kind: "hot" is neither engine_space nor bundle`,
			}},
		{"series", "fuse_series", shopHead + "series,style,ratings_A\na,blade,1 3 2\nb,blade,x\n",
			[]string{
				"table fuse_series: line 3, column ratings_A: 2 does not rise",
				`table fuse_series: line 4, column ratings_A: "x" is no number above 0`,
				"table fuse_series: line 4, column style: blade stands twice",
			}},
		{"classes", "fuse_classes", shopHead + "style,class,standard,rated_V,max_rating_A,breaking_A,at_V,note\nblade,c,s,58 or 32,1,1,often,\n",
			[]string{
				"table fuse_classes: line 3, column rated_V: voltages must rise",
				`table fuse_classes: line 3, column at_V: "often" is no voltage`,
			}},
		{"colours", "fuse_colours", shopHead + "form,standard,rating_A,colour,srgb,usual_rated_V\nb,s,5,tan,tan,32\nb,s,5,red,#FF0000,32\n",
			[]string{
				`table fuse_colours: line 3, column srgb: "tan" is no colour of the form #1A1A1A`,
				"table fuse_colours: line 4, column rating_A: 5 A of a b stands twice",
			}},
		{"gates", "fuse_gates", shopHead + "style,percent,min_s,max_s\nb,200,9,1\nb,135,,1\n",
			[]string{
				"table fuse_gates: line 3, column min_s: is above max_s",
				"table fuse_gates: line 4, column percent: must rise within a style",
			}},
		{"lugs", "lug_fit", shopHead + "stud,stud_mm,smallest_metric_lug,lug_hole_mm\nM8,8,M8,7\nbolt,8,M8,9\n",
			[]string{
				"table lug_fit: line 3, column lug_hole_mm: the lug does not pass over a stud of 8 mm",
				`table lug_fit: line 4, column stud: "bolt" is no thread such as M8, 5/16 or #10`,
			}},
		{"cells of a pack", "cells", shopHead + "chemistry,nominal_V,full_V,low_V,cautious_low_V,rested_full_V\nLFP,3.2,3.3,2.5,,3.4\n",
			[]string{"table cells: line 3, column nominal_V: low, nominal, rested full and full must rise in this order"}},
		{"rest", "rest_lfp", shopHead + "charge_pct,cell_V\n100,3.3\n0,3.4\n120,3.5\n",
			[]string{
				"table rest_lfp: line 5, column charge_pct: must be at most 100",
				"table rest_lfp: voltage must rise with charge: it does not from 0 % to 100 %",
			}},
		{"one point", "rest_lfp", shopHead + "charge_pct,cell_V\n100,3.3\n", []string{"table rest_lfp: a curve needs at least two rows"}},
		{"part of a curve", "rest_lfp", shopHead + "charge_pct,cell_V\n20,3.2\n100,3.4\n",
			[]string{"table rest_lfp: a curve runs from at most 10 % to 100 %, not from 20 % to 100 %"}},
		{"steep curve", "rest_lfp", shopHead + "charge_pct,cell_V\n10,1\n11,3\n100,3.4\n",
			[]string{"table rest_lfp: the first stretch goes on to no voltage at 0 %"}},
		{"cord", "charger_cord", shopHead + "at_least_A,less_than_A,awg_25ft,awg_50ft,awg_100ft,awg_150ft\n0,2,18,18,16,18\n3,4,18,18,18,18\n",
			[]string{
				"table charger_cord: line 3, column awg_150ft: a longer cord needs no thinner wire",
				"table charger_cord: line 4, column at_least_A: does not go on where the row before ends",
			}},
		{"flexible cord", "flexible_cord", shopHead + "awg,A_two_conductors,A_three_conductors\n16,13,14\n18,10,7\n",
			[]string{
				"table flexible_cord: line 3, column A_three_conductors: three loaded conductors carry no more than two",
				"table flexible_cord: line 4, column awg: rows go from thin to thick, and current rises with them",
			}},
		{"aircraft wire", "faa_wire", shopHead + "awg,A_105C,A_150C,A_200C,max_ohm_per_kft,nominal_cmil\n8,1,1,1,0.7,1\n10,1,1,1,1.26,1\n",
			[]string{"table faa_wire: line 4, column max_ohm_per_kft: rows go from thin to thick, and resistance falls with them"}},
	}
	for _, test := range tests {
		with, err := Default().With(test.table, strings.NewReader(test.text))
		var fault *TableError
		if !errors.As(err, &fault) || with != nil {
			t.Errorf("%s: %v, want a *TableError", test.what, err)
			continue
		}
		if diff := cmp.Diff(strings.Join(test.says, "\n"), err.Error()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", test.what, diff)
		}
	}
}

func TestWithUnknownTable(t *testing.T) {
	_, err := Default().With("potato", strings.NewReader(""))
	if err == nil || !strings.HasPrefix(err.Error(), `the handbook has no table "potato": it has ampacity, derating, sae,`) {
		t.Errorf("potato: %v", err)
	}
}

func TestWithTooLarge(t *testing.T) {
	_, err := Default().With("sae", strings.NewReader(shopHead+strings.Repeat("#\n", largestTable)))
	if err == nil || err.Error() != "table sae: is larger than 1048576 bytes" {
		t.Errorf("a huge table: %v", err)
	}
}

func TestWithTooManyRows(t *testing.T) {
	body := shopHead + "charge_pct,cell_V\n" + strings.Repeat("50,3\n", mostRows+1)
	_, err := Default().With("rest_lfp", strings.NewReader(body))
	if err == nil || err.Error() != "table rest_lfp: has more than 2000 rows" {
		t.Errorf("a long table: %v", err)
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error) { return 0, errors.New("the disk is full of water") }

func TestWithBrokenReader(t *testing.T) {
	_, err := Default().With("sae", broken{})
	if err == nil || err.Error() != "table sae: the disk is full of water" {
		t.Errorf("a broken reader: %v", err)
	}
}

// Whatever text stands in for a table is refused or makes tables that answer.
func FuzzWith(f *testing.F) {
	for i, name := range Names() {
		f.Add(uint8(i), text(f, name))
	}
	f.Fuzz(func(t *testing.T, which uint8, body string) {
		name := Names()[int(which)%len(Names())]
		with, err := Default().With(name, strings.NewReader(body))
		if err != nil {
			var fault *TableError
			if !errors.As(err, &fault) || len(fault.Faults) == 0 {
				t.Fatalf("%s: %v", name, err)
			}
			return
		}
		askAround(t, with)
	})
}

// askAround asks one question of each table; nothing may panic.
func askAround(t *testing.T, tables *Tables) {
	for _, size := range []quantity.Size{quantity.Gauge(2), {System: quantity.SAE, Number: 10}, {System: quantity.MM2, Number: 35}} {
		if c, err := tables.Ampacity(size, 105); err == nil && c.Amps <= 0 {
			t.Fatalf("%v carries %v", size, c.Amps)
		}
		_, _ = tables.HeatingTime(size)
		_, _ = tables.FlexibleCord(size, 2)
		_, _, _ = tables.FAAProtector(size)
		_, _ = tables.FAAWire(size)
	}
	series, _ := tables.FuseSeries("blade")
	_ = tables.HighestFuse(40, 51.2, series)
	_, _, _ = tables.Breaking("blade", 12)
	_, _ = tables.FuseColour("blade", 10)
	_, _ = tables.FuseHolds("blade", 1.5)
	_, _ = tables.FuseOpens("blade", 1.5)
	_, _ = tables.Stud(quantity.Thread{System: quantity.MetricThread, Size: 8})
	_, _ = tables.Fit(quantity.Thread{System: quantity.MetricThread, Size: 8}, quantity.Thread{System: quantity.MetricThread, Size: 10})
	_, _ = tables.ChargerCord(10, 10)
	_, _ = tables.FAADrop(14, true)
	_, _ = tables.SwitchRating(12, LampLoad, 1)
	_ = tables.BundleFactor(4)
	_ = tables.LargestContinuous(10, 50)
	for _, c := range []string{"LFP", "lead-acid"} {
		if pack, err := tables.Pack(c, 16); err == nil {
			if v := pack.RestVolts(0.5); !(v > 0) {
				t.Fatalf("%s at half rests at %v", c, v)
			}
			_ = pack.ChargeAt(50)
			_, _ = tables.Guarded(pack), tables.Touchable(pack)
		}
	}
}
