package assets

import "embed"

// Demos holds the demo designs, demos/*.yaml, as package designfile reads
// them. They belong to an invented market stall; each says so in its notes.
//
//go:embed demos/*.yaml
var Demos embed.FS

// FirstDemo is the demo that opens when no file is named.
const FirstDemo = "demos/hazelnut.yaml"

// Bases holds bare designs to begin with, bases/*.yaml, and the foams that can
// stand in for theirs, foams/*.yaml.
//
//go:embed bases/*.yaml foams/*.yaml
var Bases embed.FS
