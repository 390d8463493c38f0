import { type Finding, isFine, type JudgedComponent, judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { behindOf, type Wanted, wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { KEPT_APART, keptAmount } from '#lib/rooms/pans/facts/kept.ts'
import { type Level, leftBehind, levelsOf } from '#lib/rooms/pans/facts/levels.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import type { Keep } from '#lib/service/stock-state.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { pansOf } from '#lib/station/find.ts'

/** Whether a guest can have a component now, and why not. */
export type Standing =
  | {
      readonly kind: 'free'
      readonly left: number
      /** Cautions that the person in charge would have to accept with the guest; worst first. */
      readonly toAccept: readonly Finding[]
      /** What is said of it and stands in nobody's way. */
      readonly notes: readonly Finding[]
      /** It is taken from its protected back-up pan. */
      readonly fromBackup: boolean
    }
  | { readonly kind: 'need'; readonly finding: Finding }
  /** Needs couldn't be checked, so nothing is known. */
  | { readonly kind: 'unchecked' }
  /** `endsAt`: its time or date is over then, before this would be made; epoch milliseconds. */
  | { readonly kind: 'not-selling'; readonly endsAt?: number }
  /** What is left is kept for others: ids of items, codes of needs, or `kept-apart`. */
  | { readonly kind: 'kept'; readonly for: readonly string[] }
  /** `notLoaded`: nothing of it was loaded in this service yet, so none of it has run out. */
  | { readonly kind: 'gone'; readonly notLoaded?: true }

export type NotFree = Exclude<Standing, { readonly kind: 'free' }>

/** What this guest can be offered: the pans less what is spoken for, less what a need rules out. */
export interface Offer {
  readonly state: Selling
  readonly needs: readonly Need[]
  readonly standing: Readonly<Record<string, Standing>>
  /** Levels in which only what this guest can have is left. */
  readonly levels: Readonly<Record<string, Level>>
  /** What is kept for others than this guest's needs: how it stands for items it isn't kept for. */
  readonly kept: Readonly<Record<string, { readonly keep: Keep; readonly standing: Standing }>>
  /** The item that standings are for; null while none is chosen. */
  readonly item: string | null
  /** The item of the accepted build that is changed, which stays its own; null for a new build. */
  readonly ownItem: string | null
}

const NO_NEEDS: JudgedComponent = { level: 'ok', findings: [], fromBackup: false }

/** null where the checker fails: then a guest with needs can't be served from this screen. */
const judgedBy = (
  state: RunningState,
  component: string,
  needs: readonly Need[],
): JudgedComponent | null => {
  if (needs.length === 0) return NO_NEEDS
  try {
    return judgeComponent(kitchenOf(state), component, needs)
  } catch {
    return null
  }
}

const goneOf = (state: RunningState, component: string): Standing =>
  pansOf(state.station).some(
    (pan) => pan.component === component && (state.pans[pan.id]?.load ?? 0) > 0,
  )
    ? { kind: 'gone' }
    : { kind: 'gone', notLoaded: true }

/** How what was judged stands, of which so much is `left`; `none` where nothing is. */
export const standingFor = (
  judged: JudgedComponent | null,
  left: number,
  none: Standing,
): Standing => {
  if (judged === null) return { kind: 'unchecked' }
  const [worst] = judged.findings
  if (worst?.level === 'no') return { kind: 'need', finding: worst }
  if (left === 0) return none
  const toAccept = judged.findings.filter((one) => !isFine(one.level))
  const notes = judged.findings.filter((one) => isFine(one.level))
  return { kind: 'free', left, toAccept, notes, fromBackup: judged.fromBackup }
}

/** Whether portions are kept for whoever has these needs, whatever item they take. */
const isKeptForNeeds = ({ for: whom }: Keep, needs: readonly Need[]): boolean =>
  needs.some(({ code }) => whom.includes(code)) ||
  (whom.includes(KEPT_APART) && needs.some(({ handling }) => handling === 'keep-apart'))

const NOWHERE: Wanted = { line: {}, behind: {} }

/**
 * @param state as an order finds it that is sent now
 * @param elsewhere what earlier builds of the same order take
 * @param before the accepted build that is changed: what it holds stays available to it, whether
 * that is sold out or not sold any more. The server accepts by the same rule.
 */
export const offerFor = (
  state: Selling,
  needs: readonly Need[],
  elsewhere: Wanted = NOWHERE,
  before: Pick<Build, 'choice' | 'takes'> | null = null,
): Offer => {
  const had = before ? wantedFrom(state, before.choice, before.takes) : NOWHERE
  const isApart = needs.some(({ handling }) => handling === 'keep-apart')
  const standing: Record<string, Standing> = {}
  const levels: Record<string, Level> = {}
  const kept: Record<string, { readonly keep: Keep; readonly standing: Standing }> = {}
  for (const [component, level] of Object.entries(levelsOf(state))) {
    const judged = judgedBy(state, component, needs)
    const isBehind = isApart && judged?.fromBackup === true && behindOf(state, component) > 0
    const from = isBehind ? 'behind' : 'line'
    const { remaining: there, endsAt } = isBehind ? leftBehind(state, component) : level
    const own = had[from][component] ?? 0
    const beyondOwn = there - (elsewhere[from][component] ?? 0)
    const remaining = own > 0 ? own + Math.max(0, beyondOwn) : beyondOwn
    const portion = state.portions[component]
    const stopped = state.notSelling.component[component] !== undefined
    const forSale = stopped ? own : remaining
    const portionsIn = (amount: number) =>
      portion ? Math.max(0, Math.floor(amount / portion.amount)) : 0
    const left = portionsIn(forSale)
    // What is off sale, or waits to be thrown out, isn't sold now: it hasn't run out.
    const isHeldBack = stopped || level.heldBack > 0 || endsAt !== null
    const notSelling: Standing = {
      kind: 'not-selling',
      ...(stopped || endsAt === null ? {} : { endsAt }),
    }
    const stands = standingFor(judged, left, isHeldBack ? notSelling : goneOf(state, component))
    const keep = state.keeps[component]
    // What is kept for others is kept of the line.
    if (keep && !isBehind && !isKeptForNeeds(keep, needs)) {
      const free = portionsIn(own + Math.max(0, beyondOwn - keptAmount(state, component)))
      const none = left === 0 ? stands : ({ kind: 'kept', for: keep.for } as const)
      kept[component] = { keep, standing: standingFor(judged, stopped ? left : free, none) }
    }
    const isOut = stands.kind === 'need' || stands.kind === 'unchecked'
    standing[component] = stands
    levels[component] = { ...level, remaining, portionsLeft: isOut ? 0 : left }
  }
  const ownItem = before?.choice.item ?? null
  return { state, needs, standing, levels, kept, item: null, ownItem }
}

/** The same offer, of one item: portions may be kept for it, or for others. */
export const offerOf = (offer: Offer, item: string | null): Offer =>
  offer.item === item ? offer : { ...offer, item }

export const standingOf = (offer: Offer, component: string): Standing => {
  const kept = offer.kept[component]
  const isFor = offer.item !== null && kept?.keep.for.includes(offer.item)
  return kept && !isFor ? kept.standing : (offer.standing[component] ?? { kind: 'gone' })
}

/** What must be accepted before a guest has it, worst first; empty where nothing must. */
export const toAcceptOf = (standing: Standing): readonly Finding[] =>
  standing.kind === 'free' ? standing.toAccept : []
