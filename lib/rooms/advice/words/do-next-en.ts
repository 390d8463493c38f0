/** What the lead is told to do next, each with its reason in numbers. */

import type { AdviceReason, ByWhen } from '#lib/estimate/advice-reason.ts'
import { isDuty } from '#lib/rooms/advice/views/duty.ts'
import { dutyWords } from '#lib/rooms/advice/words/duty-en.ts'
import { outOfTen, type Range, rangeOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import type { SaidHere, SayTime } from '#lib/words/said-here.ts'

const allOf = (names: readonly string[]): string => list(names, 'and')
const loads = (count: number): string => counted(count, 'load', 'loads')
const minutes = (count: number): string => `${Math.max(1, Math.round(count))} min`

/** "12:05–12:20", "from 12:05" */
const sayRange = ({ from, to }: Range, time: SayTime): string =>
  to === null ? `from ${time(from)}` : from === to ? time(from) : `${time(from)}–${time(to)}`

/** The same in two parts, where one line is too narrow for it. */
const rangeParts = ({ from, to }: Range, time: SayTime): readonly string[] =>
  to === null || from === to ? [sayRange({ from, to }, time)] : [`${time(from)}–`, time(to)]

const runsOut = (by: ByWhen, chance: number, { time, now }: SaidHere): string => {
  const range = rangeOf(by, now)
  const odds = outOfTen(chance)
  const chances = `${counted(odds, 'chance', 'chances')} in 10`
  return range
    ? `May run out ${sayRange(range, time)}: ${chances}.`
    : `May run out before close: ${chances}.`
}

const whole = (portions: number): number => Math.max(0, Math.round(portions))

const startBatch = (
  reason: Extract<AdviceReason, { why: 'start-batch' }>,
  here: SaidHere,
): readonly string[] => {
  const making = here.making(reason.component)
  const [first, later] = [outOfTen(reason.gapIfNow), outOfTen(reason.gapIfLater)]
  const left = [whole(reason.leftWith), whole(reason.leftWithout)] as const
  return [
    runsOut(reason.by, reason.chance, here),
    `${reason.loads > 1 ? 'The first load on' : 'On'} the line ${here.time(reason.readyAt)}${making ? `, in ${minutes(making.minutes)}` : ''}.`,
    later > first
      ? `Start now: ${first} in 10 runs out first. In 5 min: ${later} in 10.`
      : `Start now: ${first} in 10 runs out first.`,
    ...(left[0] > 0 ? [`At close: ${left[0]} left, ${left[1]} without it.`] : []),
  ]
}

const title = (reason: AdviceReason, here: SaidHere): string => {
  const { name } = here
  if (isDuty(reason)) return dutyWords.title(reason, here)
  switch (reason.why) {
    case 'sold-out':
      return `Sold out: ${inSentence(name(reason.component))}`
    case 'start-batch':
      return `Start ${loads(reason.loads)} of ${inSentence(name(reason.component))}`
    case 'keep':
      return reason.keep > 0
        ? `Save ${reason.keep} ${inSentence(name(reason.component))} for ${allOf(reason.forItems.map(name))}`
        : `${name(reason.component)} won’t last`
    case 'measure':
      return `Look into the ${inSentence(name(reason.component))} pan`
  }
}

const why = (reason: AdviceReason, here: SaidHere): readonly string[] => {
  const { name, time } = here
  if (isDuty(reason)) return [dutyWords.why(reason, here)]
  switch (reason.why) {
    case 'sold-out':
      return [
        ...(reason.items.length > 0 ? [`${allOf(reason.items.map(name))} can’t be sold.`] : []),
        ...(reason.behind > 0
          ? [
              `${counted(reason.behind, 'portion is', 'portions are')} ready as back-up: change the pan.`,
            ]
          : []),
        reason.nextAt === null
          ? reason.behind > 0
            ? ''
            : 'No batch is under way.'
          : `The next batch is expected at ${time(reason.nextAt)}.`,
      ].filter((sentence) => sentence !== '')
    case 'start-batch':
      return startBatch(reason, here)
    case 'keep':
      return [
        `${runsOut(reason.by, reason.chance, here)} It can’t be made again today.`,
        reason.keep > 0
          ? `${reason.free} stay free for ${reason.withoutIt.length > 0 ? allOf(reason.withoutIt.map(name)) : 'all others'}.`
          : 'Nothing else takes it, so there is nothing to save: sell it until it is sold out.',
      ]
    case 'measure':
      return [
        `About ${whole(reason.left)} left, give or take ${Math.max(1, Math.round(reason.sd))}. One look tells whether it lasts.`,
        `Last looked at ${time(reason.lookedAt)}.`,
      ]
  }
}

const button = (reason: AdviceReason): string => {
  if (isDuty(reason)) return dutyWords.button(reason)
  switch (reason.why) {
    case 'sold-out':
      return 'Open the pan'
    case 'start-batch':
      return `Start ${loads(reason.loads)}`
    case 'keep':
      return reason.keep > 0 ? `Save ${reason.keep}` : 'Done'
    case 'measure':
      return 'Look now'
  }
}

const shortly = (reason: AdviceReason, here: SaidHere): string =>
  isDuty(reason) ? dutyWords.short(reason, here) : title(reason, here)

export const doNextWords = {
  range: sayRange,
  rangeParts,
  title,
  why,
  button,
  shortly,
  later: 'Later',
  no: 'No',
  putOff: 'It comes back in five minutes',
  declined: 'It isn’t told again for a while',
  rush: (until: string) => `rush until ${until}: only what is urgent`,
  lastingWord: { enough: 'enough', tight: 'tight', 'wont-last': 'won’t last' },
  goneBy: (range: string) => `sold out ${range}`,
  done: {
    started: (name: string, count: number) => `${name}: ${loads(count)} started`,
    saved: (name: string, count: number) => `${name}: ${count} saved`,
    seen: 'Done',
  },
} as const
