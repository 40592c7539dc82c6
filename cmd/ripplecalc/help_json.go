package main

const helpJSON = `evaluate --json writes one object a design. A figure that is unknown, or of which
there is none, is null; numbers are numbers. Masses are g and volumes mL in
all tubs together, but for those of batch and of the lines, which are of the
whole batch as made; temperatures are °C, hardness kPa; percent is by mass
unless the key says volume.

file, name, serving_temperature_c
verdict            good, sentence, advice
dense, foam        the two phases
  mass_g, volume_ml                as filled, at 4 °C, with the air
  density_g_per_ml                 likewise
  overrun_percent                  air, of the volume without it
  water_percent, total_solids_percent   solids are all but water and alcohol
  fat_percent, msnf_percent        msnf: milk solids-not-fat
  sugars_percent                   mono- and disaccharides
  sugars_by_kind_percent           each sugar and sugar alcohol that is present
  initial_freezing_point_c         null where nothing freezes
  water_frozen_percent             of all water, at the serving temperature
  ice_mass_percent                 of the phase
  ice_volume_percent               of the phase's volume without its air
  hardness, texture                yield stress in kPa, and its word
  sweetness_sucrose_percent        g of sucrose as sweet as 100 g of it
  sweetness_sucrose_g_per_spoon    the same for 15 mL
  scoop_from_c, scoop_to_c         where it eats well; an end at -24 or -4 °C may lie
                                   beyond, since nothing further is tried
  water_driven_off_g               on the stove, or from the syrup
  left_over_g, left_over_ml        with batch.basis as_written
  swelling_percent                 from as filled to the serving temperature
  bands                            low and high of freezing point, water frozen and
                                   hardness, for what the composition leaves unknown
                                   and, for hardness, the scatter between batches
foam.syrup         null without a syrup
  solids_percent, mass_g, water_boiled_off_g
  boiling_point_c                  of the syrup as it is poured
  solids_percent_band              what published tables disagree by
  cook_temperature_reached         false: it was thicker from the start
blend              the tub
  foam_volume_percent, foam_mass_percent, mass_g, volume_ml, density_g_per_ml
  tubs_filled
  water_percent, total_solids_percent, fat_percent, msnf_percent, sugars_percent,
  water_frozen_percent, ice_mass_percent, ice_volume_percent
                                   of both phases together
  sweetness_sucrose_percent, sweetness_sucrose_g_per_spoon
  hardness_contrast                hardness of the custard over that of the foam
  sweetness_contrast               foam minus custard, percentage points
  scoop_contrast_k                 start of scooping, custard minus foam, K
  scoop_contrast_at_least          true: the foam is never too firm from -24 °C up,
                                   so that is a lower bound
  hardness                         kPa, mean by volume of the logarithms
  scoop_from_c, scoop_to_c         where both phases eat well
  dense_left_over_ml, foam_left_over_ml
batch              dense and foam, each with made_g, made_ml, used_g, used_ml (in the
                   tubs), left_g, left_ml (over, in no tub)
nutrition
  energy_method, serving_g, serving_ml, servings_in_batch
  per_100_g, per_serving           energy_kcal, fat_g, saturated_fat_g, trans_fat_g,
                                   cholesterol_mg, sodium_mg, carbohydrate_g (with
                                   fibre), fibre_g, sugars_g, added_sugars_g, protein_g,
                                   vitamin_d_ug, calcium_mg, iron_mg, potassium_mg:
                                   the known part, null where nothing is known
  incomplete                       nutrient, ingredients that leave it unknown,
                                   upper_per_100_g (null where nothing bounds it)
allergens, allergens_eu            as US and EU law group them, of every line
allergens_not_stated_for           ids of own ingredients of which nobody said what
                                   they carry, which is not the same as none
lines              part, index, ingredient, name, written_g, grams (as made), and
  per_gram                         what a gram more, as written, changes in its phase:
                                   initial_freezing_point_c, water_frozen_percent,
                                   hardness_percent (relative),
                                   sweetness_sucrose_percent, density_g_per_ml,
                                   and tub_sweetness_sucrose_percent
cost               batch, per_tub: of the ingredients with a price_per_kg, in your own
                   money, null without any; missing: names of those without
eggs               yolks and whites that the batch takes, in eggs of the design's size;
                   crack: whole eggs that give as many; yolks_left, whites_left
warnings           code, message, where, severity (note, caution or serious)
`
