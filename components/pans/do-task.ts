/** What a tap on a thing to do opens; null where it is an act, or another screen. */
import type { Chosen } from '#components/pans/chosen.ts'
import { pansOf } from '#lib/menu/find.ts'
import { whereIs } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { SafetyReason } from '#lib/stock/advice-reason.ts'
import type { Suggestion } from '#lib/stock/station-forecast.ts'
import type { ToDo } from '#lib/views/pans-to-do.ts'

const refill = (state: RunningState, pan: string): Chosen => ({
  kind: 'food',
  food: { task: 'put', pan, way: state.pans[pan]?.amount === 0 ? 'load' : 'change' },
})

const firstPan = (state: RunningState, component: string): string | null =>
  pansOf(state.station).find((pan) => pan.component === component)?.id ?? null

export const openFor = (state: RunningState, toDo: ToDo): Chosen | null => {
  switch (toDo.kind) {
    case 'find':
    case 'hold':
    case 'confirm-clock':
      return null
    case 'read-label':
      return { kind: 'labels', ingredient: toDo.ingredient }
    case 'load': {
      const first = toDo.loads[0]?.pan
      return first === undefined ? null : refill(state, first)
    }
    case 'short':
      return { kind: 'food', food: { task: 'short', component: toDo.component } }
    default:
      return refill(state, toDo.pan)
  }
}

const safetyFor = (state: RunningState, { what, of, id }: SafetyReason): Chosen | null => {
  const where = whereIs(state, id)
  switch (what) {
    case 'collect':
      return null
    case 'throw-out':
      return { kind: 'food', food: { task: 'throw-out', early: null } }
    case 'cooling-due':
      return { kind: 'food', food: { task: 'batch', id } }
    case 'out-of-limits':
      return of === 'build' ? null : { kind: 'food', food: { task: 'resolve', what: of, id } }
    case 'reading-due':
    case 'reading-missed':
      return where === null
        ? { kind: 'food', food: { task: 'batch', id } }
        : { kind: 'food', food: { task: 'read', what: where, id } }
    case 'throw-out-soon':
      if (of === 'build') return null
      return of === 'pan'
        ? { kind: 'pan', id }
        : { kind: 'food', food: { task: 'throw-out', early: { what: of, id } } }
  }
}

export const openForAdvice = (state: RunningState, { reason }: Suggestion): Chosen | null => {
  switch (reason.why) {
    case 'safety':
      return safetyFor(state, reason)
    case 'sold-out': {
      const pan = firstPan(state, reason.component)
      return pan === null ? null : refill(state, pan)
    }
    case 'measure': {
      const pan = firstPan(state, reason.component)
      return pan === null ? null : { kind: 'pan', id: pan }
    }
    case 'start-batch':
    case 'keep':
      return null
  }
}
