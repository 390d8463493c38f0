/** The larder as its screen is told it: what stands where, what goes first, what is due next. */
import { dayOf, lotEndsAt, thawedMark } from '#lib/larder/days.ts'
import { isSlip, SLIP_MS } from '#lib/larder/decide.ts'
import { lotCooling, lotReadBy } from '#lib/larder/due.ts'
import type { LarderState, Lot, LotBound, LotKept, LotPlace } from '#lib/larder/lot.ts'
import { bareLabel, type LabelHistory, relabelledOf } from '#lib/larder/relabelled.ts'
import { type LotProblem, lotBarred, lotsInOrder } from '#lib/larder/take.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import type { Label } from '#lib/station/label.ts'

/** What falls due next of a lot, epoch milliseconds. */
export type NextOfLot =
  | { readonly what: 'stage'; readonly stage: 1 | 2; readonly at: number }
  | { readonly what: 'reading'; readonly at: number }
  | { readonly what: 'date'; readonly at: number }

/** An ingredient whose label is another than the one by which a lot was set aside. */
export interface RelabelledHere {
  readonly ingredient: string
  /** As its station calls it. */
  readonly name: string
  /** null: nobody has read it, or no row is left of it. */
  readonly was: Label | null
  readonly is: Label | null
  /** The version that is the newest. */
  readonly version: number
}

export interface LotShown {
  readonly lot: string
  readonly component: string
  readonly name: string
  readonly station: string
  readonly amount: number
  readonly unit: Lot['unit']
  readonly kept: LotKept
  readonly place: LotPlace | null
  readonly setAsideAt: number
  /** In the freezer: what it would be, thawed today. */
  readonly lastDay: CivilDate | null
  readonly daysLeft: number | null
  readonly newest: Reading | null
  readonly next: NextOfLot | null
  /** Until when somebody said to be there who can read it; null where it doesn't cool. */
  readonly presentUntil: number | null
  readonly bound: LotBound | null
  /** Why nothing of it is taken now; null where it may be. */
  readonly barred: LotProblem | null
  /** Until the person in charge has said of which pack it was made, it isn't taken. */
  readonly relabelled: readonly RelabelledHere[]
  /** Of its component it is the one that goes first. */
  readonly isFirst: boolean
  readonly stoodOpen: boolean
  readonly soiledBy: readonly string[]
  readonly timeZone: string
  readonly scale: Scale
  /** What a label on paper says of it beside. */
  readonly label: LotLabel
}

/** What it is made of and touched, and how it was made and cooled. */
export type LotLabel = Pick<
  Lot,
  'madeOf' | 'before' | 'touched' | 'cooledFrom' | 'cooling' | 'startedAt' | 'finishedAt'
> & {
  /** When it is past its date, epoch milliseconds; null in the freezer, and of dry food without one. */
  readonly endsAt: number | null
  readonly limits: Lot['under']['limits']
  /** The maker's date of what is frozen. */
  readonly useBy: CivilDate | null
  /** What its station asks labels for; null where the house has it no more. */
  readonly allergens: Allergens | null
  /** What it is made of and touched, each once, by the house's newest labels. */
  readonly listed: readonly ListedHere[]
}

/** An ingredient as the house has it, whether or not a station lists it. */
export interface ListedHere {
  readonly id: string
  /** As the lot's station calls it. */
  readonly name: string
  /** Without the words of its pack and its reader; null: the house has none of it. */
  readonly label: Label | null
}

export interface LarderShown {
  readonly now: number
  readonly position: number
  readonly clockJumpedBy: number | null
  /** What goes first first. */
  readonly lots: readonly LotShown[]
  /** What another class took and may have been a slip. */
  readonly slips: readonly { readonly lot: string; readonly name: string; readonly until: number }[]
}

const nextOf = (lot: Lot, now: number): NextOfLot | null => {
  const endsAt = lotEndsAt(lot)
  const cooling = lot.kept === 'cooling' ? lotCooling(lot, now) : null
  if (cooling && 'dueAt' in cooling)
    return { what: 'stage', stage: cooling.state === 'first-stage' ? 1 : 2, at: cooling.dueAt }
  const readBy = lotReadBy(lot)
  if (readBy !== null && (endsAt === null || readBy < endsAt))
    return { what: 'reading', at: readBy }
  return endsAt === null ? null : { what: 'date', at: endsAt }
}

