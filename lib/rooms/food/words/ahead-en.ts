/** What is said where food of a planned service is made. */
import { counted } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'

export const aheadWords = {
  title: (on: string) => `Make for ${sayDate(on)}`,
  connecting: 'Looking for the planned service …',
  none: 'This service isn’t planned any more. What is open is on Pans.',
  noService: 'Which planned service? Go there from the first page.',
  first: 'Tap a food to start its batch. Tap its pot to say what it was read at, and what it gave.',
  allStarted: 'All batches are started. Tap a pot to say what it was read at, and what it gave.',
  allMade: 'All batches are made and wait for the service.',
  goOn: (name: string, stage: string) => `${name}: ${stage}`,
  cools: 'To be cooled',
  over: 'This service is over and was never opened. Its food is still here: say what becomes of each batch, with initials.',
  endFood: 'End what is left',
  ofPack: (name: string) => `${name} comes out of a pack: nothing of it is made ahead.`,
  /** In its pan, as lines: loads of the plan that nobody has started yet. */
  toMake: (loads: number) =>
    loads === 0 ? 'all\nstarted' : `make\n${counted(loads, 'load', 'loads')}`,
  fromPack: 'from\na pack',
  toPlanned: 'To the planned service',
  toPrep: 'To its prep',
  toPans: 'To Pans',
  toStart: 'To the first page',
} as const
