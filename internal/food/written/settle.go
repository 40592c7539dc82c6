package written

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/customary"
)

// settle finds the ingredient and the grams of p.
func (r *Reader) settle(l *Said, p parts, american bool) {
	p.sizeInName()
	p.fruitPart()
	name, size := r.sized(&p)
	if p.whole != "" {
		name += " " + partOfFruit(p.whole)
	}
	name = r.brownedFirst(name, &p)
	l.Note = strings.Join(p.notes, ", ")
	m, turned, ok := r.names.look(name, strings.Join(p.notes[:min(1, len(p.notes))], ""))
	if food, remark, tails := r.tailed(name); !ok && tails && p.whole == "" {
		name, p.notes = food, append([]string{remark}, p.notes...)
		l.Note = strings.Join(p.notes, ", ")
		m, turned, ok = r.names.look(name, "")
	}
	l.Name = name
	if !ok {
		m, ok = r.names.provenly(name)
	}
	loose := m.loose
	switch {
	case p.upTo > 0:
		m, ok = r.withEither(l, m, ok, p)
	case p.percent >= 0:
		m, ok = r.withPercent(l, m, ok, p.percent)
	}
	if !ok {
		r.unknown(l)
		return
	}
	in := r.meant(l, m, p)
	if p.doubt != 0 {
		l.ask(p.doubt)
	}
	r.remarked(l, in, p, turned)
	r.weigh(l, p, size, loose, american)
	if preserved(l, in) {
		l.ask(Other)
	}
}

// brownedFirst puts what was done to nuts where it tells of which record they are: into the
// name where they were weighed so, "hazelnuts, roasted 150 g", and into a remark where it stands
// behind the name, "sesame seeds toasted".
func (r *Reader) brownedFirst(name string, p *parts) string {
	fields := strings.Fields(name)
	if last := len(fields) - 1; last > 0 && browned[strings.ToLower(fields[last])] && p.whole == "" {
		_, _, known := r.names.look(name, "")
		food := strings.Join(fields[:last], " ")
		if m, _, nut := r.names.look(food, ""); !known && nut && r.nuts(m) {
			p.notes = append([]string{fields[last]}, p.notes...)
			name = food
		}
	}
	if p.behind && len(p.notes) > 0 && browned[keyOf(p.notes[0])] {
		if _, exact := r.names.all[keyOf(p.notes[0])+" "+keyOf(name)]; exact {
			name, p.notes = p.notes[0]+" "+name, p.notes[1:]
		}
	}
	return name
}

// nuts reports whether a name means nuts or seeds and nothing else.
func (r *Reader) nuts(m meaning) bool {
	in, ok := r.names.lib.Find(m.ids[0])
	return ok && len(m.ids) == 1 && !m.perhaps && in.Group == "nut_seed"
}

// sizeInName carries a remark that is a size, "6 egg yolks, large", into the name.
func (p *parts) sizeInName() {
	p.notes = slices.DeleteFunc(p.notes, func(note string) bool {
		fields := strings.Fields(strings.ToLower(note))
		if n := len(fields); n > 0 && n <= 2 && (n == 1 || fields[0] == "size" || fields[0] == "extra") && sizeWords[fields[n-1]] && !strings.Contains(p.name, "size") {
			p.name += " " + note
			return true
		}
		return false
	})
}

// withEither is withPercent where either end of a range may be meant.
func (r *Reader) withEither(l *Said, m meaning, known bool, p parts) (meaning, bool) {
	upper := *l
	q, also := r.withPercent(&upper, m, known, p.upTo)
	m, known = r.withPercent(l, m, known, p.percent)
	if also {
		m.ids = together(m.ids, q.ids)
		l.Doubt = max(l.Doubt, upper.Doubt)
	}
	return m, known
}

// together are the ids of a, and those of b that a has not.
func together(a, b []string) []string {
	all := slices.Clone(a)
	for _, id := range b {
		if !slices.Contains(all, id) {
			all = append(all, id)
		}
	}
	return all
}

// withPercent chooses what a name means by the percentage beside it, or doubts it.
func (r *Reader) withPercent(l *Said, m meaning, known bool, percent float64) (meaning, bool) {
	q, far, fits := r.names.byPercent(l.Name, percent)
	switch {
	case fits:
		if far {
			l.Doubt = FarPercent
		}
		return q, len(q.ids) > 0
	case !known:
		l.Doubt = Unknown
	case len(m.ids) == 1 && !r.hasPercent(m.ids[0], percent):
		l.Doubt = FarPercent
	}
	return m, known
}

