package daypage

import (
	"bytes"
	"path/filepath"
	"strings"
	"time"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/ui/page"
)

// export asks where the plan goes and writes it.
func (p *Page) export(ending string) {
	if p.answer == nil {
		return
	}
	day, now := p.answer.Day, p.clock()
	p.host.Export(page.FileTitle(p.asked.Design)+ending, func(path string) error { return write(path, day, now) })
}

// write writes a plan in the form that the path's ending names.
func write(path string, day report.Day, now time.Time) error {
	var text bytes.Buffer
	var err error
	switch ending := strings.ToLower(filepath.Ext(path)); ending {
	case ".ics":
		err = day.WriteCalendar(&text, now)
	case ".md":
		err = day.WriteMarkdown(&text)
	default:
		err = flaw.New("a plan is written as .ics or .md, not as %q", ending)
	}
	if err != nil {
		return err
	}
	return atomicfile.Write(path, text.Bytes())
}