/** What is known of labels, and what stations call their ingredients. */
export interface LabelsHere extends LabelHistory {
  nameOf(station: string, ingredient: string): string
  /** Of the product in use, the newest, as unread where nobody has read it; null where the house has none. */
  labelOf(ingredient: string): Label | null
  /** null where the house has no such station. */
  allergensOf(station: string): Allergens | null
}

const relabelledHere = (lot: Lot, labels: LabelsHere): readonly RelabelledHere[] => {
  const newest = labels.newest()
  return relabelledOf(lot, newest).map((ingredient) => {
    const saw = lot.labels?.[ingredient] ?? 0
    const rows = labels.from(ingredient, saw)
    const version = newest[ingredient] ?? 0
    const at = (asked: number) => rows.find((one) => one.version === asked)?.label ?? null
    const name = labels.nameOf(lot.from.station, ingredient)
    return { ingredient, name, was: at(saw), is: at(version), version }
  })
}

const listedHere = ({ madeOf, touched, from }: Lot, labels: LabelsHere): readonly ListedHere[] =>
  [...new Set([...madeOf, ...(touched ?? []).flatMap((one) => one.madeOf)])].map((id) => {
    const label = labels.labelOf(id)
    return { id, name: labels.nameOf(from.station, id), label: label && bareLabel(label) }
  })

const shown = (
  state: LarderState,
  [id, lot]: readonly [string, Lot],
  {
    first,
    now,
    labels,
  }: {
    readonly first: ReadonlyMap<string, string>
    readonly now: number
    readonly labels: LabelsHere
  },
): LotShown => {
  const { component, name, from, amount, unit, kept, place, setAsideAt, presentUntil } = lot
  const thawed = lot.frozen && thawedMark({ ...lot, frozen: lot.frozen }, dayOf(lot, now))
  return {
    lot: id,
    component,
    name,
    station: from.station,
    amount,
    unit,
    kept,
    place,
    setAsideAt,
    lastDay: thawed ? thawed.lastDay : (lot.dateMark?.lastDay ?? null),
    daysLeft: lot.frozen?.daysLeft ?? null,
    newest: (kept === 'cooling' ? lot.cooling : lot.readings).at(-1) ?? null,
    next: lot.bound === null ? nextOf(lot, now) : null,
    presentUntil,
    bound: lot.bound?.why ?? null,
    barred: lotBarred(state, id, now),
    relabelled: relabelledHere(lot, labels),
    isFirst: first.get(component) === id,
    stoodOpen: lot.stoodOpen,
    soiledBy: lot.soiledBy,
    timeZone: lot.under.timeZone,
    scale: lot.under.scale,
    label: {
      madeOf: lot.madeOf,
      before: lot.before,
      touched: lot.touched,
      cooledFrom: lot.cooledFrom,
      cooling: lot.cooling,
      startedAt: lot.startedAt,
      finishedAt: lot.finishedAt,
      endsAt: lotEndsAt(lot),
      limits: lot.under.limits,
      useBy: lot.frozen?.useBy ?? null,
      allergens: labels.allergensOf(from.station),
      listed: listedHere(lot, labels),
    },
  }
}

/** The larder at a moment, epoch milliseconds. */
export const larderShown = (state: LarderState, now: number, labels: LabelsHere): LarderShown => {
  const lots = lotsInOrder(state)
  const first = new Map<string, string>()
  for (const [id, { component }] of lots)
    if (!first.has(component) && lotBarred(state, id, now) === null) first.set(component, id)
  return {
    now,
    position: state.position,
    clockJumpedBy: state.clockJump?.byMs ?? null,
    lots: lots.map((one) => shown(state, one, { first, now, labels })),
    slips: Object.entries(state.gone).flatMap(([lot, gone]) =>
      gone.lot !== null && isSlip(gone, now)
        ? [{ lot, name: gone.lot.name, until: gone.at + SLIP_MS }]
        : [],
    ),
  }
}
