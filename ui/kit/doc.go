// Package kit holds the program's own widgets: fields in, callbacks out.
//
// Every widget has Show… methods (ShowValue, ShowRail) that put values on screen and
// call nobody back; only a hand on the mouse or the keyboard does. A widget
// that is dragged reports OnChanged on the way and OnChangeEnded once at rest.
// Keys do the same: arrows step, with shift or Page Up and Down ten steps, Home
// and End go to the limits; a key held down ends when it is let go.
//
// Nothing is told by colour alone: phases differ by dash and hatch, verdicts by
// shape and word. An unknown number is NaN and is shown as an en dash.
//
// The widgets know no food and no model. They live on the window's goroutine.
package kit
