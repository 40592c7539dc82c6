package main

import (
	"github.com/spf13/cobra"

	"ripplewright/internal/food/price"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
)

// The flags of every command that say how quantities read in texts, on cards and in
// the sentences of JSON. Files and the figures of JSON stay metric.
const (
	unitsFlag    = "units"
	decimalsFlag = "decimals"
	currencyFlag = "currency"
	languageFlag = "language"
)

var readingFlags = map[string]bool{unitsFlag: true, decimalsFlag: true, currencyFlag: true, languageFlag: true}

// reading is the values of these flags, and what is told is read by them at once.
type reading struct{ system, decimals, currency, language string }

// use has everything that is told from now on read so.
func (r *reading) use() {
	tongue.Speak(r.language)
	reads, _ := say.SystemOf(r.system) // Set let no other through
	reads.Comma = r.decimals == say.DecimalSigns[1] || r.decimals == "" && say.WithComma()
	report.Reads = reads.In(r.currency)
}

// A readingFlag is one of them.
type readingFlag struct {
	of    *reading
	value *string
	kind  string
	wrong func(value string) error
}

func (f *readingFlag) String() string { return *f.value }
func (f *readingFlag) Type() string   { return f.kind }

func (f *readingFlag) Set(value string) error {
	if err := f.wrong(value); err != nil {
		return err
	}
	*f.value = value
	f.of.use()
	return nil
}

// takesUnits gives every command of a tree the flags. Nothing chosen is metric, in the
// language of the locale with its decimal sign, and in the currency of the prices.
func takesUnits(root *cobra.Command, locale string) *reading {
	r := &reading{system: say.Systems[0], language: tongue.ByLocale(locale)}
	r.use()
	take := func(name, kind string, help say.Message, value *string, choices []string, wrong func(string) error) {
		root.PersistentFlags().Var(&readingFlag{r, value, kind, wrong}, name, help.String())
		_ = root.RegisterFlagCompletionFunc(name, func(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
			return beginning(choices, typed), cobra.ShellCompDirectiveNoFileComp
		})
	}
	take(unitsFlag, "system", "metric or us: how quantities read; files and the figures of JSON stay metric", &r.system, say.Systems, func(v string) error {
		_, err := say.SystemOf(v)
		return err
	})
	take(decimalsFlag, "sign", "point or comma: the decimal sign of texts and cards; files and JSON keep the point", &r.decimals, say.DecimalSigns, say.NotDecimals)
	take(languageFlag, "language", "en or de: the language of help, texts, errors and cards, the system's if not given; JSON stays English", &r.language, []string{"en", "de"}, func(v string) error {
		if v != "en" && v != "de" {
			return flaw.New("languages are en or de")
		}
		return nil
	})
	take(currencyFlag, "currency", "what stands before an amount of money where the prices name none, as € or kr", &r.currency, nil, func(v string) error {
		return price.NotCurrency(v)
	})
	return r
}
