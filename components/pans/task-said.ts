/** The sentences of a thing to do: on its card, and as one of those that follow. */
import { handedOverKind, sayHandedOver } from '#components/pans/handed-over-said.ts'
import { findPan } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Task } from '#lib/views/do-next.ts'
import { effectOfStopping } from '#lib/views/items-left.ts'
import type { ToDo } from '#lib/views/pans-to-do.ts'
import { refillOf } from '#lib/views/refill.ts'
import { calmWords } from '#lib/words/calm-en.ts'
import { doNextWords, type SaidHere } from '#lib/words/do-next-en.ts'
import { firstWords as safety } from '#lib/words/first-of-all-en.ts'
import { handedOverWords } from '#lib/words/handed-over-en.ts'
import { pansWords as words } from '#lib/words/pans-en.ts'

export interface TaskSaid {
  readonly title: string
  readonly why: readonly string[]
  readonly button: string
}

const refillSaid = (state: RunningState, pan: string): string =>
  state.pans[pan]?.amount === 0 ? words.loadPan : words.changePan

const SOLD_OUT_ACTS = { change: words.changePan, load: words.loadPan, start: words.startBatch }

/** The one way that is possible; '' where there is none. */
const soldOutAct = (state: RunningState, component: string): string => {
  const way = refillOf(state, component)
  return way === null ? '' : SOLD_OUT_ACTS[way]
}

const saidFact = (state: RunningState, toDo: ToDo): TaskSaid => {
  const name = nameIn(state.station)
  switch (toDo.kind) {
    case 'find':
      return {
        title: safety.findTitle(toDo.builds),
        why: [safety.findWhy(toDo.reason)],
        button: safety.toHandOver,
      }
    case 'hold':
      return {
        title: safety.holdTitle(toDo.builds),
        why: [safety.holdWhy(toDo.reason)],
        button: safety.toCounter,
      }
    case 'handed-over':
      return {
        title: handedOverWords.title(name(toDo.component), handedOverKind(toDo.what)),
        why: [sayHandedOver(state, toDo), handedOverWords.taskWhy],
        button: handedOverWords.open,
      }
    case 'read-label':
      return {
        title: safety.readTitle(toDo.name),
        why: [safety.readWhy],
        button: safety.readNow,
      }
    case 'product-before':
      return {
        title: words.beforeTitle(name(toDo.component)),
        why: [words.beforeWhy(toDo.ingredients)],
        button: refillSaid(state, toDo.pan),
      }
    case 'confirm-clock':
      return {
        title: words.clockTitle,
        why: [words.clockWhy(toDo.byMs)],
        button: words.clockConfirm,
      }
    case 'load':
      return {
        title: words.loadTitle(toDo.loads.length),
        why: [words.loadWhy],
        button: words.loadFirst(
          name(findPan(state.station, toDo.loads[0]?.pan ?? '')?.component ?? ''),
        ),
      }
    case 'short':
      return {
        title: words.shortTitle(name(toDo.component)),
        why: [words.shortWhy(toDo.lacking, toDo.builds)],
        button: words.shortOpen,
      }
    case 'sold-out':
      return {
        title: words.soldOutTitle(name(toDo.component)),
        why: words.effect(effectOfStopping(state, toDo.component), toDo.component, name),
        button: soldOutAct(state, toDo.component),
      }
    case 'nearly-empty':
      return {
        title: words.nearlyTitle(name(toDo.component)),
        why: [words.nearlyWhy(toDo.left)],
        button: refillSaid(state, toDo.pan),
      }
  }
}

/** While nothing is to be done. */
export const sayCalm = (calm: Parameters<typeof calmWords.calm>[0], here: SaidHere): TaskSaid => ({
  title: calm.notLasting.length > 0 ? calmWords.nothingNow : words.nothingToDo,
  why: calmWords.calm(calm, here),
  button: '',
})

export const sayTask = (state: RunningState, task: Task, here: SaidHere): TaskSaid => {
  if (task.kind === 'fact') return saidFact(state, task.toDo)
  const { reason } = task.advice
  return {
    title: doNextWords.title(reason, here),
    why: doNextWords.why(reason, here),
    button:
      reason.why === 'sold-out' ? soldOutAct(state, reason.component) : doNextWords.button(reason),
  }
}

export const sayTaskShortly = (state: RunningState, task: Task, here: SaidHere): string => {
  if (task.kind === 'advice') return doNextWords.shortly(task.advice.reason, here)
  const name = nameIn(state.station)
  const { toDo } = task
  switch (toDo.kind) {
    case 'find':
      return safety.find(toDo.builds, toDo.reason)
    case 'hold':
      return safety.hold(toDo.builds, toDo.reason)
    case 'handed-over':
      return handedOverWords.short(
        name(toDo.component),
        toDo.builds.length,
        handedOverKind(toDo.what),
      )
    case 'read-label':
      return safety.read(toDo.name)
    case 'product-before':
      return words.todo.before(name(toDo.component))
    case 'confirm-clock':
      return words.todo.clock
    case 'load':
      return words.todo.load(toDo.loads.length)
    case 'short':
      return words.todo.short(name(toDo.component), toDo.builds)
    case 'sold-out':
      return words.todo.soldOut(name(toDo.component))
    case 'nearly-empty':
      return words.todo.nearly(name(toDo.component), toDo.left)
  }
}
