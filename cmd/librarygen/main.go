// Command librarygen turns the source table of ingredients into the library
// that the program embeds. Run it from the project's root after each change
// of assets/library/ingredients.csv:
//
//	go run ./cmd/librarygen
package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"

	"ripplewright/internal/food/ingredient"
)

func main() {
	dir := filepath.Join("assets", "library")
	if err := generate(filepath.Join(dir, "ingredients.csv"), filepath.Join(dir, "ingredients.jsonl")); err != nil {
		fmt.Fprintln(os.Stderr, "librarygen:", err)
		os.Exit(1)
	}
}

// generate reads the table named from and writes the library named to.
func generate(from, to string) error {
	table, err := os.Open(from)
	if err != nil {
		return err
	}
	defer table.Close()
	list, err := ingredient.ReadTable(table)
	if err != nil {
		return fmt.Errorf("%s: %w", from, err)
	}
	var b bytes.Buffer
	if err := ingredient.Write(&b, list); err != nil {
		return err
	}
	if err := os.WriteFile(to, b.Bytes(), 0o644); err != nil {
		return err
	}
	fmt.Printf("%s: %d ingredients\n", to, len(list))
	return nil
}
