package cold

import (
	"bytes"
	"errors"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/userdata"
)

// whatProfiles names the file in errors.
const whatProfiles = "kitchen profiles"

// ProfilesPath returns where a maker's own kitchens are kept: profiles.yaml in
// ripplewright's part of the user's configuration folder.
func ProfilesPath() (string, error) {
	return userdata.Path("profiles.yaml", whatProfiles)
}

// LoadProfiles reads the own kitchens at path. A file that is not there holds
// none. What is wrong inside one is a *FieldError with its line; nothing is
// returned then, so that saving cannot lose a kitchen.
func LoadProfiles(path string) ([]Profile, error) {
	data, err := userdata.Read(path, whatProfiles)
	if err != nil {
		return nil, err
	}
	list, err := DecodeProfiles(data)
	if err != nil {
		return nil, flaw.New("kitchen profiles in %s: %v", path, err)
	}
	return list, nil
}

// FindOwn returns the kitchen of that name among the built-in ones and those at
// ProfilesPath, the ordinary one for "". A machine without a configuration
// folder has the built-in ones. Errors are those of LoadProfiles and Find.
func FindOwn(name string) (Profile, error) {
	var own []Profile
	if path, err := ProfilesPath(); err == nil {
		if own, err = LoadProfiles(path); err != nil {
			return Profile{}, err
		}
	}
	return Find(With(own), name)
}

// SaveProfiles makes list the contents of the file at path, all of it or,
// after an error, none. What a hand wrote around the kitchens stays. Folders that are
// missing are made.
func SaveProfiles(path string, list []Profile, schemas schemaline.Schemas) error {
	for _, p := range list {
		if err := p.Validate(); err != nil {
			return err
		}
	}
	old, err := userdata.Read(path, whatProfiles)
	if err != nil {
		return err
	}
	data, err := spliced(old, list)
	if err != nil {
		if data, err = EncodeProfiles(list); err != nil {
			return flaw.New("kitchen profiles: %v", err)
		}
	}
	return userdata.Write(path, whatProfiles, schemas.Head(data, schemaline.Kitchens))
}

// spliced returns the text of a file with the kitchens of list in place of its own.
func spliced(text []byte, list []Profile) ([]byte, error) {
	was, err := DecodeProfiles(text)
	if err != nil {
		return nil, err
	}
	for i := len(was) - 1; i >= 0 && len(was) > len(list); i-- {
		if slices.ContainsFunc(list, func(p Profile) bool { return p.Name == was[i].Name }) {
			continue
		}
		if text, err = userdata.Splice(text, keyProfiles, i, nil); err != nil {
			return nil, err
		}
		was = slices.Delete(was, i, i+1)
	}
	for i := range list {
		at := i
		switch {
		case i >= len(was):
			at = -1
		case was[i] == list[i]:
			continue
		}
		if text, err = userdata.Splice(text, keyProfiles, at, setting.Node(fields, &list[i])); err != nil {
			return nil, err
		}
	}
	if got, err := DecodeProfiles(text); err != nil || !slices.Equal(got, list) {
		return nil, flaw.New("it would read back differently")
	}
	return text, nil
}

// The version of the file's form, and the key of its list.
const (
	profilesVersion = 1
	keyProfiles     = "profiles"
)

// DecodeProfiles reads the file's text: version, and a list under profiles. A
// setting left out is Default's, since a kitchen without air is none.
func DecodeProfiles(data []byte) ([]Profile, error) {
	nodes, err := yamltext.Listed(data, profilesVersion, keyProfiles)
	if err != nil {
		return nil, err
	}
	var list []Profile
	for _, n := range nodes {
		p, err := decodeProfile(n)
		if err != nil {
			return nil, err
		}
		for _, other := range list {
			if strings.EqualFold(other.Name, p.Name) {
				return nil, &FieldError{n.Line, p.Name, "name", flaw.New("is given twice")}
			}
		}
		list = append(list, p)
	}
	return list, nil
}

func decodeProfile(n *yaml.Node) (Profile, error) {
	p := Default()
	p.Name, p.About = "", ""
	lines, err := setting.Read(fields, n, &p)
	var tree *setting.TreeError
	if errors.As(err, &tree) {
		return Profile{}, &FieldError{tree.Line, p.Name, tree.Path, tree.Err}
	}
	var wrong *FieldError
	if err := p.Validate(); errors.As(err, &wrong) {
		if wrong.Line = lines[wrong.Path]; wrong.Line == 0 {
			wrong.Line = n.Line
		}
		return Profile{}, wrong
	}
	return p, nil
}

// EncodeProfiles returns the text that DecodeProfiles reads.
func EncodeProfiles(list []Profile) ([]byte, error) {
	nodes := make([]*yaml.Node, len(list))
	for i := range list {
		nodes[i] = setting.Node(fields, &list[i])
	}
	var b bytes.Buffer
	b.WriteString("# Kitchens: air in °C, coefficients in W/(m² K), 0 where still air is to be computed.\n")
	e := yaml.NewEncoder(&b)
	e.SetIndent(2)
	err := e.Encode(struct {
		Version  int          `yaml:"version"`
		Profiles []*yaml.Node `yaml:"profiles"`
	}{profilesVersion, nodes})
	return b.Bytes(), err
}
