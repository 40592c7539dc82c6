// Package testdata carries the published tables that the models are checked
// against, so that tests and the installed program's own validation read the
// same copies, and the hard designs of the tests. Every table names its source
// in its comment lines.
package testdata

import "embed"

// Tables holds tables/*.csv: comment lines beginning with #, then a header.
//
//go:embed tables/*.csv
var Tables embed.FS

// Designs holds designs/*.yaml, invented; some are meant to be refused.
//
//go:embed designs/*.yaml
var Designs embed.FS
