/** Every thing that the lead is told to do: its sentences, what it opens, and which pan it is about. */
import { handedOverKind, sayHandedOver } from '#components/care/handed-over-said.ts'
import { aboutPlace } from '#components/pans/about.ts'
import { holdTold, needsIn } from '#components/pans/hold-told.ts'
import { roundOpens } from '#components/pans/round-marks.ts'
import { adviceButton, adviceWay } from '#components/pans/task-advice.ts'
import {
  type Here,
  NO_PAN,
  onPan,
  refill,
  refillWay,
  soldOutWay,
  type Told,
} from '#components/pans/task-ways.ts'
import type { PansWords } from '#components/pans/words.tsx'
import type { Task } from '#lib/rooms/advice/views/do-next.ts'
import { pansHolding } from '#lib/rooms/care/facts/mixing.ts'
import type { Round } from '#lib/rooms/food/facts/round.ts'
import { toStart } from '#lib/rooms/food/views/start-batch.ts'
import type { ToDo } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { effectOfStopping, whyNone } from '#lib/rooms/pans/views/items-left.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

type OfKind<Kind extends ToDo['kind']> = Extract<ToDo, { kind: Kind }>

const FACTS: {
  readonly [Kind in ToDo['kind']]: (told: Here, toDo: OfKind<Kind>) => Told
} = {
  find: ({ words, state }, { builds, reason }) => ({
    title: words.first.findTitle(builds),
    why: [words.first.findWhy(reason, needsIn(state, builds))],
    button: words.first.toHandOver,
    short: words.first.find(builds, reason),
    hang: '',
    opens: null,
    about: NO_PAN,
  }),
  hold: holdTold,
  'handed-over': (told, toDo) => {
    const { words, state } = told
    const name = nameIn(state.station)(toDo.component)
    const kind = handedOverKind(toDo.what)
    const isFood = toDo.what !== 'shelf' && toDo.what !== 'build'
    return {
      title: words.givenOut.title(name, kind, toDo.because),
      why: [sayHandedOver(words, state, toDo), words.givenOut.taskWhy],
      button: words.givenOut.open,
      short: words.givenOut.short(name, toDo.builds.length, kind),
      hang: words.onLine.hang.answer,
      opens: { task: 'handed-over', what: toDo.what, id: toDo.id },
      about: isFood ? aboutPlace(state, toDo.what, toDo.id) : NO_PAN,
    }
  },
  'read-label': ({ words, state }, { name, ingredient }) => ({
    title: words.first.readTitle(name),
    why: [words.first.readWhy],
    button: words.first.readNow,
    short: words.first.read(name),
    hang: words.onLine.hang.label,
    opens: { task: 'labels', ingredient },
    about: { pans: pansHolding(state, ingredient), vessel: null },
  }),
  'product-before': (told, { component, ingredients, pan }) => {
    const { words, state } = told
    const name = nameIn(state.station)(component)
    return {
      title: words.beforeTitle(name),
      why: [words.beforeWhy(ingredients)],
      short: words.todo.before(name),
      ...refillWay(told, pan),
      about: onPan(pan),
    }
  },
  'confirm-clock': ({ words }, { byMs }) => ({
    title: words.clockTitle,
    why: [words.clockWhy(byMs)],
    button: words.clockConfirm,
    short: words.todo.clock,
    hang: '',
    opens: null,
    about: NO_PAN,
  }),
  load: ({ words, state }, { loads }) => {
    const [first] = loads
    const isLine = loads.length > 1
    const waits = toStart(state).length
    return {
      title: words.loadTitle(loads.length),
      why: [waits > 0 ? words.loadBatches(waits) : words.loadWhy],
      button: isLine
        ? words.loadLine
        : words.loadFirst(
            nameIn(state.station)(findPan(state.station, first?.pan ?? '')?.component ?? ''),
          ),
      short: words.todo.load(loads.length),
      hang: words.onLine.hang.load,
      opens: isLine ? { task: 'set-up' } : first ? refill(state, first.pan) : null,
      about: first ? onPan(first.pan) : NO_PAN,
    }
  },
  short: ({ words, state }, { component, lacking, builds, pan }) => {
    const name = nameIn(state.station)(component)
    return {
      title: words.shortTitle(name),
      why: [words.shortWhy(lacking, builds)],
      button: words.shortOpen,
      short: words.todo.short(name, builds),
      hang:
        whyNone(state, component) === 'not-served'
          ? words.onLine.hang.waitFor
          : words.onLine.hang.short,
      opens: { task: 'short', component },
      about: onPan(pan),
    }
  },
  'sold-out': (told, { component, pan }) => {
    const { words, state } = told
    const name = nameIn(state.station)
    return {
      title: words.soldOutTitle(name(component)),
      why: words.effect(effectOfStopping(state, component), component, name),
      short: words.todo.soldOut(name(component)),
      ...soldOutWay(told, component, pan),
      about: onPan(pan),
    }
  },
  'nearly-empty': (told, { component, left, pan }) => {
    const { words, state } = told
    const name = nameIn(state.station)(component)
    return {
      title: words.nearlyTitle(name),
      why: [words.nearlyWhy(left)],
      short: words.todo.nearly(name, left),
      ...refillWay(told, pan),
      about: onPan(pan),
    }
  },
}

const roundTold = ({ words, state, here }: Here, round: Round): Told => {
  const { title, why, button, short } = words.roundTask
  const opens = roundOpens(round, here.now)
  return {
    title: title(round, here),
    why: why(round, here),
    button,
    short: short(round, here),
    hang: short(round, here),
    opens,
    about: opens ? aboutPlace(state, opens.at.what, opens.at.id) : NO_PAN,
  }
}

export const tell = (words: PansWords, state: RunningState, task: Task, here: SaidHere): Told => {
  const told: Here = { words, state, here }
  if (task.kind === 'fact') {
    const of = FACTS[task.toDo.kind] as (told: Here, toDo: ToDo) => Told
    return of(told, task.toDo)
  }
  if (task.kind === 'round') return roundTold(told, task.round)
  const { reason } = task.advice
  return {
    title: words.advice.title(reason, here),
    why: words.advice.why(reason, here),
    button: adviceButton(told, reason),
    short: words.advice.shortly(reason, here),
    ...adviceWay(told, reason),
  }
}
