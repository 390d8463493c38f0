import { z } from 'zod'
import type { ReadingKind } from '#lib/estimate/scoop-bias.ts'
import { restIfEmptied } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { onPan } from '#lib/rooms/pans/commands/pans.ts'
import { countAfter, SCRAPE } from '#lib/rooms/pans/facts/beliefs.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { mayHold } from '#lib/service/held-stock.ts'
import { noPlace } from '#lib/service/place.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { PanState, RunningState } from '#lib/service/state.ts'
import { findPan, pansOf } from '#lib/station/find.ts'

const fields = {
  pan: idField,
  /** What was counted or weighed, in the component's unit: one of these three is given. */
  amount: amountField.optional(),
  /** One look: 4 full, 3, 2, 1 quarter, 0 a scrape. Of what the pan usually holds. */
  quarters: z.int().min(0).max(4).optional(),
  /** Gross, with the pan: its tare is taken off. Milligrams. */
  weighedMg: amountField.optional(),
  /** Of an `amount`: a count where left away. */
  kind: z.enum(['weighing', 'count', 'eye-check']).optional(),
  /** Of a pan that was counted to nothing: that count was a slip, and its food is there as before. */
  was: z.literal('slip').optional(),
}

type Correct = Told<typeof fields>

/**
 * Why a pan isn't counted so. What was counted to nothing has no food any more: who counts something
 * there says what it is, by loading it, or that nothing was counted wrongly.
 */
const countProblem = ({ pan, was }: Correct, held: PanState, read: number): Refusal | null => {
  if (was === 'slip' && held.ended !== 'thrown-out') {
    if (!held.ended) return { code: 'already-so' }
    return read > 0 ? null : { code: 'reading-unclear', pan }
  }
  return held.ended && read > 0 ? { code: 'say-what-was-put-in', pan } : null
}

/**
 * Taken as it is where nobody said how it was come by, and where what was counted before tells nothing
 * of what is there; else as it is believed after it.
 */
const corrected = (
  state: RunningState,
  command: Correct,
  pan: PanState,
  read: number,
  kind: ReadingKind | null,
  now: number,
): Decision => {
  const problem = countProblem(command, pan, read)
  if (problem) return refuse(problem)
  const ends = read === 0 && mayHold(pan)
  const isNews = pan.amount !== read || (ends && !pan.ended)
  if (kind === null && !isNews) return refuse({ code: 'already-so' })
  const isAlone = kind === null || pan.ended !== undefined
  const to = isAlone ? read : countAfter(state, command.pan, read, kind)
  const rest = to === 0 ? restIfEmptied(state, command.pan, pan, now) : null
  return happened({
    type: 'countCorrected',
    pan: command.pan,
    from: pan.amount,
    to,
    ...(kind === null ? {} : { kind, read }),
    ...(rest ? { rest } : {}),
    ...(ends && to === 0 ? { ends } : {}),
    ...(command.was === undefined ? {} : { was: command.was }),
  })
}

const decideLook = (
  state: RunningState,
  command: Correct,
  quarters: number,
  now: number,
): Decision => {
  const place = findPan(state.station, command.pan)
  const pan = state.pans[command.pan]
  const portion = place && state.portions[place.component]
  if (!place || !pan || !portion) return refuse(noPlace({ what: 'pan', id: command.pan }))
  const share = quarters === 0 ? SCRAPE : quarters / 4
  const read = Math.round(share * place.usualPortions * portion.amount)
  return corrected(state, command, pan, read, 'eye-check', now)
}

const decideWeighed = (
  state: RunningState,
  command: Correct,
  grossMg: number,
  now: number,
): Decision => {
  const place = findPan(state.station, command.pan)
  if (!place) return refuse(noPlace({ what: 'pan', id: command.pan }))
  if (state.portions[place.component]?.unit === 'piece')
    return refuse({ code: 'not-by-weight', pan: command.pan })
  const tareMg = state.containers[command.pan]?.tareMg ?? place.tareMg
  if (tareMg === null) return refuse({ code: 'no-tare', pan: command.pan })
  if (grossMg < tareMg)
    return refuse({
      code: 'wrong-amount',
      pan: command.pan,
      problem: { code: 'below-tare', tareMg },
    })
  const net = { pan: command.pan, amount: grossMg - tareMg }
  return onPan(state, net, 0, (pan) => corrected(state, command, pan, net.amount, 'weighing', now))
}

/** What a pan really holds, by weighing, by count or by one look. */
export const correct = defineCommand({
  type: 'correct',
  who: [],
  stages: ['open'],
  schema: fields,
  decide: (state, command, { now }) => {
    const { amount, quarters, weighedMg, kind } = command
    const said = [amount, quarters, weighedMg].filter((one) => one !== undefined)
    if (said.length !== 1 || (kind !== undefined && amount === undefined))
      return refuse({ code: 'reading-unclear', pan: command.pan })
    if (weighedMg !== undefined) return decideWeighed(state, command, weighedMg, now)
    if (quarters !== undefined) return decideLook(state, command, quarters, now)
    const read = amount ?? 0
    return onPan(state, { pan: command.pan, amount: read }, 0, (pan) =>
      corrected(state, command, pan, read, kind ?? null, now),
    )
  },
  sample: (state) =>
    pansOf(state.station).map(({ id, component }) => ({
      pan: id,
      amount: (state.pans[id]?.amount ?? 0) + (state.portions[component]?.amount ?? 0),
      ...(state.pans[id]?.ended ? { was: 'slip' as const } : {}),
    })),
  rules: ['K3', 'K4', 'U1', 'U2', 'U3', 'U4', 'S120', 'S121', 'S122'],
  example: { pan: 'pan-rice', amount: 1_250_000 },
  tells: ': what the pan really holds',
})
