/** The sentences of a thing to do: on its card, and as one of those that follow. */

import { handedOverKind, sayHandedOver } from '#components/care/handed-over-said.ts'
import type { PansWords } from '#components/pans/words.tsx'
import type { Task } from '#lib/rooms/advice/views/do-next.ts'
import type { ToDo } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import { effectOfStopping } from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

export interface TaskSaid {
  readonly title: string
  readonly why: readonly string[]
  readonly button: string
}

const refillSaid = (words: PansWords, state: RunningState, pan: string): string =>
  state.pans[pan]?.amount === 0 ? words.loadPan : words.changePan

/** The one way that is possible; '' where there is none. */
const soldOutAct = (words: PansWords, state: RunningState, component: string): string => {
  const way = refillOf(state, component)
  if (way === null) return ''
  return { change: words.changePan, load: words.loadPan, start: words.startBatch }[way]
}

const saidFact = (words: PansWords, state: RunningState, toDo: ToDo): TaskSaid => {
  const name = nameIn(state.station)
  switch (toDo.kind) {
    case 'find':
      return {
        title: words.first.findTitle(toDo.builds),
        why: [words.first.findWhy(toDo.reason)],
        button: words.first.toHandOver,
      }
    case 'hold':
      return {
        title: words.first.holdTitle(toDo.builds),
        why: [words.first.holdWhy(toDo.reason)],
        button: words.first.toCounter,
      }
    case 'handed-over':
      return {
        title: words.givenOut.title(name(toDo.component), handedOverKind(toDo.what)),
        why: [sayHandedOver(words, state, toDo), words.givenOut.taskWhy],
        button: words.givenOut.open,
      }
    case 'read-label':
      return {
        title: words.first.readTitle(toDo.name),
        why: [words.first.readWhy],
        button: words.first.readNow,
      }
    case 'product-before':
      return {
        title: words.beforeTitle(name(toDo.component)),
        why: [words.beforeWhy(toDo.ingredients)],
        button: refillSaid(words, state, toDo.pan),
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
        button: soldOutAct(words, state, toDo.component),
      }
    case 'nearly-empty':
      return {
        title: words.nearlyTitle(name(toDo.component)),
        why: [words.nearlyWhy(toDo.left)],
        button: refillSaid(words, state, toDo.pan),
      }
  }
}

/** While nothing is to be done. */
export const sayCalm = (
  words: PansWords,
  calm: Parameters<typeof words.calm.calm>[0],
  here: SaidHere,
): TaskSaid => ({
  title: calm.notLasting.length > 0 ? words.calm.nothingNow : words.nothingToDo,
  why: words.calm.calm(calm, here),
  button: '',
})

export const sayTask = (
  words: PansWords,
  state: RunningState,
  task: Task,
  here: SaidHere,
): TaskSaid => {
  if (task.kind === 'fact') return saidFact(words, state, task.toDo)
  const { reason } = task.advice
  return {
    title: words.advice.title(reason, here),
    why: words.advice.why(reason, here),
    button:
      reason.why === 'sold-out'
        ? soldOutAct(words, state, reason.component)
        : words.advice.button(reason),
  }
}

export const sayTaskShortly = (
  words: PansWords,
  state: RunningState,
  task: Task,
  here: SaidHere,
): string => {
  if (task.kind === 'advice') return words.advice.shortly(task.advice.reason, here)
  const name = nameIn(state.station)
  const { toDo } = task
  switch (toDo.kind) {
    case 'find':
      return words.first.find(toDo.builds, toDo.reason)
    case 'hold':
      return words.first.hold(toDo.builds, toDo.reason)
    case 'handed-over':
      return words.givenOut.short(
        name(toDo.component),
        toDo.builds.length,
        handedOverKind(toDo.what),
      )
    case 'read-label':
      return words.first.read(toDo.name)
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
