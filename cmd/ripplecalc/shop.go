package main

import (
	"bytes"
	"math"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/shop"
	"ripplewright/internal/food/price"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/userdata"
)

var shopCommand = &command{
	name:  "shop",
	usage: "shop FILE... [--batches N] [--prices FILE] [--sell PRICE] [-o shop.md|shop.txt] [--json]",
	short: "Writes a shopping list for several designs and batches, in whole packs, and what they cost",
	long: `
A file named twice is made twice. Prices are those of "ripplecalc help prices".
Each batch cracks whole eggs of its own. What has no price is unknown, not free;
unpriced water comes from the tap, for nothing. Designs are evaluated as the batches
beside each file have taught.

  --batches N    batches of each design, 1 to 1000, instead of one
  --prices FILE  other prices than yours
  --sell PRICE   of a tub, instead of what its design says: the margin that it
                 leaves. A margin is of the price; VAT, work, tubs and power are in
                 neither price nor cost
  -o FILE        a list with boxes (.md) or text (.txt)
  --json         JSON instead of text: designs (file, name, batches, cost as in
                 evaluate --json, offers: margin_percent, price_per_tub); items
                 (ingredient, name, note, need_g, packs, pack_price, pack_holds_g,
                 left_g, pays, used, left_worth, from_tap, eggs); pays, used,
                 left_worth, at_least, missing
`,
	least: 1,
	most:  -1,
	flags: shopFlags,
}

func shopFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	batches := flags.Int("batches", 1, "")
	prices, out := flags.String("prices", "", ""), flags.StringP("output", "o", "", "")
	sell := flags.Float64("sell", math.NaN(), "")
	return func(s *shell, files []string) error {
		if *batches < 1 || *batches > shop.MostBatches {
			return c.misused("--batches %d is outside 1 to %d", *batches, shop.MostBatches)
		}
		given := false
		flags.Visit(func(f *pflag.Flag) { given = given || f.Name == "sell" })
		if given && !(*sell > 0 && *sell <= price.Most) {
			return c.misused("--sell %g is no price of a tub", *sell)
		}
		if *out != "" && !hasEnding(*out, ".md", ".txt") {
			return c.misused("-o %s: a list is written as .md or .txt", echo.Plain(*out))
		}
		if err := c.mayWrite(*out, append(files, *prices)...); err != nil {
			return err
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		if *prices != "" {
			book, err := readPrices(*prices)
			if err != nil {
				return err
			}
			b = &bench{b.Priced(book)}
		}
		orders := make([]shop.Order, len(files))
		for i, name := range files {
			f, r, err := b.read(s, name)
			if err != nil {
				return err
			}
			files[i], orders[i] = f.Name, shop.Order{Design: f.Design, Result: r, Batches: *batches}
		}
		list := report.ShoppingOf(files, orders, shop.For(orders, b.Prices()), *sell)
		if *out == "" {
			return s.answer(list, *asJSON)
		}
		var text bytes.Buffer
		if hasEnding(*out, ".md") {
			err = list.WriteMarkdown(&text)
		} else {
			err = list.WriteText(&text)
		}
		if err != nil {
			return fault(err)
		}
		return atomicfile.Write(*out, text.Bytes())
	}
}

// readPrices reads a file that somebody named, which has to be there.
func readPrices(path string) (price.Book, error) {
	data, _, err := atomicfile.Read(path, designfile.MaxSize)
	if err != nil {
		return price.Book{}, flaw.New("--prices: %v", err)
	}
	b, err := userdata.DecodePrices(data)
	if err != nil {
		return price.Book{}, flaw.New("prices in %s: %v", path, err)
	}
	return b, nil
}
