/** The fields of a station's document, of any version, and of a label. */
import { AWAY, each, type Fields, kept, list } from '#lib/access/seen/classed.ts'
import type {
  DayLimit,
  HeatLimit,
  LocalVariant,
  TemperatureLimit,
  TimeLimit,
} from '#lib/safety/limits.ts'
import type { Temperature } from '#lib/safety/temperature.ts'
import type { AnyStationDocument } from '#lib/station/any-station-document.ts'
import type { Label } from '#lib/station/label.ts'
import type { Portion } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export const LABEL: Fields<Label> = {
  declarations: each('always'),
  traits: list('always'),
  sources: {
    stock: list('always'),
    lard: list('always'),
    gelatin: list('always'),
    'animal-rennet': list('always'),
  },
  glutenStatement: 'always',
  freeBy: 'always',
  claims: { halal: 'always', kosher: 'always' },
  law: 'always',
  plain: 'always',
  list: ['pack', AWAY],
  photo: 'always',
  readOn: 'always',
  readBy: ['initials', null],
}

const PRODUCT = { maker: 'always', pack: 'always' } as const

export const PORTION: Fields<Portion> = { unit: 'always', amount: 'always' }

export const TEMPERATURE: Fields<Temperature> = { tenths: 'always', scale: 'always' }

const WRITTEN = { document: 'always', paragraph: 'always', certainty: 'always' } as const
const BOTH = { F: 'always', C: 'always' } as const

const WARMTH: Fields<TemperatureLimit> = { bound: 'always', tenths: BOTH, ...WRITTEN }
const HEAT: Fields<HeatLimit> = {
  combinations: list({ tenths: BOTH, seconds: 'always' }),
  standSeconds: 'always',
  ...WRITTEN,
}
const TIME: Fields<TimeLimit> = { withinMs: 'always', ...WRITTEN }
const DAYS: Fields<DayLimit> = { days: 'always', ...WRITTEN }

export const LIMITS: Fields<LocalVariant> = {
  cookFishOrMeat: HEAT,
  cookEggsToOrder: HEAT,
  cookEggsBatch: HEAT,
  cookGroundMeat: HEAT,
  cookPoultryOrStuffed: HEAT,
  cookMicrowave: HEAT,
  cookPlant: HEAT,
  firstHeating: TIME,
  reheat: HEAT,
  reheatMicrowave: HEAT,
  reheatCommercialPack: HEAT,
  reheatWithin: TIME,
  hotHolding: WARMTH,
  hotHoldingRoast: WARMTH,
  coldHolding: WARMTH,
  shellEggAir: WARMTH,
  coolingFrom: WARMTH,
  coolingFirstTo: WARMTH,
  coolingFirstWithin: TIME,
  coolingTo: WARMTH,
  coolingWithin: TIME,
  coolingFromRoomWithin: TIME,
  timeOnly4h: TIME,
  timeOnlyStartCold: WARMTH,
  timeOnlyStartHot: WARMTH,
  timeOnlyStartRoom: WARMTH,
  timeOnly6h: TIME,
  timeOnlyWarmest: WARMTH,
  dateMark: DAYS,
  dateMarkCold: WARMTH,
  dateMarkAfter: TIME,
  receivedCold: WARMTH,
  receivedByItsLaw: WARMTH,
  receivedEggAir: WARMTH,
  receivedHot: WARMTH,
  receivedCooledWithin: TIME,
}

const SAFETY: Fields<StationDocument['safety']> = {
  scale: 'always',
  limits: LIMITS,
  readings: { everyMin: 'always', askBeforeMin: 'always' },
  timeProcedure: 'always',
  reheatOn: list('always'),
  shelf: { held: 'always', collectWithinMin: 'always' },
  sanitizer: {
    kind: 'always',
    everyMin: 'always',
    label: { leastMgPerL: 'always', mostMgPerL: 'always', mostPh: 'always' },
  },
}

