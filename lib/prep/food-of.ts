/** What a component is to its preparation, by the station's document and what was chosen for the plan. */
import { minutesUntil } from '#lib/estimate/batch-timing.ts'
import type { CoolsIn, PrepFood } from '#lib/prep/prep-plan.ts'
import type { Component, Item, StationDocument } from '#lib/station/station-document.ts'

/** What was chosen of a component's preparation. What is left away isn't so. */
export interface PrepChoice {
  readonly component: string
  readonly loads: number
  readonly portions: number
  /** Until all loads are made, as measured or said; left away: as the document says of making it again. */
  readonly minutes?: number
  readonly ahead?: true
  readonly fromRoom?: true
  readonly frozen?: true
  readonly coolsIn?: CoolsIn
}

/** Where nobody said how long a making takes: a guess, and no fact of the trade. */
const GUESS_MINUTES = 30

/** Minutes for all loads by the document, in as many batches as they need; null where it doesn't say. */
const minutesByDocument = ({ remake }: Component, loads: number): number | null => {
  if (remake === null) return null
  const { mostLoads } = remake
  const full = Math.floor(loads / mostLoads)
  const rest = loads % mostLoads
  return full * minutesUntil(remake, mostLoads) + (rest > 0 ? minutesUntil(remake, rest) : 0)
}

/** What nobody said is cooked, and raw before: unknown never counts as ready to eat. */
const isCooked = ({ food }: Component): boolean =>
  food.kind !== 'ready' && food.kind !== 'not-cooked'

const isRaw = (component: Component): boolean =>
  isCooked(component) && component.food.kind !== 'plant'

const isNeeded = ({ heart, base, parts }: Item, component: string): boolean =>
  heart === component ||
  parts.some((part) => part.component === component && part.required) ||
  (base !== null && base.choices.length === 1 && base.choices[0] === component)

/** How many minutes a making takes, and whether that is a guess. */
export const makingMinutes = (
  component: Component,
  { loads, minutes }: Pick<PrepChoice, 'loads' | 'minutes'>,
): { readonly minutes: number; readonly isGuess: boolean } => {
  const told = minutes ?? minutesByDocument(component, loads)
  return { minutes: Math.max(1, Math.ceil(told ?? GUESS_MINUTES)), isGuess: told === null }
}

export const prepFoodOf = (
  { items }: Pick<StationDocument, 'items'>,
  component: Component,
  choice: PrepChoice,
  onSale: readonly string[],
): PrepFood => ({
  component: component.id,
  loads: choice.loads,
  portions: choice.portions,
  minutes: makingMinutes(component, choice).minutes,
  cooked: isCooked(component),
  held: component.held,
  raw: isRaw(component),
  ahead: choice.ahead === true,
  fromRoom: choice.fromRoom === true,
  frozen: choice.frozen === true,
  coolsIn: choice.coolsIn ?? null,
  needed: items
    .filter((item) => onSale.includes(item.id) && isNeeded(item, component.id))
    .map(({ id }) => id),
})
