/** Which pans an open job is about, and which vessel behind them: what its notch runs around. */
import type { Chosen } from '#components/job/chosen.ts'
import { findBackup } from '#lib/service/held-stock.ts'
import { componentAt } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'

export interface About {
  /** Pans of the line; none where it is about no pan. */
  readonly pans: readonly string[]
  /** A back-up pan or a batch that stands behind; null where it is about what is in the pan. */
  readonly vessel: string | null
}

const NOTHING: About = { pans: [], vessel: null }

/** The pans of a component, in the line's order. */
export const pansWith = (state: RunningState, component: string | null): readonly string[] =>
  component === null ? [] : linePansOf(state.station, component).map(({ id }) => id)

/** A place of food: the pan itself, or the pans that it stands behind. */
export const aboutPlace = (state: RunningState, what: string, id: string): About =>
  what === 'pan'
    ? { pans: [id], vessel: null }
    : { pans: pansWith(state, componentAt(state, what, id) ?? null), vessel: id }

export const aboutOf = (state: RunningState, task: Chosen): About => {
  switch (task.task) {
    case 'fill-backup':
      return {
        pans: pansWith(state, findBackup(state.station, task.id)?.component ?? null),
        vessel: task.id,
      }
    case 'batch':
      return aboutPlace(state, 'batch', task.id)
    case 'throw-out':
      return task.early ? aboutPlace(state, task.early.what, task.early.id) : NOTHING
    case 'selling':
      return task.what === 'component' ? { pans: pansWith(state, task.id), vessel: null } : NOTHING
    case 'read':
    case 'clock':
    case 'resolve':
    case 'handed-over':
      return task.what === 'shelf' || task.what === 'build'
        ? NOTHING
        : aboutPlace(state, task.what, task.id)
    case 'end':
      return task.hot
        ? {
            pans: [
              ...new Set(task.hot.flatMap(({ what, id }) => aboutPlace(state, what, id).pans)),
            ],
            vessel: null,
          }
        : aboutPlace(state, task.at.what, task.at.id)
    case 'round':
      return aboutPlace(state, task.at.what, task.at.id)
    case 'set-up':
    case 'read-here':
    case 'labels':
    case 'in-charge':
    case 'unpaid':
    case 'close':
      return NOTHING
    default:
      return 'pan' in task
        ? { pans: [task.pan], vessel: null }
        : { pans: pansWith(state, task.component), vessel: null }
  }
}
