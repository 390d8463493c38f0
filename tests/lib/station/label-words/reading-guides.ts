/**
 * The table of words that name an allergen, as it was gathered from public reading guides (its
 * sources stand beside the rows in lib/station/label-words). Written out a second time, so that
 * a word that is lost there is missed here.
 */

interface GuideRow {
  /** The codes that are marked for it; any of them does. */
  readonly codes: readonly string[]
  readonly names: string
  readonly sometimes: string
  readonly despite: string
}

const row = (codes: string, names: string, sometimes = '', despite = ''): GuideRow => ({
  codes: codes.split(' '),
  names,
  sometimes,
  despite,
})

const GUIDES: readonly GuideRow[] = [
  row(
    'milk',
    `butter; butter fat; butter oil; buttermilk; casein; ammonium caseinate; calcium caseinate;
     magnesium caseinate; potassium caseinate; sodium caseinate; casein hydrolysate; cheese;
     cottage cheese; cream; curds; custard; ghee; half and half; lactalbumin;
     lactalbumin phosphate; lactoferrin; lactoglobulin; lactose; lactulose; milk; goat milk;
     sheep's milk; goats’ milk; skim milk powder; condensed milk; nougat; pudding; rennet casein;
     sour cream; sour milk solids; whey; whey powder; sweet whey; yogurt`,
    `caramel candy; caramel flavouring; caramel flavoring; chocolate; high protein flour;
     lactic acid starter culture; margarine; natural flavouring; natural flavoring;
     non-dairy creamer; nisin`,
    `calcium lactate; cocoa butter; cream of tartar; lactic acid; sodium lactate;
     stearoyl lactylates; coconut milk`,
  ),
  row(
    'egg',
    `albumin; albumen; egg; dried egg; egg powder; egg solids; egg white; egg yolk; eggnog;
     globulin; livetin; lysozyme; mayonnaise; meringue; ovalbumin; ovomucin; ovomucoid;
     ovovitellin; surimi`,
    'lecithin; macaroni; marzipan; marshmallow; nougat; pasta; egg substitutes',
    'eggplant',
  ),
  row(
    'wheat',
    `bread crumbs; bulgur; couscous; cracker meal; durum; einkorn; emmer; farina; flour;
     plain flour; cake flour; self-raising flour; whole wheat flour; hydrolyzed wheat protein;
     hydrolysed wheat protein; khorasan; matzo; pasta; seitan; semolina; spelt; triticale;
     vital wheat gluten; wheat bran; wheat germ; wheat grass; wheat malt; wheat starch`,
    'soy sauce; modified starch; vegetable starch; starch; surimi; cereal extract',
    'buckwheat',
  ),
  row(
    'gluten',
    'barley; rye; triticale; malt; malt extract; malt vinegar; brewer’s yeast; brewers yeast',
    'oats',
  ),
  row('barley', 'barley; malt; malt extract; malt vinegar; brewer’s yeast'),
  row('rye', 'rye; triticale'),
  row(
    'soy',
    `edamame; miso; natto; shoyu; soy; soya; soybeans; soya beans; soybean curd; soy protein;
     soy protein concentrate; hydrolyzed soy protein; soy protein isolate; soy sauce; tamari;
     tempeh; textured vegetable protein; tofu`,
    'vegetable broth; vegetable gum; gum; vegetable starch; starch; Asian dishes; lecithin',
    'highly refined soybean oil',
  ),
  row(
    'peanut',
    `artificial nuts; beer nuts; cold pressed peanut oil; expelled peanut oil; goobers;
     ground nuts; mandelonas; mixed nuts; monkey nuts; nut meat; nut pieces; peanut butter;
     peanut flour; peanuts`,
    'chili; egg rolls; enchilada sauce; marzipan; nougat; candy',
  ),
  row(
    'sesame',
    `benne; benniseed; gingelly; gomasio; halvah; sesame; sesame oil; sesame paste; sesame salt;
     sesame seed; sesamol; sesemolina; sim sim; tahini; tahina; tehina; til`,
    'spice blends; flavourings; flavorings; falafel; hummus; baked goods',
  ),
  row(
    'shellfish crab crayfish lobster shrimp',
    `crab; crawfish; crayfish; ecrevisse; écrevisse; lobster; langouste; langoustine; scampi; coral;
     tomalley; prawn; shrimp; crevette`,
    'surimi; fish stock; seafood flavouring; seafood flavoring',
  ),
  row(
    `tree-nuts almond black-walnut brazil-nut california-walnut cashew hazelnut heartnut macadamia
     pecan pine-nut pistachio walnut`.replace(/\s+/g, ' '),
    `almond; black walnut; Brazil nut; California walnut; cashew; filbert; hazelnut; heartnut;
     Japanese walnut; macadamia; bush nut; pecan; pine nut; pinon; piñon; pistachio; walnut;
     English walnut; Persian walnut; almond butter; cashew butter; almond paste; pistachio paste;
     praline; gianduja; marzipan`,
    'natural extracts; nut distillates; pesto',
    `nutmeg; water chestnut; butternut squash; beech nut; butternut; chestnut; chinquapin; coconut;
     cola nut; kola nut; ginkgo nut; hickory nut; palm nut; pili nut; shea nut`,
  ),
]

export interface GuideWord {
  readonly word: string
  readonly codes: readonly string[]
}

const column = (of: 'names' | 'sometimes' | 'despite'): readonly GuideWord[] =>
  GUIDES.flatMap((one) =>
    one[of]
      .split(';')
      .map((word) => word.trim().replace(/\s+/g, ' '))
      .filter((word) => word !== '')
      .map((word) => ({ word, codes: one.codes })),
  )

export const NAMING = column('names')
export const NAMING_SOMETIMES = column('sometimes')
export const NAMING_NOTHING = column('despite')
