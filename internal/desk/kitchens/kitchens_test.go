package kitchens

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
)

func TestABookKeepsKitchensForEveryDesign(t *testing.T) {
	path := filepath.Join(t.TempDir(), "profiles.yaml")
	b := Open(path)
	told := 0
	b.Tell(func() { told++ })
	quay := cold.Default()
	quay.Name, quay.Freezer.AirC = "Saltmarsh Quay", -22
	require.NoError(t, b.Keep(quay, ""))
	assert.Equal(t, 1, told)
	assert.True(t, b.Own("saltmarsh quay"), "letter case aside")
	assert.False(t, b.BuiltIn(quay.Name))

	p, said := Open(path).For("Saltmarsh Quay")
	assert.Empty(t, said)
	assert.Equal(t, quay, p, "it outlives the program")

	quay.Name = "The stall"
	require.NoError(t, b.Keep(quay, "Saltmarsh Quay"))
	assert.False(t, b.Own("Saltmarsh Quay"), "it has another name now")
	require.NoError(t, b.Remove("The stall"))
	assert.False(t, b.Own("The stall"))
	assert.Equal(t, len(cold.BuiltIn()), len(b.All()))
	assert.Equal(t, 3, told)
}

func TestABuiltInKitchenComesBackAsItWas(t *testing.T) {
	b := Open(filepath.Join(t.TempDir(), "profiles.yaml"))
	p := cold.Default()
	p.Freezer.AirC -= 5
	require.NoError(t, b.Keep(p, p.Name))
	got, said := b.For("")
	assert.Empty(t, said)
	assert.Equal(t, p, got)
	require.NoError(t, b.Remove(p.Name))
	got, _ = b.For("")
	assert.Equal(t, cold.Default(), got)
}

func TestAnotherWindowsKitchensAreNotLost(t *testing.T) {
	path := filepath.Join(t.TempDir(), "profiles.yaml")
	a, b := Open(path), Open(path)
	one, two := cold.Default(), cold.Default()
	one.Name, two.Name = "One", "Two"
	require.NoError(t, a.Keep(one, ""))
	require.NoError(t, b.Keep(two, ""))
	assert.True(t, b.Own("One"))
	assert.True(t, b.Own("Two"))
}

func TestAKitchenThatIsNotHereIsSaid(t *testing.T) {
	p, said := Open("").For("Saltmarsh Quay")
	assert.Equal(t, cold.Default(), p)
	assert.Contains(t, said, "“Saltmarsh Quay”, which is not kept here. Computed as "+p.Name)
}

func TestABrokenFileIsSaidAndLeftAsItIs(t *testing.T) {
	path := filepath.Join(t.TempDir(), "profiles.yaml")
	broken := "version: 1\nkitchens: [{name: 7, freezer: cold}]\n"
	require.NoError(t, os.WriteFile(path, []byte(broken), 0o600))
	b := Open(path)
	require.Error(t, b.Problem())
	p, said := b.For("")
	assert.Equal(t, cold.Default(), p)
	assert.Contains(t, said, "own kitchens are left out")
	assert.Contains(t, said, path)
	assert.Error(t, b.Keep(cold.Default(), ""))
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, broken, string(data))

	kept, err := b.PutAside(time.Date(2026, 11, 28, 9, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(filepath.Dir(path), "profiles broken 2026-11-28 090000.yaml"), kept.Path)
	data, err = os.ReadFile(kept.Path)
	require.NoError(t, err)
	assert.Equal(t, broken, string(data))
	require.NoError(t, b.Problem())
	attic := cold.Default()
	attic.Name = "Attic"
	require.NoError(t, b.Keep(attic, ""))
	kept, err = b.PutAside(time.Now())
	require.NoError(t, err)
	assert.Nil(t, kept, "there is no need")
}
