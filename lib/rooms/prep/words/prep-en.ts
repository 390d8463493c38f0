/** What the crew's Prep screen says. */
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import type { OutOfCold } from '#lib/rooms/prep/facts/out-of-cold.ts'
import type { TaskIs } from '#lib/rooms/prep/views/prep-list.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

/** Of food that lies half done where nothing keeps it cold. */
const out = (
  { is, since, backBy, throwOutAt, limit }: OutOfCold,
  clock: (at: number) => string,
  scale: Scale,
): string => {
  switch (is) {
    case 'in-time':
      return `Out of the cooler since ${clock(since)}: back in, or go on with it, by ${clock(backBy)}.`
    case 'too-long':
      return `Out of the cooler since ${clock(since)}. Read it now: not ${safetyWords.limit(limit, scale)}? Call the person in charge. At ${clock(throwOutAt)} it is thrown out.`
    case 'over':
      return `Out of the cooler since ${clock(since)}, over 4 hours: don’t go on. Call the person in charge, and throw it out.`
  }
}

export const prepEn = {
  ...tasksEn,
  title: 'Prep',
  titleOf: (on: string) => `Prep for ${sayDate(on)}`,
  doors: (clock: string) => `doors open ${clock}`,
  connecting: 'Connecting…',
  none: 'Nothing is planned',
  noneWhy: 'The lead plans a day on the Plan screen. Then its tasks are here.',
  overWhy: 'The last plan is over and was never opened. The lead drops it on the first page.',
  notIn: 'This device isn’t in yet',
  notInWhy: 'Join it with a code of the lead’s screen. Then the tasks are here.',
  notTaken: 'The plan has no tasks yet',
  notTakenWhy: 'The lead takes the loads on the Plan screen first.',
  toStart: 'First page',
  sub: (isOpen: boolean, isPractice: boolean, clock: string) =>
    [isOpen ? 'open now' : 'planned', ...(isPractice ? ['practice'] : []), clock].join(' · '),
  whose: 'Whose tasks',
  everybody: 'all',
  /** Of a reading whose pot cools. */
  readBy: (time: string) => `by ${time}`,
  doneOf: (done: number, count: number) => `${done} of ${count} done`,
  is: {
    done: 'done',
    late: 'late',
    now: 'now',
    'to-come': 'to come',
  } satisfies Readonly<Record<TaskIs, string>>,
  lateBy: (length: string) => `late by ${length}`,
  lateOnes: (count: number) => (count === 1 ? '1 task is late' : `${count} tasks are late`),
  /** On a pan that misses the doors, before its time. */
  readyAt: 'ready',
  notReady: (count: number) =>
    count === 1
      ? '1 task falls to nobody now. Tell the lead.'
      : `${count} tasks fall to nobody now. Tell the lead.`,
  passed: (far: string, where: string) => `${far}, ${where}`,
  out,
  /** Of a pot that cools: both of its hours. */
  coolPot: batchWords.coolPot,
  coolAfter: batchWords.coolAfter,
  /** In a box below its pan. */
  outShort: ({ is, backBy }: OutOfCold, time: (at: number) => string): string =>
    is === 'in-time' ? `cooler by ${time(backBy)}` : is === 'over' ? 'throw out' : 'out too long',
  /** Before it is passed on there; how long is common practice, as no paragraph sets it. */
  outIf: (by: string) =>
    `Cold food doesn’t wait here: back in the cooler by ${by} at the latest. Better now.`,
  intoCooler: 'Into the cooler',
  inCooler: 'It’s in the cooler',
  initials: 'Your initials',
  /** In the place to type on, beside those who are there. */
  otherInitials: 'other',
  done: 'Done',
  pass: 'Pass it on',
  takeBack: 'Not done after all',
  howFar: 'How far is it?',
  whereIs: 'Where is it?',
  passIt: 'Pass on',
  back: 'Back',
  reading: 'Read with a probe; the lead records it. A tick is no reading.',
  toRecord: 'Record it',
  lacksInitials: 'Who did it?',
  lacksFar: 'Say how far it is',
  lacksWhere: 'Say where it is',
  ticked: 'Ticked.',
  passedOn: 'Passed on.',
  takenBack: 'Taken back.',
  by: (names: readonly string[]) => (names.length === 0 ? 'nobody yet' : names.join(', then ')),
} as const