const VOLUME = {
  tool: 'always',
  number: 'always',
  flOz: 'always',
  size: 'always',
  unit: 'always',
} as const

const LINES = list({ of: 'always', typed: 'always' })

const COMPONENT = {
  id: 'always',
  name: 'always',
  plural: 'always',
  short: list('always'),
  mark: 'always',
  ingredients: list('always'),
  recipes: list('always'),
  lines: LINES,
  held: 'always',
  portion: {
    ...VOLUME,
    level: 'always',
    gPerCup: 'always',
    source: 'always',
    grams: 'always',
    pieces: 'always',
    squeezes: 'always',
    weighed: { squeezes: 'always', grams: 'always' },
  },
  density: { gPerMl: 'always', by: 'always', source: 'always', typed: 'always' },
  side: 'always',
  extraCents: ['money', 0],
  warm: { seconds: 'always', on: 'always' },
  food: { kind: 'always', cookedIn: 'always', roast: 'always', reheatable: 'always' },
  remake: {
    where: 'always',
    by: 'always',
    minutes: 'always',
    minutesPerLoad: 'always',
    portionsPerLoad: 'always',
    mostLoads: 'always',
  },
  costCents: ['cost', null],
} as const satisfies Fields<AnyStationDocument['components'][number]>

const PAN = {
  id: 'always',
  component: 'always',
  size: 'always',
  depthIn: 'always',
  tareMg: 'always',
  capacityFlOz: 'always',
  usualPortions: 'always',
} as const

export const CONTACTS = list({ id: 'always', kind: 'always', components: list('always') })

export const STATION_FIELDS = {
  format: 'always',
  version: 'always',
  invented: 'always',
  id: 'always',
  name: 'always',
  line: { wells: list({ id: 'always', held: 'always', pans: list(PAN) }) },
  timeZone: 'always',
  currency: 'always',
  allergenSet: 'always',
  ownAllergens: list('always'),
  cautions: 'always',
  notListed: 'always',
  readAgainDays: 'always',
  locale: 'always',
  tax: { inPrices: 'always', rateBasisPoints: 'always' },
  ingredients: list({
    id: 'always',
    name: 'always',
    plural: 'always',
    ...PRODUCT,
    products: list({ id: 'always', ...PRODUCT, ...LABEL }),
    edible: 'always',
    lies: 'always',
    invoices: list({ date: 'always', packs: 'always', packTyped: 'always', cents: ['cost', 0] }),
    ...LABEL,
  }),
  recipes: list({
    id: 'always',
    name: 'always',
    ingredients: list('always'),
    recipes: list('always'),
    lines: LINES,
    yields: 'always',
    vessel: 'always',
    steps: list('always'),
  }),
  components: list(COMPONENT),
  items: list({
    id: 'always',
    name: 'always',
    priceCents: ['money', 0],
    heart: 'always',
    base: { choices: list('always'), usual: 'always' },
    parts: list({ component: 'always', usual: 'always', required: 'always' }),
  }),
  contacts: CONTACTS,
  backups: list({
    id: 'always',
    component: 'always',
    protected: 'always',
    size: 'always',
    depthIn: 'always',
    tareMg: 'always',
    kept: 'always',
  }),
  safety: SAFETY,
  day: {
    closes: 'always',
    rushes: list({ from: 'always', to: 'always' }),
    assemblers: 'always',
    doors: { open: 'always', close: 'always' },
    bells: list({
      id: 'always',
      name: 'always',
      periods: list({ id: 'always', name: 'always', from: 'always', to: 'always' }),
    }),
    crew: list({
      bell: 'always',
      period: 'always',
      initials: ['initials', ''],
      certified: 'always',
    }),
    crewMeal: 'always',
  },
  tools: list({ id: 'always', name: 'always', tool: VOLUME, usualFor: 'always' }),
  vessels: list({ id: 'always', name: 'always', holds: 'always' }),
} as const satisfies Fields<AnyStationDocument> & Fields<StationDocument>

export const STATION = kept(STATION_FIELDS)
