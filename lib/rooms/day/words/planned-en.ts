/** What the first page says of services that are planned. */
import type { PlannedHere } from '#lib/rooms/day/views/services-here.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDate } from '#lib/words/day-en.ts'

type Times = Pick<PlannedHere, 'on' | 'opensAt' | 'closesAt' | 'kind'>

type Food = Pick<PlannedHere, 'batches' | 'inNoBatch'>

const WAY_OF_BEGUN =
  'What is begun and in no batch is forgotten with the plan: throw it out first, or enter it as a batch.'

/** "Thu, Nov 26, 11:00 AM to 1:00 PM" */
const sayTimes = ({ on, opensAt, closesAt, kind }: Times, timeZone: string): string =>
  [
    `${sayDate(on)}, ${sayClock(opensAt, timeZone)} to ${sayClock(closesAt, timeZone)}`,
    ...(kind === 'practice' ? ['practice'] : []),
  ].join(' · ')

export const plannedWords = {
  title: 'Planned',
  times: sayTimes,
  prepared: ({ batches, inNoBatch = [] }: Food) =>
    [
      ...(batches > 0 ? [`${counted(batches, 'batch', 'batches')} prepared`] : []),
      ...(inNoBatch.length > 0 ? [`begun, and in no batch: ${list(inNoBatch, 'and')}`] : []),
    ].join(' · ') || 'nothing prepared yet',
  over: 'over, never opened',
  overWay: ({ batches, inNoBatch = [] }: Food) =>
    [
      ...(batches > 0
        ? [
            'Its food is still here: under Batches and readings each batch comes to its end, with initials.',
          ]
        : []),
      ...(inNoBatch.length > 0 ? [WAY_OF_BEGUN] : []),
      batches > 0 || inNoBatch.length > 0 ? 'Then drop it.' : 'Drop it.',
    ].join(' '),
  dropBegun: WAY_OF_BEGUN,
  today: 'today',
  planOne: 'Plan a service',
  planOneWhat: 'Day, doors, guests, crew. Prep begins the day before.',
  look: 'Look',
  standing: (station: string, times: Times, timeZone: string) =>
    `${station}: planned for ${sayTimes(times, timeZone)}.`,
  follows: 'This page follows the planned service; the line’s tablets follow the open one.',
  otherDay: (day: string) => `It is planned for another day than today (${day}).`,
  open: 'Open this service',
  openWhat: 'On the newest line, with all that was prepared for it.',
  toPlan: 'To its plan',
  toPrep: 'To its prep',
  toBatches: 'Batches and readings',
  back: 'Back',
  drop: 'Drop the plan',
  dropSure: 'Yes, drop it',
  dropped: 'Dropped: it is never opened.',
} as const
