package written

import (
	"strings"
	"sync"
)

// foreign are foods in the languages that recipes here are copied from. A line in another
// language is asked about: these are what it is offered. common practice, no source.
var foreign = sync.OnceValue(func() map[string][]string {
	all := map[string][]string{}
	for _, f := range [...][2]string{
		{"milk_whole", "vollmilch; lait entier; latte intero; leche entera; volle melk; helmjölk"},
		{"milk_whole milk_2pct milk_1pct", "milch; lait; latte; leche; melk; mjölk; mælk"},
		{"milk_skim", "magermilch; lait écrémé; latte scremato; leche desnatada"}, {"milk_2pct", "lait demi-écrémé; fettarme milch; latte parzialmente scremato; leche semidesnatada"},
		{"cream_light_whipping cream_heavy", "sahne; schlagsahne; schlagobers; obers; rahm; crème; crème liquide; crème liquide entière; crème fleurette; panna; panna fresca; nata; nata para montar; slagroom; vispgrädde; fløde; grädde"},
		{"creme_fraiche", "crème fraîche; crème épaisse"}, {"condensed_milk_sweet", "lait concentré sucré; leche condensada; latte condensato; gezuckerte kondensmilch; kondensmilch"},
		{"butter_unsalted", "butter ungesalzen; beurre; beurre doux; burro; mantequilla; boter; smör; süßrahmbutter"}, {"butter_salted", "beurre salé; beurre demi-sel; gesalzene butter"},
		{"egg_whole", "ei; eier; oeuf; œuf; oeufs; œufs; uovo; uova; huevo; huevos; eieren; ägg"},
		{"egg_yolk", "eigelb; eigelbe; eidotter; dotter; jaune d'oeuf; jaune d'œuf; jaunes d'oeufs; jaunes d'œufs; jaunes; jaune; tuorlo; tuorli; tuorli d'uovo; yema; yemas; yemas de huevo; eierdooiers; äggulor"},
		{"egg_white", "eiweiß; eiweiss; eiklar; blanc d'oeuf; blanc d'œuf; blancs d'oeufs; blancs d'œufs; blancs; albume; albumi; clara; claras; claras de huevo; eiwitten"},
		{"sugar", "zucker; feiner zucker; sucre; sucre en poudre; sucre semoule; zucchero; zucchero semolato; azúcar; azucar; suiker; socker; sukker"},
		{"sugar_powdered", "puderzucker; staubzucker; sucre glace; zucchero a velo; azúcar glas; azúcar glass; poedersuiker"},
		{"sugar_brown", "brauner zucker; rohrzucker; cassonade; sucre roux; vergeoise; zucchero di canna; azúcar moreno"},
		{"glucose_syrup_de42", "glukosesirup; glucosesirup; sirop de glucose; sciroppo di glucosio; jarabe de glucosa"}, {"dextrose_monohydrate", "traubenzucker; destrosio; dextrosa"}, {"invert_syrup", "invertzucker; sucre inverti; zucchero invertito; azúcar invertido"},
		{"honey", "honig; miel; miele; honung"}, {"nfdm_regular", "magermilchpulver; lait en poudre; poudre de lait écrémé; latte in polvere; latte scremato in polvere; latte magro in polvere; leche en polvo"},
		{"water", "wasser; eau; acqua; agua; vatten"}, {"salt", "salz; sel; sel fin; fleur de sel; sale; sal"}, {"cornstarch", "speisestärke; maisstärke; maizena; fécule de maïs; amido di mais; maicena"},
		{"vanilla_extract", "vanilleextrakt; extrait de vanille; estratto di vaniglia; extracto de vainilla"}, {"gelatin", "gelatine blatt; gélatine; gelatina"},
		{"chocolate_dark_60_69", "zartbitterschokolade; bitterschokolade; chocolat noir; cioccolato fondente; chocolate negro"}, {"chocolate_milk", "vollmilchschokolade; chocolat au lait; cioccolato al latte"}, {"chocolate_white", "weiße schokolade; chocolat blanc; cioccolato bianco"},
		{"cocoa_natural cocoa_dutch", "kakao; kakaopulver; backkakao; cacao en poudre; cacao amer; cacao amaro"}, {"mascarpone", "mascarpone"},
		{"lemon_juice", "zitronensaft; saft einer zitrone; jus d'un citron; jus de citron; succo di limone; zumo de limón; jugo de limón"}, {"orange_juice", "orangensaft; jus d'orange; succo d'arancia; zumo de naranja"},
		{"strawberry", "erdbeeren; erdbeere; fraises; fragole; fresas"}, {"raspberry", "himbeeren; framboises; lamponi; frambuesas"}, {"blueberry", "heidelbeeren; blaubeeren; myrtilles; mirtilli; arándanos"},
		{"hazelnut", "haselnüsse; noisettes; nocciole; avellanas"}, {"almond", "mandeln; amandes; mandorle; almendras"}, {"pistachio", "pistazien; pistaches; pistacchi; pistachos"}, {"walnut", "walnüsse; noix; noci; nueces"},
		{"cinnamon", "zimt; cannelle; cannella; canela"}, {"coffee_espresso", "caffè; kaffee; café"}, {"coconut_dried", "kokosraspel; kokosflocken"}, {"locust_bean_gum", "johannisbrotkernmehl; farine de graines de caroube; farina di semi di carrube"}, {"guar_gum", "guarkernmehl; gomme de guar; farina di guar"}, {"coconut_milk", "kokosmilch; lait de coco; latte di cocco; leche de coco"},
	} {
		for _, name := range strings.Split(f[1], ";") {
			all[keyOf(name)] = strings.Fields(f[0])
		}
	}
	return all
})

// linked finds a name that begins with the word for "of" of such a language.
var linked = find(`(?i)^(?:d[eiu]s?|de la|della|del|von|d') ?`)

// abroad returns the ids that a name in another language means, and the words that are the
// name: "6 jaunes d'œufs", "1 Prise Salz".
func (n *names) abroad(name string) (ids []string, core string) {
	fields := strings.Fields(name)
	for n1 := len(fields); n1 > 0; n1-- {
		for i := 0; i+n1 <= len(fields); i++ {
			core := strings.TrimPrefix(strings.TrimPrefix(strings.Join(fields[i:i+n1], " "), "d'"), "l'")
			for _, id := range foreign()[keyOf(core)] {
				if _, has := n.lib.Find(id); has {
					ids = append(ids, id)
				}
			}
			if len(ids) > 0 {
				return ids, core
			}
		}
	}
	return nil, ""
}

// foreigner reports whether a line names a food in another language, at its head or behind a
// small word of such a language, and no "café" of an English sentence: it is asked about.
func (n *names) foreigner(s string) bool {
	fields := strings.FieldsFunc(strings.ToLower(s), func(c rune) bool { return strings.ContainsRune(" ,;:.!?()", c) })
	for i := range fields {
		if i > 0 && !smallWords[fields[i-1]] {
			continue
		}
		for last := min(len(fields), i+4); last > i; last-- {
			if foreign()[keyOf(strings.Join(fields[i:last], " "))] != nil {
				return true
			}
		}
	}
	return false
}

// smallWords stand before the name of a food in the languages of foreign.
var smallWords = words("du de des la le les un une et puis avec peu il lo gli i di del della dello un una uno e poi con poco el los las y luego der die das den dem ein eine einen und dann mit etwas wenig het een en met")
