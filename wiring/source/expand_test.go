package source

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestExpand(t *testing.T) {
	tests := []struct {
		text string
		want []string
	}{
		{"G11", []string{"G11"}},
		{"G11..G13", []string{"G11", "G12", "G13"}},
		{"G11..13", []string{"G11", "G12", "G13"}},
		{"G11..G12.+", []string{"G11.+", "G12.+"}},
		{"A1.3..4", []string{"A1.3", "A1.4"}},
		{"X1.a1..a3", []string{"X1.a1", "X1.a2", "X1.a3"}},
		{"1..3", []string{"1", "2", "3"}},
		{"W1..W1", []string{"W1"}},
		{"W08..W11", []string{"W08", "W09", "W10", "W11"}},
		{"g1..G2", []string{"g1", "g2"}},
		{"E1F..E2F", []string{"E1F", "E2F"}},
		{"G13..G11", nil},
		{"G1..K2", nil},
		{"G..G2", nil},
		{"G1..", nil},
		{"..", nil},
		{"1..20000", nil},
		{"1..99999999999999999999", nil},
		{"G1..2..3", nil},
		{"G1...3", nil},
	}
	for _, test := range tests {
		got, ok := Expand(test.text)
		if diff := cmp.Diff(test.want, got); diff != "" || ok != (test.want != nil) {
			t.Errorf("Expand(%q): %v (-want +got)\n%s", test.text, ok, diff)
		}
	}
}
