/** To what ends food may come when a service closes, by what happened to it. */

import type { HeldBy } from '#lib/safety/holding.ts'

/**
 * `cold`: to its date mark. `dry`: as dry food, which no temperature binds. `cool`: from heat or room
 * down to cold, in the larder. `crew`: eaten now by who worked. Only throwing out is always there.
 */
export const ENDS = ['cold', 'dry', 'cool', 'freeze', 'crew', 'throw-out'] as const

export type End = (typeof ENDS)[number]

/** What is set aside for another service. */
export const SET_ASIDE = ['cold', 'dry', 'cool', 'freeze'] as const

export type SetAsideEnd = (typeof SET_ASIDE)[number]

export const isSetAside = (end: End): end is SetAsideEnd => SET_ASIDE.some((one) => one === end)

/** How an amount was learnt at the end; `not-checked`: it is what was believed to be there. */
export const HOW_MUCH = ['weighed', 'counted', 'eye', 'not-checked'] as const

export type HowMuch = (typeof HOW_MUCH)[number]

/** What happened to food, as far as its ends depend on it. */
export interface FoodHistory {
  /** `made`: put together for a guest; `handed-over`: and in their hands. */
  readonly made: 'no' | 'made' | 'handed-over'
  /** Of a batch: `making` while no load of it is finished; `not-cooked`: not to its food's limit. */
  readonly ready: 'yes' | 'making' | 'not-cooked'
  /** How it is kept; `cooling` on its way down; null: nobody knows. */
  readonly heldBy: HeldBy | 'cooling' | null
  /** From where it cools, or would: what was heated, or what was mixed at room temperature. */
  readonly from: 'cooked' | 'room'
  /** Whether it, or any food that it was added to or that was added to it, was ever on time alone. */
  readonly clock: 'never' | 'running' | 'over'
  /** `unread`: nobody read it in time, or a jump of the clock leaves that open. */
  readonly read: 'in-limits' | 'out' | 'unread'
  /** A stage of its cooling was missed, or it was read warmer than one that it had passed. */
  readonly coolingMissed: boolean
  /** It was cooled and reheated before. */
  readonly reheated: boolean
  /** Its date mark; `none`: nobody knows its first day. */
  readonly date: 'none' | 'ahead' | 'past'
}

export type EndWhy =
  | 'handed-over'
  | 'not-cooked'
  | 'unknown'
  | 'out-of-limits'
  | 'cooling-missed'
  | 'past-time'
  | 'past-date'
  | 'being-made'
  | 'unread'
  | 'made'
  | 'on-clock'
  | 'not-cold-yet'
  | 'no-date'
  /** None would be left of its days once it is thawed. */
  | 'no-days-left'
  | 'cooled-once'
  | 'is-cold'
  | 'is-dry'
  | 'not-dry'
  | 'crew-not-allowed'

/**
 * A paragraph of the FDA Food Code 2022; null: a rule of the house, since none says so. 3-306.14,
 * 3-701.11 and the parts of 3-501.18 are from memory.
 */
export type Paragraph = string | null

export interface EndOf {
  readonly end: End
  readonly offered: boolean
  /** By which it is there, or isn't. */
  readonly paragraph: Paragraph
  /** null where it is offered. */
  readonly why: EndWhy | null
}

interface Bar {
  readonly why: EndWhy
  readonly paragraph: Paragraph
}

const bar = (why: EndWhy, paragraph: Paragraph): Bar => ({ why, paragraph })

const coolingParagraph = ({ from }: FoodHistory): string =>
  from === 'cooked' ? '3-501.14(A)' : '3-501.14(B)'

/** Why nothing but throwing out is left, also not for the crew; null where something may be. */
const lost = (food: FoodHistory): Bar | null => {
  if (food.made === 'handed-over') return bar('handed-over', '3-306.14(A)')
  if (food.ready === 'not-cooked') return bar('not-cooked', '3-401.11')
  if (food.heldBy === null) return bar('unknown', null)
  if (food.read === 'out') return bar('out-of-limits', '3-701.11(A)')
  if (food.coolingMissed) return bar('cooling-missed', coolingParagraph(food))
  if (food.clock === 'over') return bar('past-time', '3-501.19(B)')
  if (food.date === 'past') return bar('past-date', '3-501.18(A)')
  if (food.ready === 'making') return bar('being-made', null)
  return food.read === 'unread' ? bar('unread', null) : null
}

/** Why it isn't set aside in any way; null where it may be. */
const neverAgain = ({ made, clock, heldBy }: FoodHistory): Bar | null => {
  if (made === 'made') return bar('made', null)
  return clock !== 'never' || heldBy === 'time' ? bar('on-clock', '3-501.19(B)') : null
}

const undated = ({ date }: FoodHistory): Bar | null =>
  date === 'none' ? bar('no-date', '3-501.17(A)') : null

const notCold = (food: FoodHistory): Bar | null =>
  food.heldBy === 'cold' ? undated(food) : bar('not-cold-yet', coolingParagraph(food))

const BARRED: Readonly<Record<SetAsideEnd, (food: FoodHistory) => Bar | null>> = {
  cold: (food) => (food.heldBy === 'dry' ? bar('is-dry', null) : notCold(food)),
  dry: ({ heldBy }) => (heldBy === 'dry' ? null : bar('not-dry', '3-501.16(A)')),
  cool: (food) => {
    if (food.heldBy === 'dry') return bar('is-dry', null)
    if (food.heldBy === 'cold') return bar('is-cold', null)
    return food.reheated ? bar('cooled-once', null) : undated(food)
  },
  freeze: (food) => (food.heldBy === 'dry' ? null : notCold(food)),
}

const OFFERED: Readonly<Record<End, (food: FoodHistory) => Paragraph>> = {
  cold: () => '3-501.17(A)',
  dry: () => null,
  cool: coolingParagraph,
  freeze: ({ heldBy }) => (heldBy === 'dry' ? null : '3-501.18(A)'),
  crew: () => null,
  'throw-out': (food) => lost(food)?.paragraph ?? null,
}

const barOf = (end: End, food: FoodHistory, crewMeal: boolean): Bar | null => {
  if (end === 'throw-out') return null
  const never = lost(food)
  if (never) return never
  if (end === 'crew') return crewMeal ? null : bar('crew-not-allowed', null)
  return neverAgain(food) ?? BARRED[end](food)
}

/**
 * Every end of food with whether it is offered, the paragraph by which, and why not. What was on time
 * alone, topped up or not, and what was made for a guest is never set aside; what is out of limits,
 * unread, unknown or past its date is thrown out. That food is cooled and reheated once is a rule of the
 * house, as is whatever has no paragraph. What stood open stays what it is: it keeps what touched it,
 * which goes along and is no matter of an end.
 * @param crewMeal whether the house lets the crew eat what is left; local code decides
 */
export const endsOf = (food: FoodHistory, crewMeal: boolean): readonly EndOf[] =>
  ENDS.map((end) => {
    const barred = barOf(end, food, crewMeal)
    return barred
      ? { end, offered: false, ...barred }
      : { end, offered: true, paragraph: OFFERED[end](food), why: null }
  })
