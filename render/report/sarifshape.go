package report

// The part of SARIF 2.1.0 that is written. Names of fields are ours; the keys, and the
// clause of the standard that defines each object, stand beside them.

type sarifLog struct { // 3.13
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct { // 3.14
	Tool        sarifTool         `json:"tool"`
	Invocations []sarifInvocation `json:"invocations"`
	ColumnKind  string            `json:"columnKind"`
	Results     []sarifResult     `json:"results"`
}

type sarifTool struct { // 3.18
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct { // 3.19 toolComponent
	Name    string      `json:"name"`
	Version string      `json:"version,omitempty"`
	Rules   []sarifRule `json:"rules"`
}

type sarifInvocation struct { // 3.20
	ExecutionSuccessful bool `json:"executionSuccessful"`
}

type sarifRule struct { // 3.49 reportingDescriptor
	ID      string             `json:"id"`
	Short   *sarifMessage      `json:"shortDescription,omitempty"`
	Full    *sarifMessage      `json:"fullDescription,omitempty"`
	Help    *sarifHelp         `json:"help,omitempty"`
	Default sarifConfiguration `json:"defaultConfiguration"`
}

type sarifConfiguration struct { // 3.50 reportingConfiguration
	Level string `json:"level"`
}

type sarifMessage struct { // 3.11 message, 3.12 multiformatMessageString
	Text string `json:"text"`
}

type sarifHelp struct { // 3.12 multiformatMessageString
	Text     string `json:"text"`
	Markdown string `json:"markdown,omitempty"`
}

type sarifResult struct { // 3.27
	RuleID           string             `json:"ruleId"`
	RuleIndex        *int               `json:"ruleIndex,omitempty"`
	Kind             string             `json:"kind,omitempty"` // absent: "fail"
	Level            string             `json:"level"`
	Message          sarifMessage       `json:"message"`
	Locations        []sarifLocation    `json:"locations"`
	RelatedLocations []sarifLocation    `json:"relatedLocations,omitempty"`
	Fingerprints     map[string]string  `json:"partialFingerprints,omitempty"`
	Suppressions     []sarifSuppression `json:"suppressions,omitempty"`
}

type sarifLocation struct { // 3.28
	ID       int            `json:"id,omitempty"`
	Physical sarifPhysical  `json:"physicalLocation"`
	Logical  []sarifLogical `json:"logicalLocations,omitempty"`
	Message  *sarifMessage  `json:"message,omitempty"`
}

type sarifPhysical struct { // 3.29
	Artifact sarifArtifact `json:"artifactLocation"`
	Region   *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct { // 3.4 artifactLocation
	URI    string `json:"uri"`
	BaseID string `json:"uriBaseId,omitempty"`
}

type sarifRegion struct { // 3.30; columns in the unit of columnKind, endColumn exclusive
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn"`
	EndColumn   int `json:"endColumn"`
}

type sarifLogical struct { // 3.33
	Name string `json:"name"`
}

type sarifSuppression struct { // 3.35
	Kind          string         `json:"kind"`
	Status        string         `json:"status,omitempty"`
	Justification string         `json:"justification,omitempty"`
	Location      *sarifLocation `json:"location,omitempty"`
}
