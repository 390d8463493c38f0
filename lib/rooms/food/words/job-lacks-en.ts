/** What jobs under the line say they lack, and what is drawn beside them. */

import type { LoadStage } from '#lib/rooms/food/views/batch-loads.ts'
import type { ZoneKind } from '#lib/rooms/food/views/probe-scale.ts'
import { inSentence } from '#lib/words/findings-en.ts'

/** Of forms. */
export const jobLackWords = {
  putLack: 'Nothing that may go in is ready',
  washedLack: 'Say that it was washed',
  weighLack: 'Type the weight',
  weighLess: 'Less than the empty pan weighs',
  keepLack: 'Tap for whom',
  resolveLack: 'Tap what is done with it',
  throwLack: 'Tap what is thrown out',
  throwWhich: 'What was thrown out?',
  behindOf: (name: string) => `Behind ${inSentence(name)}`,
  behindBatch: 'batch',
} as const

const zone: Readonly<Record<ZoneKind, string>> = {
  'hot-enough': 'hot enough',
  'too-cool': 'too cool',
  'cold-enough': 'cold enough',
  'too-warm': 'too warm',
  starts: 'starts here',
  'first-stage': 'stage 1',
  'second-stage': 'stage 2',
}

/** Of the pad and its scale. */
export const padWords = { lackAnswer: 'Answer the question first', zone } as const

const loadIs: Readonly<Record<LoadStage, string>> = {
  finished: 'finished',
  cooked: 'cooked',
  waits: 'not yet',
}

/** Of pots. */
export const potWords = {
  eachLoad: 'Each load',
  loadIs,
  coolBy: (at: string) => `by ${at}`,
} as const
