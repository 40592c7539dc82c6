package written

// germanNumbers are numbers as words.
var germanNumbers = map[string]string{"anderthalb": "1.5", "eineinhalb": "1.5", "ein": "1", "eine": "1", "einen": "1", "einer": "1", "eines": "1", "zwei": "2", "drei": "3",
	"vier": "4", "fünf": "5", "sechs": "6", "sieben": "7", "acht": "8", "neun": "9", "zehn": "10", "zwölf": "12"}

// A germanMeasure is a measure as the English reader takes it: so many of a unit.
type germanMeasure struct {
	times float64
	unit  string
	spoon string // the household spoon, for what has no density
	doubt Doubt
}

// germanMeasures are those of German kitchens. A spoon of 15 or 5 mL is common practice,
// no source; a pound is 500 g to some and 454 g to others.
var germanMeasures = map[string]germanMeasure{
	"g": {1, "g", "", 0}, "gr": {1, "g", "", 0}, "gramm": {1, "g", "", 0}, "kg": {1, "kg", "", 0}, "kilo": {1, "kg", "", 0}, "kilogramm": {1, "kg", "", 0},
	"ml": {1, "ml", "", 0}, "milliliter": {1, "ml", "", 0}, "cl": {10, "ml", "", 0}, "dl": {100, "ml", "", 0}, "l": {1, "l", "", 0}, "liter": {1, "l", "", 0},
	"el": {15, "ml", "tbsp", 0}, "esslöffel": {15, "ml", "tbsp", 0}, "tl": {5, "ml", "tsp", 0}, "teelöffel": {5, "ml", "tsp", 0},
	"prise": {0, "", "", Vague}, "prisen": {0, "", "", Vague}, "messerspitze": {0, "", "", Vague}, "msp": {0, "", "", Vague}, "schuss": {0, "", "", Vague}, "spritzer": {0, "", "", Vague},
	"tropfen": {0, "", "", Vague}, "handvoll": {0, "", "", Vague}, "hauch": {0, "", "", Vague}, "etwas": {0, "", "", Vague},
	"pfund": {0, "", "", NoMeasure}, "tasse": {0, "", "", HowFull}, "tassen": {0, "", "", HowFull}, "becher": {0, "", "", NoMeasure}, "glas": {0, "", "", NoMeasure}, "dose": {0, "", "", NoMeasure},
	"dosen": {0, "", "", NoMeasure}, "päckchen": {0, "", "", NoMeasure}, "pck": {0, "", "", NoMeasure}, "pkg": {0, "", "", NoMeasure}, "packung": {0, "", "", NoMeasure}, "blatt": {0, "", "", NoMeasure},
	"blätter": {0, "", "", NoMeasure}, "stück": {0, "", "", NoMeasure}, "stk": {0, "", "", NoMeasure}, "stange": {0, "", "", NoMeasure}, "schote": {0, "", "", NoMeasure}, "schoten": {0, "", "", NoMeasure},
	"würfel": {0, "", "", NoMeasure}, "tafel": {0, "", "", NoMeasure}, "tüte": {0, "", "", NoMeasure}, "flasche": {0, "", "", NoMeasure}, "bund": {0, "", "", NoMeasure}, "zweig": {0, "", "", NoMeasure},
}

