package photo

// Reason is why a picture cannot be read, or not all of it.
type Reason uint8

// The reasons.
const (
	NoReason       Reason = iota
	NotAPicture           // neither JPEG nor PNG
	Broken                // cut off, or wrong inside
	TooManyBytes          // than are read
	TooLarge              // more pixels than are read
	TooSmall              // fewer pixels than show a ribbon
	OutlineOutside        // a corner lies beyond the picture
	OutlineCrossed        // its sides cross, or a corner points inwards
	OutlineSmall          // a side is too short to show ribbons
	OutlineSlanted        // seen from too far aside to be straightened
	OutlineShape          // it has not the cut's proportions
	SpotOutside           // a spot lies outside the outline
	TooDark               // nothing to see
	Clipped               // the light of a phase is beyond what the picture can hold
	ColoursAlike          // the two spots do not differ
	Noisy                 // they differ by less than the picture's own grain
	Shadowed              // a shadow decides what is foam
	OnePhase              // the whole cut has one of the two colours
	Blurred               // edges as wide as the ribbons
	RibbonsThin           // thinner than MinRibbonPixels
)

var reasonCodes = [...]string{"", "not_a_picture", "broken", "too_many_bytes", "too_large", "too_small", "outline_outside", "outline_crossed", "outline_small", "outline_slanted", "outline_shape",
	"spot_outside", "too_dark", "clipped", "colours_alike", "noisy", "shadowed", "one_phase", "blurred", "ribbons_thin"}

// String returns the reason's code, as JSON has it.
func (r Reason) String() string { return reasonCodes[r] }

// Refusal is why a picture cannot be read, with what of these is known; package say words
// it.
type Refusal struct {
	Reason         Reason
	Place          Point // that lies outside
	Width, Height  int   // pixels, of the picture
	MostPixels     int   // that are read of its kind
	ClippedPercent float64
	LeastMM        float64 // ribbons thinner than this cannot be seen
}

func (r *Refusal) Error() string { return "the picture is refused: " + r.Reason.String() }

func refuse(r Reason) *Refusal { return &Refusal{Reason: r} }

// sized is a refusal of a picture for its size.
func sized(r Reason, w, h int) *Refusal { return &Refusal{Reason: r, Width: w, Height: h} }
