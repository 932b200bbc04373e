package symptom

// Symptoms lists the symptoms that are known, gravest first.
func Symptoms() []*Symptom {
	return []*Symptom{
		movesOnCharge(),
		movesByItself(),
		doesNotMove(),
		movesOneWay(),
		solenoidSilent(),
		solenoidChatters(),
		fuseOpens(),
		packTrips(),
		harm(),
		heat(),
		twelveDead(),
		consumerDead(),
		consumerStays(),
		doesNotCharge(),
		flatSoon(),
	}
}
