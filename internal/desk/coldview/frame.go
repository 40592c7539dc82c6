package coldview

// A Room is a rectangle on the screen.
type Room struct{ X, Y, W, H float32 }

const (
	besideShare = 0.47 // what the picture gets of the width
	overShare   = 0.34 // or of the height, at most
	flat        = 0.33 // a shape, height over width, that lies on top
	scaleRoom   = 100  // what the scale of colours takes of the width, or more
)

// Rooms parts w × h between a picture of a tub, whose shape is its height over its
// width, and its curves: side by side, or a flat picture on top, with so much
// padding. Without a picture the curves have all.
func Rooms(w, h, shape, padding float32, pictured bool) (picture, curves Room) {
	switch {
	case !pictured:
	case shape < flat:
		picture = Room{W: w, H: min(h*overShare, (w-scaleRoom)*shape+4*padding)}
		return picture, Room{Y: picture.H, W: w, H: h - picture.H}
	default:
		picture = Room{W: w * besideShare, H: h}
	}
	return picture, Room{X: picture.W, W: w - picture.W, H: h}
}

// LeastRoom returns the least width and height in which both fit beside each
// other, from what each needs. The picture of a flat tub may be lower.
func LeastRoom(picture, curves Room) (w, h float32) {
	return max(picture.W/besideShare, curves.W/(1-besideShare)), max(picture.H, curves.H)
}
