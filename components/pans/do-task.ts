/** What a tap on a thing to do opens; null where it is an act, or another screen. */
import type { Chosen } from '#components/job/chosen.ts'
import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import type { Suggestion } from '#lib/estimate/station-forecast.ts'
import type { ToDo } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import { whereIs } from '#lib/service/held-stock.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'
import { pansOf } from '#lib/station/find.ts'
import { isReadHere } from '#lib/station/read-here.ts'

const refill = (state: RunningState, pan: string): Chosen => ({
  kind: 'food',
  food: { task: 'put', pan, way: state.pans[pan]?.amount === 0 ? 'load' : 'change' },
})

/** A sold-out component: what can be done about it now; where nothing can, its pan is shown. */
const soldOutFor = (state: RunningState, component: string, pan: string): Chosen => {
  switch (refillOf(state, component)) {
    case 'change':
      return { kind: 'food', food: { task: 'put', pan, way: 'change' } }
    case 'load':
      return refill(state, pan)
    case 'start':
      return { kind: 'food', food: { task: 'start-batch', component } }
    case null:
      return { kind: 'pan', id: pan }
  }
}

const firstPan = (state: RunningState, component: string): string | null =>
  pansOf(state.station).find((pan) => pan.component === component)?.id ?? null

/** The pan that the person in charge decides on, where builds are held for one. */
const resolveFor = (state: RunningState, builds: readonly string[]): Chosen | null => {
  const pans = builds.flatMap((name) => {
    const { ticket, letter } = namedBuild(name)
    return findBuild(state, ticket, letter)?.hold?.pans ?? []
  })
  for (const id of pans) {
    if (id === SHELF) return { kind: 'food', food: { task: 'read-here', of: 'shelf' } }
    const what = whereIs(state, id)
    if (what) return { kind: 'food', food: { task: 'resolve', what, id } }
  }
  return null
}

export const openFor = (state: RunningState, toDo: ToDo): Chosen | null => {
  switch (toDo.kind) {
    case 'hold':
      return toDo.reason === 'off-sale' ? resolveFor(state, toDo.builds) : null
    case 'handed-over':
      return { kind: 'food', food: { task: 'handed-over', what: toDo.what, id: toDo.id } }
    case 'find':
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
    case 'sold-out':
      return soldOutFor(state, toDo.component, toDo.pan)
    default:
      return refill(state, toDo.pan)
  }
}

const safetyFor = ({ what, of, id }: SafetyReason): Chosen | null => {
  if (isReadHere(of)) return { kind: 'food', food: { task: 'read-here', of } }
  if (what === 'throw-out') return { kind: 'food', food: { task: 'throw-out', early: null } }
  if (of === 'build' || of === 'rest') return null
  switch (what) {
    case 'collect':
      return null
    case 'cooling-due':
      return { kind: 'food', food: { task: 'batch', id } }
    case 'out-of-limits':
      return { kind: 'food', food: { task: 'resolve', what: of, id } }
    case 'reading-due':
    case 'reading-missed':
      return { kind: 'food', food: { task: 'read', what: of, id } }
    case 'throw-out-soon':
      return of === 'pan'
        ? { kind: 'pan', id }
        : { kind: 'food', food: { task: 'throw-out', early: { what: of, id } } }
  }
}

export const openForAdvice = (state: RunningState, { reason }: Suggestion): Chosen | null => {
  switch (reason.why) {
    case 'safety':
      return safetyFor(reason)
    case 'sold-out': {
      const pan = firstPan(state, reason.component)
      return pan === null ? null : soldOutFor(state, reason.component, pan)
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
