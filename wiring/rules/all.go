package rules

import (
	"github.com/lugwright/lugwright/wiring"
	"github.com/lugwright/lugwright/wiring/rule"
)

// list of the rules, in the order in which they are told about: the four for which the
// program exists first.
func catalogue() []*rule.Rule {
	return []*rule.Rule{
		fusedConsumer(),
		busVoltage(),
		interlockLanded(),
		returnComplete(),
		busesApart(),
		polarity(),
		fuseProtectsWire(),
		fuseVoltage(),
		fuseCarriesLoad(),
		fuseBreaksFault(),
		fuseNearSource(),
		wireCarriesLoad(),
		voltageDrop(),
		reducerBudget(),
		packCarriesMotor(),
		precharge(),
		coilSuppressed(),
		chargerMatchesPack(),
		referenceFloating(),
		leadEnded(),
		offMeansOff(),
		stackOrder(),
		stackCount(),
		lugFitsStud(),
		colourClear(),
		noShort(),
		noDriveOnCharge(),
		sneakPath(),
		chatter(),
		startsFromCold(),
		expectationMet(),
		wireReaches(),
		oldGauge(),
		coldCharge(),
		chargerWakesPack(),
		liveInletPins(),
		controllerCutsFirst(),
		holderRating(),
		coilRange(),
		contactRange(),
		flasherLoad(),
		smallestWire(),
		followsTheKey(),
		fuseCanOpen(),
		packTrips(),
		regenHasAHome(),
		serviceDisconnect(),
		waiverUnused(),
	}
}

// All lists every rule there is. The list and the rules may be kept; they are made anew by
// each call.
func All() []*rule.Rule { return catalogue() }

// Find finds a rule by its id, without regard to case; nil if there is none.
func Find(id string) *rule.Rule {
	for _, r := range catalogue() {
		if r.ID == wiring.Fold(id) {
			return r
		}
	}
	return nil
}

// IDs lists the ids of all rules.
func IDs() []string {
	all := catalogue()
	ids := make([]string, len(all))
	for i, r := range all {
		ids[i] = r.ID
	}
	return ids
}
