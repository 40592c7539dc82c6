//go:build !unix

package atomicfile

// syncFolder does nothing: elsewhere a folder cannot be opened for syncing.
func syncFolder(string) error { return nil }
