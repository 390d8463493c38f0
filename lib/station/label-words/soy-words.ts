import {
  despite,
  FALCPA,
  GUIDE,
  MEMORY,
  names,
  plainly,
  sometimes,
  type WordRow,
} from '#lib/station/label-words/word-row.ts'

export const SOY_WORDS: readonly WordRow[] = [
  plainly('soy', 'soy, soya, soybean, soya bean', FALCPA),
  names(
    'soy',
    `edamame, miso, natto, shoyu, soybean curd, soy protein, soy protein concentrate,
     hydrolyzed soy protein, soy protein isolate, soy sauce, tamari, tempeh,
     textured vegetable protein, tofu`,
    GUIDE.soy,
  ),
  names('soy', 'bean curd, teriyaki, soy lecithin, yuba, okara, kinako', MEMORY),
  sometimes(
    'soy',
    'vegetable broth, gum, vegetable gum, starch, vegetable starch, asian dish, lecithin',
    GUIDE.soy,
  ),
  sometimes(
    'soy',
    `hydrolyzed vegetable protein, hydrolyzed plant protein, textured protein, vegetable protein,
     refined soybean oil, refined soy oil, hoisin sauce, worcestershire sauce`,
    MEMORY,
  ),
  despite(
    'soy',
    'highly refined soybean oil, highly refined soy oil',
    'FD&C Act § 201(qq)(2): highly refined oils are no major allergen',
  ),
  despite('soy', 'fully refined soybean oil, fully refined soya oil', 'EU 1169/2011, Annex II, 6'),
  despite(
    'soy',
    `sunflower lecithin, rapeseed lecithin, canola lecithin, egg lecithin, xanthan gum, guar gum,
     gum arabic, gum acacia, acacia gum, locust bean gum, carob bean gum, carob gum, gellan gum,
     cellulose gum, tara gum, karaya gum, gum tragacanth, tragacanth gum, konjac gum, cassia gum,
     wheat starch, corn starch, cornstarch, maize starch, modified corn starch, potato starch,
     modified potato starch, tapioca starch, modified tapioca starch, rice starch, pea starch,
     modified maize starch, modified rice starch, arrowroot starch, cassava starch`,
    MEMORY,
  ),
]
