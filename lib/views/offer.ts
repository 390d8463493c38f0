import type { StationDocument } from '#lib/menu/station-document.ts'
import type { Need, NeedCode } from '#lib/needs/codes.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { type Level, levelsOf } from '#lib/stock/levels.ts'

export interface RuledOut {
  readonly need: NeedCode
  readonly declared: 'contains' | 'unknown' | 'may-contain'
}

/** Whether a guest can have a component now, and why not. */
export type Standing =
  | { readonly kind: 'free'; readonly left: number }
  | ({ readonly kind: 'need' } & RuledOut)
  | { readonly kind: 'not-selling' }
  | { readonly kind: 'gone' }

export type NotFree = Exclude<Standing, { readonly kind: 'free' }>

/** What this guest can be offered: the pans less what is spoken for, less what a need rules out. */
export interface Offer {
  readonly state: RunningState
  readonly needs: readonly Need[]
  readonly standing: Readonly<Record<string, Standing>>
  /** Levels in which only what this guest can have is left. */
  readonly levels: Readonly<Record<string, Level>>
  /** The item of the accepted build that is changed, which stays its own; null for a new build. */
  readonly ownItem: string | null
}

const WORST_FIRST = ['contains', 'unknown', 'may-contain'] as const

/**
 * The need that rules a component out: what it contains, what nobody knows of it, and for
 * keep apart what it may contain. The worst is named. The server refuses by the same rule.
 */
export const ruledOutBy = (
  station: StationDocument,
  component: string,
  needs: readonly Need[],
): RuledOut | null => {
  const found = needs.flatMap(({ code, handling }): RuledOut[] => {
    const declared = declaredBy(station, component, code).state
    if (declared === 'free' || (declared === 'may-contain' && handling === 'leave-out')) return []
    return [{ need: code, declared }]
  })
  for (const declared of WORST_FIRST) {
    const worst = found.find((one) => one.declared === declared)
    if (worst) return worst
  }
  return null
}

/**
 * @param elsewhere what earlier builds of the same order take, by component in its unit
 * @param before the accepted build that is changed: what it holds stays available to it, whether
 * that is sold out or not sold any more. The server accepts by the same rule.
 */
export const offerFor = (
  state: RunningState,
  needs: readonly Need[],
  elsewhere: Amounts = {},
  before: Pick<Build, 'choice' | 'takes'> | null = null,
): Offer => {
  const standing: Record<string, Standing> = {}
  const levels: Record<string, Level> = {}
  for (const [component, level] of Object.entries(levelsOf(state))) {
    const own = before?.takes[component] ?? 0
    const beyondOwn = level.remaining - (elsewhere[component] ?? 0)
    const remaining = own > 0 ? own + Math.max(0, beyondOwn) : beyondOwn
    const portion = state.portions[component]
    const ruledOut = ruledOutBy(state.station, component, needs)
    const stopped = state.notSelling.component[component] !== undefined
    const forSale = stopped ? own : remaining
    const left = portion ? Math.max(0, Math.floor(forSale / portion.amount)) : 0
    standing[component] = ruledOut
      ? { kind: 'need', ...ruledOut }
      : left > 0
        ? { kind: 'free', left }
        : { kind: stopped ? 'not-selling' : 'gone' }
    levels[component] = { ...level, remaining, portionsLeft: ruledOut ? 0 : left }
  }
  return { state, needs, standing, levels, ownItem: before?.choice.item ?? null }
}

export const standingOf = (offer: Offer, component: string): Standing =>
  offer.standing[component] ?? { kind: 'gone' }
