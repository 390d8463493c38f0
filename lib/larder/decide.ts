/** Decides what is asked of the larder. What is taken is decided by the service that takes it. */
import type { LarderCommand, LarderRefusal, ToldReading } from '#lib/larder/command.ts'
import { dayOf, frozenFrom, limitsOfLot, thawedMark } from '#lib/larder/days.ts'
import { decideDelivery } from '#lib/larder/decide-delivery.ts'
import { deliveriesOf } from '#lib/larder/deliveries.ts'
import type { ReceivingKnown } from '#lib/larder/delivery.ts'
import { lotCooling } from '#lib/larder/due.ts'
import type { LarderEvent, LotRead } from '#lib/larder/event.ts'
import { type GoneLot, goneIn, type LarderState, type Lot, lotIn } from '#lib/larder/lot.ts'
import { type LabelHistory, labelsOfBefore, relabelledOf } from '#lib/larder/relabelled.ts'
import { lotBarred } from '#lib/larder/take.ts'
import { inLimits } from '#lib/safety/holding.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { momentProblem, questionReading, type Reading, readingLacks } from '#lib/safety/readings.ts'
import { isTemperature } from '#lib/safety/temperature.ts'

export type LarderDecision =
  | { readonly events: readonly LarderEvent[] }
  | { readonly refusal: LarderRefusal }

const refuse = (refusal: LarderRefusal): LarderDecision => ({ refusal })
const happened = (...events: LarderEvent[]): LarderDecision => ({ events })

/** So long a tap on "another class took it" may be taken back as a slip. */
export const SLIP_MS = 10 * MINUTE_MS

/** What is gone later than now left before the clock fell: nobody knows how long ago. */
export const isSlip = ({ lot, at }: GoneLot, now: number): boolean =>
  lot !== null && at <= now && now - at <= SLIP_MS

const takenReading = (
  lot: Lot,
  given: ToldReading,
  isInitialled: boolean,
  now: number,
): { readonly reading: Reading } | { readonly refusal: LarderRefusal } => {
  const read = { tenths: given.tenths, scale: given.scale }
  const ask = (question: { readonly code: 'cannot-be' }): { readonly refusal: LarderRefusal } => ({
    refusal: { code: 'lot-reading-asked', question, read },
  })
  if (!isTemperature(read)) return ask({ code: 'cannot-be' })
  const at = given.at ?? now
  const newest = (lot.kept === 'cooling' ? lot.cooling : lot.readings).at(-1)?.at
  const problem = momentProblem(at, newest ?? lot.since, now)
  // What is told late is of this lot, never of what it was before.
  if (problem && at !== now) return { refusal: { code: 'lot-wrong-moment', problem } }
  const context = lot.kept === 'cooling' ? 'cooling' : 'cold-holding'
  const question = questionReading(read, context, lot.under.scale)
  const isConfirmed =
    question?.code === 'did-you-mean' && !question.must && given.scaleConfirmed === true
  if (question && !isConfirmed) return { refusal: { code: 'lot-reading-asked', question, read } }
  const reading: Reading = {
    temperature: read,
    at,
    probe: given.probe,
    where: given.where,
    initialled: isInitialled,
    ...(given.cleaned === undefined ? {} : { cleaned: given.cleaned }),
  }
  const lack = readingLacks(reading)
  return lack ? { refusal: { code: 'lot-reading-lacks', lack } } : { reading }
}

const resultOf = (lot: Lot, reading: Reading, now: number): LotRead['result'] => {
  if (lot.kept !== 'cooling') return inLimits('cold', reading, limitsOfLot(lot)) ? 'good' : 'out'
  const { state } = lotCooling({ ...lot, cooling: [...lot.cooling, reading] }, now)
  if (state === 'cooled') return 'cooled'
  return state === 'first-stage' || state === 'second-stage' ? 'good' : 'out'
}

const freeze = (
  lot: Lot,
  command: Extract<LarderCommand, { readonly type: 'freezeLot' }>,
  now: number,
): LarderDecision => {
  const not = (because: Extract<LarderRefusal, { code: 'lot-cannot-freeze' }>['because']) =>
    refuse({ code: 'lot-cannot-freeze', because })
  if (lot.kept !== 'cold') return not(lot.kept === 'frozen' ? 'frozen' : 'not-cold')
  const frozen = frozenFrom(lot, dayOf(lot, now), command)
  return typeof frozen === 'string'
    ? not(frozen)
    : happened({ type: 'lotFrozen', lot: command.lot, frozen })
}

const thaw = (id: string, lot: Lot, now: number): LarderDecision => {
  if (lot.frozen === null) return refuse({ code: 'lot-not-frozen' })
  const dateMark = thawedMark({ ...lot, frozen: lot.frozen }, dayOf(lot, now))
  return dateMark === null
    ? refuse({ code: 'lot-no-days-left' })
    : happened({ type: 'lotThawed', lot: id, dateMark })
}