// germanNames are further names of what the library has; one with several ids is a
// doubt, and one with none is told by the English name of its kind, with the
// percentage that the line may have.
var germanNames = map[string][]string{
	"kristallzucker": {"sugar"}, "haushaltszucker": {"sugar"}, "weißer Zucker": {"sugar"}, "feinster Zucker": {"sugar"}, "Staubzucker": {"sugar_powdered"},
	"Traubenzucker": {"dextrose_monohydrate", "dextrose_anhydrous"}, "Glukose": {"glucose_liquid_bp", "glucose_syrup_de42", "dextrose_monohydrate"}, "Glucosesirup": {"glucose_syrup_de42"},
	"Rohrzucker": {"sugar_turbinado", "sugar_brown", "sugar"}, "Fruchtzucker": {"fructose"}, "Milchzucker": {"lactose"}, "Bienenhonig": {"honey"}, "Invertzucker": {"invert_syrup"},
	"Süßrahmbutter": {"butter_unsalted"}, "Butter": {"butter_unsalted", "butter_salted"}, "Saure Sahne": {"sour_cream"}, "Schmand": {"sour_cream", "creme_fraiche"},
	"Milch": {"milk_whole", "milk_2pct", "milk_1pct", "milk_skim"}, "Sahne": {"cream_heavy", "cream_light_whipping", "cream_whipping_38", "cream_whipping_40"},
	"Schlagsahne": {"cream_light_whipping", "cream_heavy", "cream_whipping_38", "cream_whipping_40"}, "Schlagobers": {"cream_heavy", "cream_light_whipping"}, "Rahm": {"cream_heavy", "cream_light_whipping"},
	"Milchpulver": {"nfdm_regular", "whole_milk_powder"}, "Joghurt": {"yogurt_whole", "yogurt_greek_whole"}, "Buttermilch": {"buttermilk_lowfat", "buttermilk_whole"},
	"Kakao": {"cocoa_natural", "cocoa_dutch", "cocoa_powder_eu"}, "Kakaopulver": {"cocoa_natural", "cocoa_dutch", "cocoa_powder_eu"}, "Backkakao": {"cocoa_natural", "cocoa_dutch", "cocoa_powder_eu"},
	"Zartbitterschokolade": {"chocolate_semisweet", "chocolate_dark_45_59", "chocolate_dark_60_69"}, "Schokolade": {"chocolate_dark_60_69", "chocolate_milk"}, "Vollmilchschokolade": {"chocolate_milk"},
	"Kochsalz": {"salt"}, "Meersalz": {"salt"}, "Speisesalz": {"salt"}, "Leitungswasser": {"water"}, "Stärke": {"cornstarch", "potato_starch"}, "Speisestärke": {"cornstarch", "potato_starch"},
	"Maizena": {"cornstarch"}, "Vanille": {"vanilla_extract", "vanilla_imitation"}, "Vanilleextrakt": {"vanilla_extract"}, "Zitronenabrieb": {"lemon_peel"}, "Orangenabrieb": {"orange_peel"}, "Zitronenzeste": {"lemon_peel"},
	"Haselnusskerne": {"hazelnut"}, "Mandelkerne": {"almond"}, "Pistazienkerne": {"pistachio"}, "Walnusskerne": {"walnut"}, "gemahlene Mandeln": {"almond"}, "gemahlene Haselnüsse": {"hazelnut"},
	"Kirschen": {"cherry_sweet", "cherry_sour"}, "Blaubeeren": {"blueberry"}, "Himbeere": {"raspberry"}, "Erdbeere": {"strawberry"}, "Nüsse": {"hazelnut", "walnut", "almond"}, "Weinsteinpulver": {"cream_of_tartar"},
	"Agar": {"agar_powder", "agar_dried"}, "Agar-Agar": {"agar_powder", "agar_dried"}, "Wein": {"wine_table", "wine_dessert"}, "Marmelade": {"jam"}, "Dextrose": {"dextrose_monohydrate", "dextrose_anhydrous"},
}

// germanKinds are names whose percentage tells one record from another.
var germanKinds = map[string]string{"milch": "milk", "vollmilch": "milk", "sahne": "cream", "schlagsahne": "cream", "schlagobers": "cream", "rahm": "cream", "schokolade": "dark chocolate", "zartbitterschokolade": "dark chocolate"}

// germanEggs are what is counted, as the English reader knows it.
var germanEggs = map[string]string{"ei": "eggs", "eier": "eggs", "eigelb": "egg yolks", "eigelbe": "egg yolks", "eidotter": "egg yolks", "dotter": "egg yolks",
	"eiweiß": "egg whites", "eiweiss": "egg whites", "eiweiße": "egg whites", "eiklar": "egg whites", "ganze eier": "eggs"}

// germanCounted are their ids.
var germanCounted = map[string]string{"eggs": "egg_whole", "egg yolks": "egg_yolk", "egg whites": "egg_white"}

// germanPlain are words that leave a food what it is: "kalte Sahne".
var germanPlain = words("frisch frische frischer frisches frischen kalt kalte kalter kaltes kalten eiskalt eiskalte warm warme warmes zimmerwarm zimmerwarme weich weiche weicher gekühlt gekühlte bio vom " +
	"fein grob gesiebt gesiebter gehackt gehackte gerieben geriebene geschmolzen geschmolzene zerlassen zerlassene flüssig flüssige flüssiger unbehandelt unbehandelte ausgepresst gepresst gute guter gutes " +
	"sehr bei zimmertemperatur raumtemperatur temperiert temperierte aus dem kühlschrank von freilandhaltung freiland verquirlt verquirlte getrennt abgewogen gewogen optional nach belieben und in stücken reif reife reifer püriert")
