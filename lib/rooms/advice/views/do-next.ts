/**
 * All there is to do for the lead, the one to do next first: duties of safety, what the pans lack,
 * and what the forecast suggests. In a rush nothing is told but safety and what is short or sold out.
 */

import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import type { StationForecast, Suggestion } from '#lib/estimate/station-forecast.ts'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { isDuty } from '#lib/rooms/advice/views/duty.ts'
import { type Round, roundOf } from '#lib/rooms/food/facts/round.ts'
import { type ToDo, toDos } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import { readyBehind } from '#lib/rooms/pans/facts/supply.ts'
import type { RunningState } from '#lib/service/state.ts'

export type Task =
  | { readonly kind: 'fact'; readonly toDo: ToDo }
  | { readonly kind: 'advice'; readonly advice: Suggestion }
  /** Readings that are taken one after the other, in place of a duty each. */
  | { readonly kind: 'round'; readonly round: Round }

/** What is told also in a rush. */
const URGENT: ReadonlySet<ToDo['kind']> = new Set([
  'find',
  'hold',
  'handed-over',
  'confirm-clock',
  'load',
  'short',
  'product-before',
  'sold-out',
])

/** Ahead of the duties of safety: guests, and a clock without which no duty falls due. */
const FIRST: ReadonlySet<ToDo['kind']> = new Set(['find', 'hold', 'handed-over', 'confirm-clock'])

/** Behind what is suggested: they are no loss yet. */
const LAST: ReadonlySet<ToDo['kind']> = new Set(['nearly-empty', 'read-label'])

/** A forecast knows better what lasts; a pan to change stays a fact while something stands ready. */
const isTold = (state: RunningState, forecast: StationForecast | null, toDo: ToDo): boolean => {
  if (!forecast) return true
  if (toDo.kind === 'sold-out')
    return !forecast.doNext.some(
      ({ reason }) => reason.why === 'sold-out' && reason.component === toDo.component,
    )
  if (toDo.kind !== 'nearly-empty') return true
  const isEnough = forecast.components[toDo.component]?.lasting === 'enough'
  return readyBehind(state, toDo.component) > 0 || (!isEnough && toDo.left === 0)
}

/** Labels that changed in this service come before advice, those that never were read after all. */
const isChangedLabel = (state: RunningState, toDo: ToDo): boolean =>
  toDo.kind === 'read-label' && state.labelChanges.some((one) => one.ingredient === toDo.ingredient)

const isPutOff = (state: RunningState, toDo: ToDo): boolean => {
  if (toDo.kind !== 'sold-out') return false
  const told = state.adviceLog.findLast((one) => one.key === `sold-out ${toDo.component}`)
  return told !== undefined && told.answer !== 'open' && told.answer !== 'lapsed'
}

const READINGS: readonly SafetyReason['what'][] = ['reading-due', 'reading-missed']

const isReadingOf = ({ reason }: Suggestion, { places }: Round): boolean =>
  isDuty(reason) &&
  READINGS.includes(reason.what) &&
  places.some(({ place }) => place.what === reason.of && place.id === reason.id)

/** What is to be read is one thing to do, where it is more than one reading. */
const dutiesOf = (
  state: RunningState,
  forecast: StationForecast | null,
  now: number,
): readonly Task[] => {
  const duties = [...safetyDue(state, now)].sort((one, other) => other.saves - one.saves)
  const told = (advice: Suggestion): Task => ({ kind: 'advice', advice })
  const found = roundOf(state, now, forecast?.rushAhead ?? null)
  const places = found?.places.filter(({ why }) => why !== 'out') ?? []
  const isReading =
    found && (found.rushFrom !== null || duties.some((one) => isReadingOf(one, found)))
  if (!found || !isReading || places.length < 2) return duties.map(told)
  const round = { ...found, places }
  const place = duties.findIndex((one) => isReadingOf(one, round))
  const before = place < 0 ? duties : duties.slice(0, place)
  const after = place < 0 ? [] : duties.slice(place).filter((one) => !isReadingOf(one, round))
  return [...before.map(told), { kind: 'round', round }, ...after.map(told)]
}

/** Without a forecast (none has come yet) only facts and duties are told. */
export const tasksOf = (
  state: RunningState,
  forecast: StationForecast | null,
  now: number,
): readonly Task[] => {
  const isRush = (forecast?.rushUntil ?? null) !== null
  const facts = toDos(state).filter(
    (one) =>
      isTold(state, forecast, one) &&
      !(forecast && isPutOff(state, one)) &&
      (!isRush || URGENT.has(one.kind) || isChangedLabel(state, one)),
  )
  const fact = (toDo: ToDo): Task => ({ kind: 'fact', toDo })
  const told = (advice: Suggestion): Task => ({ kind: 'advice', advice })
  const isFirst = (one: ToDo) => FIRST.has(one.kind)
  const isLast = (one: ToDo) => LAST.has(one.kind) && !isChangedLabel(state, one)
  const isHelpless = (one: ToDo) =>
    one.kind === 'sold-out' && refillOf(state, one.component) === null
  const isLost = ({ reason }: Suggestion) =>
    reason.why === 'sold-out' && refillOf(state, reason.component) === null
  const isReady = (one: ToDo) =>
    one.kind === 'nearly-empty' && readyBehind(state, one.component) > 0
  const isLastOne = (one: ToDo) => isReady(one) && 'left' in one && one.left <= 1
  const advice = (forecast?.doNext ?? []).filter((one) => one.kind !== 'safety')
  return [
    ...facts.filter(isFirst).map(fact),
    ...dutiesOf(state, forecast, now),
    ...facts.filter((one) => !isFirst(one) && !isLast(one) && !isHelpless(one)).map(fact),
    ...facts.filter(isLastOne).map(fact),
    ...advice.filter((one) => !isLost(one)).map(told),
    ...facts.filter((one) => isLast(one) && isReady(one) && !isLastOne(one)).map(fact),
    ...facts.filter(isHelpless).map(fact),
    ...advice.filter(isLost).map(told),
    ...facts.filter((one) => isLast(one) && !isReady(one)).map(fact),
  ]
}

/** The same thing to do has the same key, so that a tap meant for another one is told apart. */
export const taskKey = (task: Task): string => {
  if (task.kind === 'advice') return task.advice.key
  if (task.kind === 'round') return 'round'
  const { toDo } = task
  if (toDo.kind === 'handed-over')
    return `${toDo.kind} ${toDo.what} ${toDo.id} ${toDo.builds.length}`
  if ('pan' in toDo) return `${toDo.kind} ${toDo.pan}`
  if ('builds' in toDo) return `${toDo.kind} ${toDo.reason} ${toDo.builds.join(' ')}`
  return 'ingredient' in toDo ? `${toDo.kind} ${toDo.ingredient}` : toDo.kind
}
