package arrangetest

import "github.com/lugwright/lugwright/render/arrange"

// Cart is an invented traction circuit of 14 parts and 24 wires: a pack, main fuse and
// solenoid above a controller, its motor, and the switches that command it.
func Cart(width, height int) *Builder {
	b := New(width, height)
	b.Bar("P", arrange.TopRow).Bar("N", arrange.BottomRow).Bar("X1", arrange.Free)
	b.Box("G1", arrange.Source, "", "disp", "+", "-")
	b.Two("F1", arrange.InChain)
	b.Box("K1", arrange.InChain, "c1 c2", "", "in", "out")
	b.Box("U1", arrange.Host, "run key fwd rev pedal t1 t2", "a1 a2", "B+", "B-")
	b.Box("M1", arrange.Companion, "a1 a2", "", "", "")
	b.Two("F2", arrange.InChain).Two("S1", arrange.Control).Two("S2", arrange.Control)
	b.Box("S3", arrange.Control, "in", "fwd rev", "", "")
	b.Box("S4", arrange.Control, "in", "out t1 t2", "", "")
	b.Two("R1", arrange.InChain).Two("V1", arrange.InChain)
	b.Two("F3", arrange.InChain)
	b.Box("T1", arrange.Host, "ac", "", "+", "-")
	b.D.Bars[0].Owner, b.D.Bars[1].Owner = b.Terminal("G1.+"), b.Terminal("G1.-")
	b.Wire("L1", "G1.+", "P", "", 4).Wire("L2", "G1.-", "N", "", 4)
	b.Wire("W1", "P", "F1.1", "RD 2 AWG", 4).Wire("W2", "F1.2", "K1.in", "RD 2 AWG", 4)
	b.Wire("W3", "K1.out", "U1.B+", "RD 2 AWG", 4).Wire("W4", "U1.B-", "N", "BK 2 AWG", 4)
	b.Wire("W5", "U1.a1", "M1.a1", "WH 2 AWG", 4).Wire("W6", "U1.a2", "M1.a2", "BK 2 AWG", 4)
	b.Wire("W7", "K1.in", "F2.1", "RD 16 AWG", 1).Wire("W8", "F2.2", "S2.1", "RD 16 AWG", 1)
	b.Wire("W9", "S2.2", "U1.run", "OG 18 AWG", 1).Wire("W10", "S2.2", "S1.1", "OG 16 AWG", 1)
	b.Wire("W11", "S1.2", "X1", "YE 16 AWG", 1).Wire("W12", "X1", "U1.key", "YE 18 AWG", 1)
	b.Wire("W13", "X1", "K1.c1", "YE/RD 18 AWG", 1).Wire("W14", "K1.c2", "N", "YE/BK 18 AWG", 1)
	b.Wire("W15", "X1", "S3.in", "YE 18 AWG", 1).Wire("W16", "S3.fwd", "U1.fwd", "VT 18 AWG", 1)
	b.Wire("W17", "S3.rev", "U1.rev", "PK 18 AWG", 1).Wire("W18", "X1", "S4.in", "YE 18 AWG", 1)
	b.Wire("W19", "S4.out", "U1.pedal", "TQ 18 AWG", 1).Wire("W20", "S4.t1", "U1.t1", "WH 18 AWG", 1)
	b.Wire("W21", "S4.t2", "U1.t2", "GY 18 AWG", 1).Wire("W22", "X1", "R1.1", "WH/RD 18 AWG", 1)
	b.Wire("W23", "R1.2", "K1.out", "WH 18 AWG", 1).Wire("W24", "V1.1", "K1.c1", "GY 20 AWG", 1)
	b.Wire("W25", "V1.2", "K1.c2", "BK 20 AWG", 1)
	b.Wire("W26", "P", "F3.1", "RD 10 AWG", 2).Wire("W27", "F3.2", "T1.+", "RD 10 AWG", 2).Wire("W28", "T1.-", "N", "BK 10 AWG", 2)
	return b
}
