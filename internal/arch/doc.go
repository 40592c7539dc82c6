// Package arch holds the program to its layers. All of it is tests.
package arch
