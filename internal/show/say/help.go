package say

// UsualCautions are those of any design, in Markdown, quantities in braces.
const UsualCautions Message = `The usual cautions. Local code and licensed practice decide.

- **Hot sugar** at {110 to 150 °C} sticks and burns deeply: dry pan, long handle, no children, cold water at hand.
- **Eggs.** Published advice for egg mixtures is {71 °C}, stirred, by thermometer. Hot syrup alone may leave a foam below that: measure the foam, or use pasteurised whites, or heat white and sugar together first. Freezing does not kill Salmonella or Listeria.
- **Cooling.** Published limits: {57 to 21 °C} within 2 hours, then to {5 °C} within 4 more.
- **Allergens.** Milk and egg, and whatever else the ingredients bring; one scoop for several tubs spreads them.
- **Honey** is never for infants under twelve months.
- **Alcohol** must be named. It is not for children or in pregnancy.

Nothing here says that a food may be eaten: it says what was computed, against which published figure.`

// KeysHelp is every key, for who has no mouse at hand.
const KeysHelp Message = `**Everywhere.** Tab and Shift+Tab go from one thing to the next; Space or Enter presses it; the line at the foot says what it is.

**Pages.** Ctrl+1 to Ctrl+4 go to Think, Make, Sell and Learn, to the page of them where you were last; pressed again, to the next one. Ctrl+Page Down and Ctrl+Page Up go through all pages. In the row of pages Left and Right move, Enter opens. Ctrl+I shows all figures, Escape leads back to the bench.

**Files.** Ctrl+N new, Ctrl+Shift+N new from a base or a demo, Ctrl+Shift+Alt+D designs side by side, Ctrl+O open, Ctrl+S save, Ctrl+Shift+S save as, Ctrl+E export the card, Ctrl+Q quit.

**Changes.** Ctrl+Z undo, Ctrl+Y redo; while you type in a field they undo the typing. Ctrl+D: name, notes, tub and eggs.

**Sliders and the temperature rail.** Left and Right step; with Shift, or Page Up and Page Down, ten steps; Home and End go to the limits. A key held down is one step of undo.

**Numbers.** Type and press Enter, or leave the field. Up and Down step, Page Up and Page Down by ten. Escape brings the old number back.

**Typing a recipe.** Ctrl+N, then a line as you write it, "250 g whole milk", "2 yolks": Enter adds it, Down and Up choose where it may mean several things, Enter on an empty one goes on to the next list. Paste a whole list there, or press Ctrl+Shift+V, to see what is understood before it is added.

**Ingredient lines.** On a name: Space or Enter for another ingredient, Delete removes the line. On a name or its amount: Alt+Up and Alt+Down move the line, at the end of a list into the next one; Ctrl+Up and Ctrl+Down within its list; Ctrl+Shift+D makes it two. A mouse drags a line by its name, and its wheel steps the amount that has the keyboard. The button with three dots has it all as a menu: arrows choose, Enter takes, Escape closes.

**Steps.** Space or Right goes to the next step, Left to the one before; T starts and stops the timer. The timers go on while another page is open.

**Choosing an ingredient.** Type a part of its name; Up and Down move, Enter takes it, Escape cancels.`

// About is what the program says of itself.
func About(version string) string {
	return T("Ripplewright %s: two-phase rippled frozen desserts, worked out before you crack an egg. MIT licence. The demo designs are invented.", version)
}

// TextSize offers text of so many percent.
func TextSize(s Style, percent float64) string { return T("Text %s", s.Percent(percent, 0)) }

// What the menus offer beyond a word or two.
const (
	DesktopLook Message = "Light or dark as the desktop"
	DesignItem  Message = "Name, notes, tub and eggs…"
	SourcesItem Message = "Sources of the ingredients"
)
