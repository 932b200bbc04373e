package main

// commands lists what the program can do, in the order in which help shows it. Each call
// makes them anew, since a command holds the flags that it was called with.
func commands() []*command {
	return []*command{
		checkCommand(),
		drawCommand(),
		statesCommand(),
		readingsCommand(),
		traceCommand(),
		compareCommand(),
		symptomsCommand(),
		diagnoseCommand(),
		failureModesCommand(),
		beginCommand(),
		addCommand(),
		sizeCommand(),
		headroomCommand(),
		layersCommand(),
		schemaCommand(),
		kindsCommand(),
		explainCommand(),
		versionCommand(),
		helpCommand(),
	}
}

// commandByName returns nil if there is none.
func commandByName(name string) *command {
	for _, c := range commands() {
		if c.name == name {
			return c
		}
	}
	return nil
}

// commandNames lists the names, in the order of the list.
func commandNames() []string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return names
}