// unknown says of a name that no ingredient has what it may have meant.
func (r *Reader) unknown(l *Said) {
	if l.Doubt = Unknown; either.in(l.Name) {
		l.Doubt, l.Meanings = Either, r.names.each(l.Name)
	}
	if len(l.Meanings) > 0 {
		return
	}
	ids, core := r.names.abroad(l.Name)
	if near, found := r.names.near(l.Name); found && len(ids) > 0 && core != l.Name && !linked.in(l.Name) {
		ids = near.ids // "heavy creme" is misspelt, not French
	} else if len(ids) > 0 {
		l.Name = core
	}
	if len(ids) > 0 {
		l.Meanings = ids
		return
	}
	if core, found := r.names.within(l.Name); found && l.Doubt == Unknown {
		l.Doubt, l.Meanings = Other, core.ids
	} else if near, found := r.names.near(l.Name); found {
		l.Meanings = near.ids
	} else if head, found := r.names.begun(l.Name); found {
		l.Meanings = head.ids
	}
}

var inCans = find(`(?i)\b(?:cans?|tins?|canned|tinned)\b`)

// meant puts into l what its name means, by what measures it where the name alone does
// not tell, and returns the first of it.
func (r *Reader) meant(l *Said, m meaning, p parts) *ingredient.Ingredient {
	if fits := slices.DeleteFunc(slices.Clone(m.ids), func(id string) bool { return !r.hasFat(id, p.percent) }); len(m.ids) > 1 && len(fits) == 1 && p.upTo == 0 {
		m.ids = fits // "cocoa 22 % fat"
	}
	key := keyOf(l.Name)
	if key == "white" && !strings.HasSuffix(l.Name, "s") && len(p.sum) > 0 && p.sum[0].in.kind == mass {
		m.perhaps = true // "white 100 g" may be chocolate
	}
	in, _ := r.names.lib.Find(m.ids[0])
	if inCans.in(l.Text) && strings.Contains(strings.ToLower(in.Name), "canned") {
		m.perhaps = false // "1 can pumpkin"
	}
	l.Ingredient, l.Meanings = in, m.ids
	if id, ok := spooned[key]; ok && slices.Contains(m.ids, id) && len(p.sum) > 0 && p.sum[0].in.kind == volume {
		m.ids = []string{id}
	}
	if id, ok := drunk[key]; ok && len(p.sum) > 0 && p.sum[0].in.kind == volume && p.sum[0].in.size != customary.TeaspoonML && p.sum[0].in.size != customary.TablespoonML {
		m.ids = []string{id}
	}
	if (len(m.ids) > 1 || m.perhaps) && l.Doubt == 0 {
		l.Doubt = Several
	}
	return in
}

// remarked doubts a line whose remarks may change its food or its amount; turned: the
// first of them belongs to the name.
func (r *Reader) remarked(l *Said, in *ingredient.Ingredient, p parts, turned bool) {
	for i, note := range p.notes {
		switch note = spared(note, in); {
		case l.Doubt != 0, note == "":
		case r.further(note, in, p.sum):
			l.Doubt = Either
		case unheard(note, in):
			l.Doubt = Apart
		case !(turned && i == 0) && !r.accounted(p.fresh(note, in), in) && !more.in(note):
			if l.Doubt = Other; strings.HasPrefix(note, "or ") {
				l.Doubt = Either
			}
		}
	}
	for _, w := range strings.Fields(keyOf(l.Note)) {
		other, ok := r.names.all[w+" "+keyOf(in.Kitchen())]
		if ok && browned[w] && (l.Doubt == 0 || l.Doubt == Other) {
			l.Doubt, l.Meanings = Several, append([]string{in.ID}, other.ids...)
		}
	}
}

// each returns what the foods of a choice mean, "walnuts / pecans" or "rum or brandy".
func (n *names) each(name string) (ids []string) {
	for _, one := range choices().Split(name, -1) {
		m, _, ok := n.look(strings.TrimSpace(one), "")
		if !ok {
			m, ok = n.within(strings.TrimSpace(one))
		}
		if ok && !slices.Contains(ids, m.ids[0]) {
			ids = append(ids, m.ids[0])
		}
	}
	return ids
}
