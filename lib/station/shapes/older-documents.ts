/** Station documents of earlier versions, brought up to the newest. */

/** What holds where a document says nothing: as strict as can be. */
export const UNSAID_FOOD = {
  kind: null,
  cookedIn: 'usual',
  roast: false,
  reheatable: false,
} as const

export const UNSAID_SAFETY = {
  scale: 'F' as const,
  limits: {},
  readings: { everyMin: 120, askBeforeMin: 10 },
  timeProcedure: false,
  reheatOn: ['range' as const],
  shelf: { held: 'none' as const, collectWithinMin: 30 },
}

export const UNSAID_DAY = { closes: null, rushes: [], assemblers: 1 }

export const UNSAID_HOUSE = {
  notListed: 'fits' as const,
  readAgainDays: 90,
  locale: 'en-US' as const,
  tax: { inPrices: true, rateBasisPoints: null },
}

type Named = Readonly<Record<string, unknown>>

const isNamed = (value: unknown): value is Named =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isOfVersion = (document: unknown, version: number): document is Named =>
  isNamed(document) && document.version === version

/** Every part of a list; what is no list is left to the schema. */
const each = (parts: unknown, change: (part: Named) => unknown): unknown =>
  Array.isArray(parts) ? parts.map((one) => (isNamed(one) ? change(one) : one)) : parts

/**
 * What version 1 couldn't say is unknown: shared contact, so that nothing is kept apart, and claims.
 */
const fromVersion1 = (document: Named): Named => ({
  ...document,
  version: 2,
  allergenSet: 'us-9',
  ownAllergens: [],
  cautions: 'ask',
  recipes: [],
  contacts: null,
  backups: [],
  ingredients: each(document.ingredients, (one) => ({ ...one, claims: {}, readBy: null })),
  components: each(document.components, (one) => ({ ...one, recipes: [] })),
})

const list = (value: unknown): readonly Named[] =>
  Array.isArray(value) ? value.filter(isNamed) : []

const panFor = (document: Named, component: unknown): Named | undefined =>
  list(isNamed(document.line) ? document.line.wells : [])
    .flatMap((well) => list(well.pans))
    .find((pan) => pan.component === component)

const keptAs = (document: Named, component: unknown): 'hot' | 'cold' | 'boxed' => {
  const held = list(document.components).find((one) => one.id === component)?.held
  return held === 'hot' || held === 'cold' ? held : 'boxed'
}

/**
 * What version 2 couldn't say holds as strictly as it can: the kind of a food is unknown, so that it
 * is cooked to the highest limit; nothing is on time alone, and nothing can be made again.
 */
const fromVersion2 = (document: Named): Named => ({
  ...document,
  version: 3,
  line: isNamed(document.line)
    ? {
        ...document.line,
        wells: each(document.line.wells, (well) => ({
          ...well,
          pans: each(well.pans, (pan) => ({ ...pan, tareMg: null, capacityFlOz: null })),
        })),
      }
    : document.line,
  components: each(document.components, (one) => ({
    ...one,
    food: UNSAID_FOOD,
    remake: null,
    costCents: null,
  })),
  backups: each(document.backups, (one) => {
    const pan = panFor(document, one.component)
    return {
      ...one,
      id: `back-up-${one.component}`,
      size: pan?.size ?? 'third',
      depthIn: pan?.depthIn ?? 4,
      tareMg: null,
      kept: keptAs(document, one.component),
    }
  }),
  safety: UNSAID_SAFETY,
  day: UNSAID_DAY,
  tools: [],
})

/** Nothing is "not listed" in a document of version 3, nor is any of its labels of a known law. */
const fromVersion3 = (document: Named): Named => ({ ...document, version: 4, ...UNSAID_HOUSE })

/** A document as of the newest version; what is none is given back as it is. */
export const upgraded = (document: unknown): unknown => {
  const second = isOfVersion(document, 1) ? fromVersion1(document) : document
  const third = isOfVersion(second, 2) ? fromVersion2(second) : second
  return isOfVersion(third, 3) ? fromVersion3(third) : third
}
