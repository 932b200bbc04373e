package fault

// Modes lists every way to fail that is known, in the order in which charts show them.
func Modes() []*Mode {
	return []*Mode{
		interlockOff(),
		wireOpen(),
		looseLug(),
		wrongTerminal(),
		swapped(),
		wrongWayRound(),
		shortToNegative(),
		shortToFrame(),
		fuseBlown(),
		fuseMissing(),
		switchStuck(),
		switchOpen(),
		coilOpen(),
		contactWelded(),
		contactOpen(),
		driverOpen(),
		driverShorted(),
		inputDead(),
		inputStuck(),
		diodeOpen(),
		diodeShorted(),
		resistorOpen(),
		loadOpen(),
		loadShorted(),
		converterDead(),
		enableStuck(),
		converterThrough(),
		chargerDead(),
		acDead(),
		packTripped(),
	}
}
