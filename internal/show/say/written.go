package say

import (
	"ripplewright/internal/food/written"
)

// WrittenHow says what the grams of a line were made of, and what misspelt words were read as; ""
// where it has none.
func WrittenHow(s Style, l *written.Said) string {
	how := writtenHow(s, l)
	if how == "" || l.ReadAs == "" {
		return how
	}
	return T("%s; read as “%s”", how, l.ReadAs)
}

func writtenHow(s Style, l *written.Said) string {
	if !l.Grams.Known {
		return ""
	}
	switch l.Basis {
	case written.Weighed:
		return T("as weighed")
	case written.Measured:
		return T("%s at %s", s.volumeRead(l.ML), s.DensityTo(l.GPerML, 3))
	case written.Spooned:
		return T("%s, of which its source weighs %s", s.volumeRead(l.ML), s.DensityTo(l.GPerML, 3))
	case written.Counted:
		return T("%s %s of %s, %s", s.Short(l.Count, 2), l.CountOf, s.MassTo(l.EachGrams, 1), l.OfSize)
	case written.Packed:
		if l.CountOf == written.Pieces {
			return T("%s of %s each, as its source weighs one", s.Short(l.Count, 2), s.pieceOf(l.EachGrams))
		}
		return T("%s %s of %s", s.Short(l.Count, 2), l.CountOf, s.MassTo(l.EachGrams, 0))
	}
	return ""
}

// pieceOf is what one piece weighs: to a tenth of a gram where it is small.
func (s Style) pieceOf(g float64) string {
	if g < 9.95 {
		return s.MassTo(g, 1)
	}
	return s.MassTo(g, 0)
}

// volumeRead is a volume to a tenth where it is small: a spoon is not 5 mL.
func (s Style) volumeRead(ml float64) string {
	if ml < 99.95 && s.Volumes == Millilitres {
		return s.with(s.Short(ml, 1), "mL")
	}
	return s.Volume(ml)
}

// WrittenDoubt asks what a line leaves open, "" where it is taken. name tells what
// a kitchen calls an ingredient.
func WrittenDoubt(l *written.Said, name func(id string) string) string {
	switch l.Doubt {
	case 0:
		return ""
	case written.NoAmount:
		return T("it has no amount")
	case written.Range:
		return T("it is a range: write one amount")
	case written.Vague:
		return T("nobody knows what that measure weighs: write grams")
	case written.Unknown:
		if len(l.Meanings) == 1 {
			return T("no ingredient is called so; is it %s?", name(l.Meanings[0]))
		}
		return T("no ingredient is called so")
	case written.Several:
		if len(l.Meanings) < 2 {
			return T("it comes in several kinds: say which")
		}
		all := make([]string, len(l.Meanings))
		for i, id := range l.Meanings {
			all[i] = name(id)
		}
		return T("it may be %s", OneOf(all))
	case written.Either:
		return T("it names two things: write one")
	case written.FarPercent:
		return T("no ingredient has that percentage")
	case written.NoMeasure:
		return T("nobody knows what one weighs: write grams")
	case written.NoDensity:
		return T("its density is not known: write grams")
	case written.Apart:
		return T("its measures do not agree: write grams")
	case written.Thousands:
		return T("that may be thousands or decimals: write it without the sign")
	case written.OunceOrFluid:
		return T("of a liquid, ounces may be of weight or fluid: write oz as grams, or fl oz")
	case written.PintOf:
		return T("a pint is larger in Britain: write US pint, or millilitres")
	case written.HowFull:
		return T("it weighs more or less by how it is filled or cut: write grams")
	case written.Separated:
		return T("separated: write the yolks and the whites as two lines")
	case written.Other:
		if l.Note == "" {
			return T("it says more than a name: choose what is meant")
		}
		return T("its remark may make another food of it: %s", l.Note)
	case written.TooMuch:
		return T("that is more than a line can hold, or nothing")
	case written.SizeOfEurope:
		return T("S, M and L are sizes of Europe, and your eggs are of the US: write grams")
	case written.PiecesOrGrams:
		return T("so many pieces may be grams: write g behind the number")
	}
	return T("it is not clear")
}
