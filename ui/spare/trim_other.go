//go:build !linux || !cgo

package spare

func trim() {}
