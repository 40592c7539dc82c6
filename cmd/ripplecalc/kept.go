package main

import (
	"slices"
	"strconv"
	"time"

	"github.com/spf13/pflag"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

var versionCommand = &command{
	name:  "version",
	usage: "version keep|list|back FILE [NUMBER] [--note TEXT] [--json]",
	short: "Keeps versions of a design with notes, lists them, goes back to one",
	long: `
keep  keeps what FILE says now as a version
list  lists the versions with their numbers, the oldest first
back  makes FILE say what version NUMBER said. What it said before is kept as a
      version first, unless one says it already

Versions are plain design files in the folder NAME.versions beside FILE, so that
evaluate, diff and every other command read them:

  ripplecalc diff quay.versions/2026-11-28-094000.yaml quay.yaml

  --note TEXT  what is to be said of the version, with keep
  --json       JSON instead of text: file, folder; versions (number, at, note,
               batch, path)
`,
	least: 2,
	most:  3,
	flags: versionFlags,
}

func versionFlags(c *command, flags *pflag.FlagSet) action {
	note := flags.String("note", "", "")
	asJSON := flags.Bool("json", false, "")
	return func(s *shell, words []string) error {
		what, file := words[0], words[1]
		numbered := what == "back"
		switch {
		case !slices.Contains([]string{"keep", "list", "back"}, what):
			return c.misused("version does keep, list or back, not %s", echo.Quoted(what))
		case file == "-":
			return c.misused("versions are kept beside a file, not beside standard input")
		case numbered != (len(words) == 3):
			return c.misused("back needs the number of a version, keep and list none")
		case *note != "" && what != "keep":
			return c.misused("--note goes with keep")
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		f, err := b.load(s, file)
		if err != nil {
			return err
		}
		list, err := versions.List(file)
		if err != nil {
			return err
		}
		switch what {
		case "keep":
			err = versions.Keep(file, s.schemas.Head(f.Bytes(), schemaline.Design), *note, "", time.Now())
		case "back":
			err = goBack(c, s, b, f, list, words[2])
		}
		if err != nil {
			return err
		}
		if list, err = versions.List(file); err != nil {
			return err
		}
		return s.answer(report.Versions{File: file, Folder: versions.Beside(file), List: list}, *asJSON)
	}
}

// goBack makes the file of f say what a version said.
func goBack(c *command, s *shell, b *bench, f *designfile.File, list []versions.Version, typed string) error {
	number, err := strconv.Atoi(typed)
	if err != nil {
		return c.misused("%s is not the number of a version", echo.Quoted(typed))
	}
	v, err := versions.Find(list, number)
	if err != nil {
		return flaw.New("%s: %v", f.Name, err)
	}
	then, err := v.Design(b.Library())
	if err != nil {
		return err
	}
	if !slices.ContainsFunc(list, func(v versions.Version) bool { return schemaline.Same(v.Text(), f.Bytes()) }) {
		if err := versions.Keep(f.Name, s.schemas.Head(f.Bytes(), schemaline.Design), say.BeforeGoingBack(number), "", time.Now()); err != nil {
			return err
		}
	}
	_, err = designfile.Save(f.Name, f, then.Design, designfile.SaveOptions{Schemas: s.schemas})
	return err
}
