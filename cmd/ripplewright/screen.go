package main

import "github.com/go-gl/glfw/v3.3/glfw"

// flat asks for windows without a depth buffer and a stencil, before the first is made:
// the toolkit paints in order and looks at neither, but clears both with every frame,
// which costs 3 ms of one where a processor paints. A display that cannot be had is told
// of by the toolkit.
func flat() {
	if glfw.Init() == nil {
		glfw.WindowHint(glfw.DepthBits, 0)
		glfw.WindowHint(glfw.StencilBits, 0)
	}
}
