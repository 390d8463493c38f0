import type { Asked, Need } from '#lib/station/codes/codes.ts'
import { componentOf } from '#lib/station/find.ts'
import type { Portion } from '#lib/station/portion.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'

export type Placement = 'in' | 'side' | 'no'

/** Why a guest's build goes without a component: asked for, none left, or a need. */
export type Because = 'asked' | 'gone' | 'need'

export interface PartChoice {
  readonly placement: Placement
  /** 1 to MOST_PORTIONS where it is taken, 0 where not. */
  readonly portions: number
  readonly because: Because
}

/** What a guest wants of one item: every part of the item is named. */
export interface BuildChoice {
  readonly item: string
  readonly base: string | null
  readonly parts: Readonly<Record<string, PartChoice>>
  readonly asked: Asked
  readonly needs: readonly Need[]
  /** The guest read the turned screen and agreed: for what is kept apart. */
  readonly agreed: boolean
  /** Number of the acceptance under which its cautions were accepted; null where it has none. */
  readonly caution: number | null
}

/** Amounts by component, in the component's unit (milligrams or pieces). */
export type Amounts = Readonly<Record<string, number>>

export const MOST_PORTIONS = 4

const TAKEN: PartChoice = { placement: 'in', portions: 1, because: 'asked' }

/** The choice of a guest who changes nothing. */
export const usualChoice = (item: Item): BuildChoice => ({
  item: item.id,
  base: item.base?.usual ?? null,
  parts: Object.fromEntries(
    item.parts.map((part) => [
      part.component,
      part.usual === 'no'
        ? { placement: 'no', portions: 0, because: 'asked' }
        : { ...TAKEN, placement: part.usual },
    ]),
  ),
  asked: 'none',
  needs: [],
  agreed: false,
  caution: null,
})

/** Components that a choice takes, the base first, then in the item's order; the side counts. */
export const takenComponents = (choice: BuildChoice): readonly string[] => [
  ...(choice.base === null ? [] : [choice.base]),
  ...Object.entries(choice.parts)
    .filter(([, part]) => part.placement !== 'no')
    .map(([id]) => id),
]

/** How many portions of a component a choice takes; 0 where it doesn't. */
export const portionsTaken = (choice: BuildChoice, component: string): number =>
  choice.base === component ? 1 : (choice.parts[component]?.portions ?? 0)

/** What a choice takes out of the pans. */
export const takesOf = (
  choice: BuildChoice,
  portions: Readonly<Record<string, Portion>>,
): Record<string, number> => {
  const takes: Record<string, number> = {}
  for (const component of takenComponents(choice)) {
    const portion = portions[component]
    if (portion) takes[component] = portion.amount * portionsTaken(choice, component)
  }
  return takes
}

/** Price in cents: the item's, and what each portion beyond the first costs. */
export const priceOf = (station: StationDocument, item: Item, choice: BuildChoice): number =>
  item.parts.reduce(
    (sum, part) =>
      sum +
      Math.max(0, portionsTaken(choice, part.component) - 1) *
        componentOf(station, part.component).extraCents,
    item.priceCents,
  )

/** Whether it is made by the handling order, which is read aloud before it is started. */
export const isKeptApart = (choice: BuildChoice): boolean =>
  choice.needs.some((need) => need.handling === 'keep-apart')
