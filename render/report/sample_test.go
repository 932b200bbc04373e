package report

import (
	"github.com/lugwright/lugwright/wiring/diag"
	"github.com/lugwright/lugwright/wiring/rule"
)

// The sample is invented: files, findings and rules that between them use everything that
// a report can hold.

const sampleJob = `job: TP-14
title: Two-seat cart
wires:
  W9: {from: T2.enable, to: K1.in, size: 18 AWG, length: 5 ft, note: "red wire, joined to the reducer's own white lead behind the seat box"}
` + "\tW10: {from: A1.1, to: 灯.+, colour: RD}\n" + `  W11: {from: A1.2, to: "é́x", colour: RD}
waivers:
  - {rule: no-drive-on-charge, at: U1, reason: "the cart is only charged in the locked shed", by: RA}
`

func sampleFiles() *diag.Files {
	var files diag.Files
	files.Add("jobs/tp-14.yaml", []byte(sampleJob))
	files.Add("platforms/48v.yaml", []byte("platform: 48 V\nwires:\n  W9: {from: T2.enable, to: K1.out}\n"))
	return &files
}

func sampleRules() []*rule.Rule {
	return []*rule.Rule{
		{
			ID:     "off-means-off",
			Title:  "with the key off nothing that is switched is alive",
			Level:  diag.Error,
			Why:    "A reducer that runs day and night takes 60 mA and whatever its loads take. A 110 Ah pack at 80 % is at its floor in about two months, and sooner with a lamp left on.\n\nA pack that is drained to its floor may refuse its charger.",
			Do:     "Land the enable lead on a point that has pack voltage only while the cart is on.",
			Source: "common practice, no published source",
			Wrong:  "wires:\n  W62: {from: T2.enable, to: K1.in}\n",
			Right:  "wires:\n  W62: {from: T2.enable, to: S1.out}\n",
		},
		{
			ID:     "no-drive-on-charge",
			Title:  "the cart cannot drive with AC plugged in",
			Level:  diag.Warning,
			Why:    "A cart that drives off tears its cord out of the wall.",
			Do:     "Feed the interlock lead through the charger's lockout contact.",
			Source: "common practice, no published source",
		},
	}
}

func sampleFindings() []diag.Finding {
	file := "jobs/tp-14.yaml"
	return []diag.Finding{
		{
			Rule:    "colour-clear",
			Level:   diag.Note,
			Message: "this finding has no place",
		},
		{
			Rule:     "off-means-off",
			Level:    diag.Error,
			Message:  "the enable lead of reducer T2 is always live",
			Detail:   "With the key off T2.enable reads 51.2 V, so T2 runs day and night: 0.18 A, and the pack is at its floor after 21 days.",
			Advice:   "Move W9 to this platform's switched point, S1.out.",
			At:       diag.Span{File: file, Line: 4, Col: 29, EndCol: 34},
			Related:  []diag.Place{{Span: diag.Span{File: "platforms/48v.yaml", Line: 3, Col: 3, EndCol: 5}, Label: "W9 is defined here"}},
			Subjects: []string{"W9", "T2.enable"},
			States:   []string{"tow", "key off", "charging"},
		},
		{
			Rule:    "off-means-off",
			Level:   diag.Warning,
			Message: "a tab and wide characters stand before the place",
			Advice:  "The carets stand below the second terminal.",
			At:      diag.Span{File: file, Line: 5, Col: 24, EndCol: 27},
			States:  []string{"key off"},
		},
		{
			Rule:    "colour-clear",
			Level:   diag.Note,
			Message: "combining marks take no column",
			At:      diag.Span{File: file, Line: 6, Col: 31, EndCol: 37},
		},
		{
			Rule:     "no-drive-on-charge",
			Level:    diag.Warning,
			Message:  "the cart drives with the plug in",
			At:       diag.Span{File: file, Line: 2, Col: 8, EndCol: 21},
			Subjects: []string{"U1"},
			Waived: &diag.Waiver{
				Rule:   "no-drive-on-charge",
				At:     "U1",
				Reason: "the cart is only charged in the locked shed",
				By:     "RA",
				Span:   diag.Span{File: file, Line: 8, Col: 5, EndCol: 99},
			},
		},
	}
}

func sampleReport() Report {
	return Report{
		Version: "1.2.3",
		Rules:   sampleRules(),
		Jobs: []Job{{
			File:     "jobs/tp-14.yaml",
			Number:   "TP-14",
			Title:    "Two-seat cart",
			Findings: sampleFindings(),
			NotChecked: []rule.NotChecked{
				{Rule: "voltage-drop", What: "W10", Why: "it has no length", At: diag.Span{File: "jobs/tp-14.yaml", Line: 5, Col: 2, EndCol: 5}},
				{Rule: "fuse-breaks-fault", What: "G1", Why: "it has no internal resistance"},
			},
			Files: sampleFiles(),
		}},
	}
}

// sampleBroken is a report on a file that cannot be read, beside one with nothing found.
func sampleBroken() Report {
	var files diag.Files
	files.Add("a b/ö.yaml", []byte("job: X\nwires: {W1: {lenght: 3 ft}}\x1b[2J\n"))
	return Report{
		Version: "1.2.3",
		Rules:   sampleRules(),
		Least:   diag.Warning,
		Jobs: []Job{
			{
				File:     "a b/ö.yaml",
				Unusable: true,
				Findings: []diag.Finding{
					{
						Rule:    "input",
						Level:   diag.Error,
						Message: "unknown key lenght in wire W1: did you mean length?",
						At:      diag.Span{File: "a b/ö.yaml", Line: 2, Col: 14, EndCol: 20},
					},
					{Rule: "input", Level: diag.Note, Message: "below the level"},
				},
				Files: &files,
			},
			{File: "fine.yaml", Number: "TP-15", Title: "Nothing wrong"},
		},
	}
}
