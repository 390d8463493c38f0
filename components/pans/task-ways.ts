/** What is told of a thing to do, and the ways in which a pan is filled again. */
import type { Chosen } from '#components/job/chosen.ts'
import type { About } from '#components/pans/about.ts'
import type { PansWords } from '#components/pans/words.tsx'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

/** What is told of one. */
export interface Told {
  readonly title: string
  readonly why: readonly string[]
  readonly button: string
  /** In a list of several. */
  readonly short: string
  /** Below its pan. */
  readonly hang: string
  /** What a tap opens; null where it is an act, or another screen. */
  readonly opens: Chosen | null
  readonly about: About
}

export interface Here {
  readonly words: PansWords
  readonly state: RunningState
  readonly here: SaidHere
}

export const NO_PAN: About = { pans: [], vessel: null }

export const onPan = (pan: string): About => ({ pans: [pan], vessel: null })

export const refill = (state: RunningState, pan: string): Chosen => ({
  task: 'put',
  pan,
  way: state.pans[pan]?.amount === 0 ? 'load' : 'change',
})

type Way = Pick<Told, 'button' | 'hang' | 'opens'>

export const refillWay = ({ words, state }: Here, pan: string): Way => {
  const isEmpty = state.pans[pan]?.amount === 0
  return {
    button: isEmpty ? words.loadPan : words.changePan,
    hang: isEmpty ? words.onLine.hang.load : words.onLine.hang.change,
    opens: refill(state, pan),
  }
}

/** What can be done now about a component of which none is left; where nothing can, its pan is shown. */
export const soldOutWay = (told: Here, component: string, pan: string): Way => {
  const { words, state } = told
  switch (refillOf(state, component)) {
    case 'change':
      return { ...refillWay(told, pan), opens: { task: 'put', pan, way: 'change' } }
    case 'load':
      return refillWay(told, pan)
    case 'start':
      return {
        button: words.startBatch,
        hang: words.onLine.hang.start,
        opens: { task: 'start-batch', component },
      }
    case null:
      return { button: '', hang: words.onLine.hang.open, opens: { task: 'pan', pan } }
  }
}
