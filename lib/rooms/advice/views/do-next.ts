/**
 * All there is to do for the lead, the one to do next first: duties of safety, what the pans lack,
 * and what the forecast suggests. In a rush nothing is told but safety and what is short or sold out.
 */

import { PUT_OFF_MINUTES } from '#lib/estimate/advice.ts'
import type { AdviceReason, ByWhen } from '#lib/estimate/advice-reason.ts'
import type { Lasting } from '#lib/estimate/run-out.ts'
import type { StationForecast, Suggestion } from '#lib/estimate/station-forecast.ts'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { type ToDo, toDos } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import { readyBehind } from '#lib/rooms/pans/facts/supply.ts'
import { instantAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'

export type Task =
  | { readonly kind: 'fact'; readonly toDo: ToDo }
  | { readonly kind: 'advice'; readonly advice: Suggestion }

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
  const duties = [...safetyDue(state, now)].sort((one, other) => other.saves - one.saves)
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
    ...duties.map(told),
    ...facts.filter((one) => !isFirst(one) && !isLast(one) && !isHelpless(one)).map(fact),
    ...facts.filter(isLastOne).map(fact),
    ...advice.filter((one) => !isLost(one)).map(told),
    ...facts.filter((one) => isLast(one) && isReady(one) && !isLastOne(one)).map(fact),
    ...facts.filter(isHelpless).map(fact),
    ...advice.filter(isLost).map(told),
    ...facts.filter((one) => isLast(one) && !isReady(one)).map(fact),
  ]
}

/** What was answered with later or no, and would still be worth doing. */
export interface PutOff {
  readonly key: string
  readonly reason: AdviceReason
  /** When it is told again, epoch milliseconds; null where it was declined. */
  readonly until: number | null
}

export const putOffOf = (
  state: RunningState,
  forecast: StationForecast | null,
  now: number,
): readonly PutOff[] =>
  (forecast?.candidates ?? []).flatMap(({ key, reason }): readonly PutOff[] => {
    const told = state.adviceLog.findLast((one) => one.key === key)
    if (!told || told.answeredAt === null) return []
    if (told.answer === 'declined') return [{ key, reason, until: null }]
    const until = instantAt(state, told.answeredAt + PUT_OFF_MINUTES)
    return told.answer === 'put-off' && until > now ? [{ key, reason, until }] : []
  })

/** What the forecast says won't last, or is tight; the surest to run out first. */
export interface NotLasting {
  readonly component: string
  readonly lasting: Exclude<Lasting, 'enough'>
  readonly by: ByWhen
  /** Of what was advised against it; null where that wasn't put off. */
  readonly putOff: PutOff | null
}

export const notLastingOf = (
  forecast: StationForecast | null,
  putOff: readonly PutOff[],
): readonly NotLasting[] =>
  Object.entries(forecast?.components ?? {})
    .sort(([, one], [, other]) => other.chance - one.chance)
    .flatMap(([component, { lasting, by }]) =>
      lasting === 'enough'
        ? []
        : [
            {
              component,
              lasting,
              by,
              putOff:
                putOff.find(
                  ({ reason }) => reason.why !== 'safety' && reason.component === component,
                ) ?? null,
            },
          ],
    )

/** The same thing to do has the same key, so that a tap meant for another one is told apart. */
export const taskKey = (task: Task): string => {
  if (task.kind === 'advice') return task.advice.key
  const { toDo } = task
  if (toDo.kind === 'handed-over')
    return `${toDo.kind} ${toDo.what} ${toDo.id} ${toDo.builds.length}`
  if ('pan' in toDo) return `${toDo.kind} ${toDo.pan}`
  if ('builds' in toDo) return `${toDo.kind} ${toDo.reason} ${toDo.builds.join(' ')}`
  return 'ingredient' in toDo ? `${toDo.kind} ${toDo.ingredient}` : toDo.kind
}
