package main

import (
	"runtime/debug"
)

// version returns what the build knows of itself: the module's version, or
// the commit that was built.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "of unknown origin"
	}
	setting := map[string]string{}
	for _, s := range info.Settings {
		setting[s.Key] = s.Value
	}
	v := info.Main.Version
	if v == "" || v == "(devel)" {
		v = "development"
	}
	if commit := setting["vcs.revision"]; len(commit) >= 12 {
		v += " " + commit[:12]
		if setting["vcs.modified"] == "true" {
			v += " with changes"
		}
	}
	return v + " (" + info.GoVersion + ")"
}
