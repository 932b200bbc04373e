package begin_test

import (
	"context"
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/lugwright/lugwright/wiring/accessory"
	"github.com/lugwright/lugwright/wiring/begin"
	"github.com/lugwright/lugwright/wiring/catalog"
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/job"
	"github.com/lugwright/lugwright/wiring/quantity"
	"github.com/lugwright/lugwright/wiring/rule"
	"github.com/lugwright/lugwright/wiring/rules"
)

// nowhere is a folder without anything: all layers are those that ship.
func nowhere() accessory.Load {
	return accessory.Loader("job.yaml", job.Options{FS: fstest.MapFS{}})
}

func amount(t *testing.T, text string, d quantity.Dimension) quantity.Amount {
	t.Helper()
	a, err := quantity.Parse(text, d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every pair of shipped layers that fits begins a job without an error, of fewer than forty
// lines with three accessories; and each platform and each kit has a partner.
func TestEveryPairThatFits(t *testing.T) {
	partners := map[string]int{}
	for _, p := range catalog.Layers("platform") {
		for _, k := range catalog.Layers("kit") {
			if !begin.Fits(nowhere(), p.Name, k.Name) {
				continue
			}
			partners[p.Name]++
			partners[k.Name]++
			t.Run(p.Name+"+"+k.Name, func(t *testing.T) { beginsWell(t, p.Name, k.Name) })
		}
	}
	for _, l := range catalog.Layers("") {
		if partners[l.Name] == 0 {
			t.Errorf("nothing fits %s", l.Name)
		}
	}
	for _, apart := range [][2]string{{"36v-series", "16s-onboard-charger"}, {"48v-ac", "12s-inlet"}, {"48v-separately-excited", "12s-onboard-charger"}, {"48v-ac", "16s-onboard-charger"}} {
		if begin.Fits(nowhere(), apart[0], apart[1]) {
			t.Errorf("%s is said to fit %s", apart[1], apart[0])
		}
	}
}

func beginsWell(t *testing.T, platform, kit string) {
	b, err := begin.Job(context.Background(), nowhere(), begin.Request{
		Number: "T-1", Platform: platform, Kit: kit, Insulation: amount(t, "105 C", quantity.Temperature), Date: "2026-03-02", By: "RA",
		Accessories: []accessory.Request{
			{Kind: "light-bar", Place: "front", Watts: 36, Length: amount(t, "4 ft", quantity.Length)},
			{Kind: "usb-outlet", Place: "dash", Watts: 24, Switch: "none"},
			{Kind: "horn", Place: "front", Switch: "push-button"},
		},
	})
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(string(b.Text), "\n"); n >= 40 {
		t.Errorf("%d lines", n)
	}
	if platform == "36v-series" && (len(b.Taps) != 1 || b.Taps[0] != "W32") {
		t.Errorf("the tap of the old string: %v", b.Taps)
	}
	result, err := rule.Run(context.Background(), b.Harness, rules.All(), rule.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range result.Open(diag.Error) {
		t.Errorf("%s:%d: %s (%s)\n%s\n%s", f.At.File, f.At.Line, f.Message, f.Rule, f.Detail, b.Text)
	}
}

func TestFaultsOfARequest(t *testing.T) {
	_, err := begin.Job(context.Background(), nowhere(), begin.Request{Date: "today", Cart: "a\nb"})
	var all *begin.Error
	if !errors.As(err, &all) || len(all.Faults) != 5 {
		t.Errorf("%v, want no number, no platform, no kit, two lines, no date", err)
	}
	_, err = begin.Job(context.Background(), nowhere(), begin.Request{Number: "1", Platform: "48v-sepex", Kit: "16s-inlet"})
	if err == nil || !strings.Contains(err.Error(), "no layer 48v-sepex") {
		t.Error(err)
	}
	_, err = begin.Job(context.Background(), nowhere(), begin.Request{Number: "1", Platform: "48v-separately-excited", Kit: "16s-inlet",
		Accessories: []accessory.Request{{Kind: "ligth-bar"}}})
	var refusal *accessory.Refusal
	if !errors.As(err, &refusal) || !strings.Contains(err.Error(), "did you mean light-bar") {
		t.Error(err)
	}
}
