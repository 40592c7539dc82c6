package onpack

// SourceClass says how a rule or a word was read.
type SourceClass string

// The classes.
const (
	LawRead    SourceClass = "law read"    // the text of the law, or a copy of it
	Authority  SourceClass = "authority"   // an authority's own page
	Secondary  SourceClass = "secondary"   // a secondary page
	FromMemory SourceClass = "from memory" // by our reading, unverified
	Decided    SourceClass = "decided here"
)

var classRank = []SourceClass{LawRead, Authority, Secondary, Decided, FromMemory}
