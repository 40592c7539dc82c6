package main

import "runtime/debug"

// release is set by .ci/package from FyneApp.toml.
var release string

// version returns what the build knows of itself: the release, the module's
// version, or the commit that was built.
func version() string {
	if release != "" {
		return release
	}
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
