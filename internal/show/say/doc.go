// Package say is the one home of every quantity and every sentence that a
// person reads: on the card, in the window, on the command line.
//
// Quantities are methods of a Style, which holds the maker's choice of units
// and signs; its zero value is metric with a decimal point. They take the
// program's own units (°C, g, mL, mm, kPa, minutes, percent) and return text
// with its unit. What is unknown (NaN or infinite) is an en dash, a negative
// number has the true minus, and nothing reads "−0".
//
// Sentences are functions of a Style and of what was computed: one function
// for one question, so that a question has one answer wherever it is asked.
package say