const confirmLabel = (
  lot: Lot,
  { lot: id, ingredient, pack, saw }: Extract<LarderCommand, { readonly type: 'confirmLotLabel' }>,
  history: LabelHistory,
): LarderDecision => {
  const newest = history.newest()
  if (!relabelledOf(lot, newest).includes(ingredient)) return refuse({ code: 'lot-label-same' })
  const version = newest[ingredient] ?? 0
  if (version !== saw) return refuse({ code: 'lot-label-newer' })
  const before = pack === 'same' ? [] : labelsOfBefore(lot, ingredient, history)
  return happened({ type: 'lotLabelConfirmed', lot: id, ingredient, version, pack, before })
}

const isBack = (state: LarderState, id: string, now: number): LarderDecision => {
  const gone = goneIn(state, id)
  return gone && isSlip(gone, now) && lotIn(state, id) === undefined
    ? happened({ type: 'lotBack', lot: id })
    : refuse({ code: 'lot-no-slip' })
}

/**
 * The clock is right as it is. Where it fell, nobody knows how long ago anything was read: what cools has
 * missed its stage, and what stands cold is read again.
 */
const confirmed = (state: LarderState, wall: number): LarderDecision => {
  if (state.clockJump === null) return refuse({ code: 'nothing-to-confirm' })
  const { byMs } = state.clockJump
  const inDoubt = byMs >= 0 ? [] : Object.entries(state.lots).filter(([, one]) => !one.bound)
  return happened(
    { type: 'larderClockConfirmed', wall },
    ...inDoubt.flatMap(([lot, { kept }]): readonly LarderEvent[] => {
      if (kept === 'cooling') return [{ type: 'lotCoolingMissed', lot, stage: 1 }]
      return kept === 'cold' ? [{ type: 'lotReadingMissed', lot }] : []
    }),
  )
}

/**
 * What goes into the bin goes there by initials, not to another class; what is only to be read may be
 * read there. While the clock is in doubt nothing falls due: nobody knows what goes into the bin.
 */
const notGiven = (state: LarderState, id: string, now: number): LarderDecision | null => {
  const bound = lotIn(state, id)?.bound
  if (bound) return refuse({ code: 'lot-bound', why: bound.why })
  const barred = lotBarred(state, id, now)
  return barred === null || barred.code === 'lot-unread' ? null : refuse(barred)
}

/** Of a house that knows of no label that changed. */
export const NO_LABELS: LabelHistory = { newest: () => ({}), from: () => [] }
const NOTHING_KNOWN: ReceivingKnown = { food: null, labelVersion: 0 }

/**
 * What a command does in a larder.
 * @param now the server's, epoch milliseconds
 * @param delivered what the house knows of a food that is delivered
 */
export const decideLarder = (
  state: LarderState,
  command: LarderCommand,
  now: number,
  labels: LabelHistory = NO_LABELS,
  delivered: ReceivingKnown = NOTHING_KNOWN,
): LarderDecision => {
  if (command.type === 'receiveDelivery' || command.type === 'sendBackDelivery')
    return decideDelivery(command, delivered, now, {
      isUnsure: state.clockJump !== null,
      before: deliveriesOf(state.deliveries, command.delivery.ingredient),
    })
  const isInitialled = command.initials !== undefined && command.initials.trim() !== ''
  if (command.type === 'confirmLarderClock') return confirmed(state, now)
  const { lot: id } = command
  if (command.type === 'lotIsBack') return isBack(state, id, now)
  const lot = lotIn(state, id)
  if (!lot) return refuse(lotBarred(state, id, now) ?? { code: 'no-such-lot' })
  switch (command.type) {
    case 'moveLot':
      return happened({ type: 'lotMoved', lot: id, place: command.place })
    case 'anotherTookLot':
      return notGiven(state, id, now) ?? happened({ type: 'lotGone', lot: id, amount: lot.amount })
    case 'throwOutLot':
      return isInitialled
        ? happened({ type: 'lotThrownOut', lot: id, amount: lot.amount, reason: command.reason })
        : refuse({ code: 'needs-initials' })
  }
  const barred = lotBarred(state, id, now)
  const isForUnread = command.type === 'readLot' || command.type === 'confirmLotLabel'
  if (barred !== null && !(isForUnread && barred.code === 'lot-unread')) return refuse(barred)
  if (command.type === 'confirmLotLabel') return confirmLabel(lot, command, labels)
  if (command.type === 'freezeLot')
    return isInitialled ? freeze(lot, command, now) : refuse({ code: 'needs-initials' })
  if (command.type === 'thawLot')
    return isInitialled ? thaw(id, lot, now) : refuse({ code: 'needs-initials' })
  if (lot.kept === 'frozen') return refuse({ code: 'lot-not-read', because: 'frozen' })
  const taken = takenReading(lot, command.reading, isInitialled, now)
  if ('refusal' in taken) return taken
  const { presentUntil } = command
  return happened({
    type: 'lotRead',
    lot: id,
    reading: taken.reading,
    result: resultOf(lot, taken.reading, now),
    ...(presentUntil === undefined ? {} : { presentUntil }),
  })
}
