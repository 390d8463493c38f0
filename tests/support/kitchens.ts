/** A small station for needs: two bases, a heart, three optional parts; each test says what is in them. */
import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import type { Handling, Need, NeedCode } from '#lib/station/codes/codes.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { Contact, Ingredient, StationDocument } from '#lib/station/station-document.ts'

const demoStation = stationSchema.parse(demo)

export const need = (code: NeedCode, handling: Handling = 'keep-apart'): Need => ({
  code,
  handling,
  reason: null,
})

const allFree = Object.fromEntries(
  askableAllergens({ allergenSet: 'us-9', ownAllergens: [] }).map((code) => [
    code,
    'free' as const,
  ]),
)

/** An ingredient whose label declares everything free, and what is said otherwise. */
export const ingredient = (
  id: string,
  declarations: Ingredient['declarations'] = {},
  over: Partial<Ingredient> = {},
): Ingredient => ({
  id,
  name: id,
  declarations: { ...allFree, ...declarations },
  traits: [],
  claims: {},
  readOn: '2026-11-20',
  readBy: 'lead',
  ...over,
})

const COMPONENTS = ['wrap', 'bowl', 'heart', 'leaf', 'cheese', 'sauce']

/** A back-up pan of a component, protected or not. */
export const backup = (
  component: string,
  isProtected = true,
): StationDocument['backups'][number] => ({
  id: `back-up-${component}`,
  component,
  protected: isProtected,
  size: 'third',
  depthIn: 4,
  tareMg: null,
  kept: 'cold',
})

interface Plan {
  /** What an ingredient of a component's own name declares. */
  readonly said?: Readonly<Record<string, Ingredient['declarations']>>
  readonly traits?: Readonly<Record<string, NonNullable<Ingredient['traits']>>>
  readonly contacts?: readonly Contact[] | null
  readonly backups?: StationDocument['backups']
  readonly ready?: readonly string[]
  readonly soiled?: Kitchen['soiled']
  readonly lent?: Kitchen['lent']
  readonly over?: Partial<StationDocument>
}

/** One item that is one wrap or bowl of heart, with leaf, cheese and sauce to leave out. */
export const kitchen = (plan: Plan = {}): Kitchen => {
  const { said = {}, traits = {}, contacts = [], backups = [], ready = [] } = plan
  const { soiled = [], lent = [] } = plan
  const template = demoStation.components[0]
  if (!template) throw new Error('the demo station has no component')
  return {
    ready,
    soiled,
    lent,
    station: {
      ...demoStation,
      ingredients: COMPONENTS.map((id) => ingredient(id, said[id], { traits: traits[id] ?? [] })),
      recipes: [],
      components: COMPONENTS.map((id) => ({ ...template, id, ingredients: [id], recipes: [] })),
      items: [
        {
          id: 'meal',
          name: 'Meal',
          priceCents: 500,
          heart: 'heart',
          base: { choices: ['wrap', 'bowl'], usual: 'wrap' },
          parts: [
            { component: 'heart', usual: 'in', required: false },
            { component: 'leaf', usual: 'in', required: false },
            { component: 'cheese', usual: 'in', required: false },
            { component: 'sauce', usual: 'side', required: false },
          ],
        },
      ],
      contacts: contacts === null ? null : [...contacts],
      backups,
      ...plan.over,
    },
  }
}

export const touching = (kind: Contact['kind'], ...components: string[]): Contact => ({
  id: `${kind}-${components.join('-')}`,
  kind,
  components,
})
