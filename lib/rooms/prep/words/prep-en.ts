/** What the crew's Prep screen says. */
import type { TaskIs } from '#lib/rooms/prep/views/prep-list.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import { sayDate } from '#lib/words/day-en.ts'

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
  doneOf: (done: number, count: number) => `${done} of ${count} done`,
  is: {
    done: 'done',
    late: 'late',
    now: 'now',
    'to-come': 'to come',
  } satisfies Readonly<Record<TaskIs, string>>,
  lateBy: (length: string) => `late by ${length}`,
  lateOnes: (count: number) => (count === 1 ? '1 task is late' : `${count} tasks are late`),
  notReady: (count: number) =>
    count === 1
      ? '1 task falls to nobody now. Tell the lead.'
      : `${count} tasks fall to nobody now. Tell the lead.`,
  passed: (far: string, where: string) => `${far}, ${where}`,
  initials: 'Your initials',
  done: 'Done',
  pass: 'Pass it on',
  takeBack: 'Not done after all',
  howFar: 'How far is it?',
  whereIs: 'Where is it?',
  passIt: 'Pass on',
  back: 'Back',
  reading: 'Read with a probe; the lead records it. A tick is no reading.',
  toRecord: 'Record it',
  lacksInitials: 'Type your initials',
  lacksFar: 'Say how far it is',
  lacksWhere: 'Say where it is',
  ticked: 'Ticked.',
  passedOn: 'Passed on.',
  takenBack: 'Taken back.',
  person: (isAdult: boolean, number: number) =>
    isAdult ? (number === 1 ? 'adult' : `adult ${number}`) : `student ${number}`,
  by: (names: readonly string[]) => (names.length === 0 ? 'nobody yet' : names.join(', then ')),
} as const
