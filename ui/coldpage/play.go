package coldpage

import (
	"math"
	"time"

	"fyne.io/fyne/v2"

	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// hand is the minute that somebody asks for, shown once a frame, so that no hand
// can outrun the screen.
type hand struct {
	wanted float64 // NaN: none
	frame  *fyne.Animation
	awake  bool
	show   func(minute float64)
}

func newHand(show func(float64)) hand { return hand{wanted: math.NaN(), show: show} }

func (h *hand) wake() {
	if h.frame == nil {
		h.frame = &fyne.Animation{Duration: time.Hour, RepeatCount: fyne.AnimationRepeatForever, Tick: mishap.With(func(float32) { h.tick() })}
	}
	if !h.awake {
		h.awake = true
		h.frame.Start()
	}
}

func (h *hand) sleep() {
	if h.awake {
		h.awake = false
		h.frame.Stop()
	}
}

// tick shows the minute that a hand asks for.
func (h *hand) tick() {
	if v := h.wanted; !math.IsNaN(v) {
		h.wanted = math.NaN()
		h.show(v)
	}
}

// player lets the time run by itself, away from the window's thread.
type player struct {
	stopped chan struct{} // closed to stop; nil: it does not play
}

func (s *stage) playOrStop() {
	switch {
	case s.playing.stopped != nil:
		s.stop()
		return
	case !coldview.Pictured(s.scene.Run):
		return
	case s.time.Value() >= coldview.Last(s.scene.Run):
		s.at(0)
	}
	s.play.SetText(say.T("Stop"))
	stopped := make(chan struct{})
	s.playing.stopped = stopped
	mishap.Go(func() {
		tick := time.NewTicker(coldview.PlayEvery)
		defer tick.Stop()
		for {
			select {
			case <-stopped:
				return
			case <-tick.C:
				s.host.Post(func() { s.step(stopped) })
			}
		}
	})
}

// step is one tick of the playing that stopped ends.
func (s *stage) step(stopped chan struct{}) {
	if s.playing.stopped != stopped || !coldview.Pictured(s.scene.Run) {
		return
	}
	next, ends := s.scene.Next(s.time.Value())
	s.at(next)
	if ends {
		s.stop()
	}
}

// stop ends the playing.
func (s *stage) stop() {
	if s.playing.stopped != nil {
		close(s.playing.stopped)
		s.playing.stopped = nil
		s.play.SetText(say.T("Play"))
	}
}
