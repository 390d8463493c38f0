/** Why so much of a component is planned: one sentence, then the figures behind it. */
import type { RealDays } from '#lib/estimate/par/real-days.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayDate, sayWeekdayInFull } from '#lib/words/day-en.ts'

const outOf100 = (share: number): string => {
  const count = Math.round(100 * share)
  return count === 0 ? 'Fewer than 1 build in 100 takes it' : `${count} of 100 builds take it`
}

/** First and last of them by the calendar. */
const between = ({ days }: RealDays): string => {
  const on = days.map((day) => day.on).sort()
  return `${sayDate(on[0] ?? '')} to ${sayDate(on.at(-1) ?? '')}`
}

export const parEn = {
  /** Days of ten on which it is enough; where it is so on half of them or fewer, how often it isn't. */
  enough: (portions: number, days: number) => {
    const what = portions === 0 ? 'None' : `${portions} portions`
    return days * 2 > 10
      ? `${what}: enough on ${days} days of 10.`
      : `${what}: runs out on ${10 - days} days of 10.`
  },
  /** Where it runs out, what guests are thought to take. */
  instead: (names: readonly string[]) => `Then guests take ${list(names, 'or')}.`,
  oneMore: (money: string) => `One load more would leave about ${money} over.`,
  take: (mean: number, share: number, guests: number | null) =>
    guests === null
      ? `About ${Math.round(mean)} portions wanted: ${outOf100(share)}`
      : `About ${Math.round(mean)} portions for ${guests} guests: ${outOf100(share)}`,
  from: (past: number) =>
    past === 0
      ? 'No record yet: a guess by the menu'
      : past === 1
        ? 'From 1 service so far'
        : `From ${past} services so far`,
  atHand: (portions: number, lastDay: string | null) =>
    lastDay === null
      ? `In the larder: ${portions}`
      : `In the larder: ${portions}, the first to use by ${sayDate(lastDay)}`,
  taken: (portions: number) => `Taken from the larder for it already: ${portions}`,
  promised: (on: string, lots: number) =>
    lots === 1
      ? `1 lot in the larder is for ${sayWeekdayInFull(on)}’s service`
      : `${lots} lots in the larder are for ${sayWeekdayInFull(on)}’s service`,
  notCounted: (lots: number) =>
    lots === 1
      ? '1 more in the larder isn’t counted: look at it there'
      : `${lots} more in the larder aren’t counted: look at them there`,
  left: (money: string, isCarried: boolean) =>
    isCarried
      ? `One left over: ${money}, it may go to the next service`
      : `One left over: ${money}`,
  lost: (money: string) => `One too few: ${money}`,
  /** Which days they are; computed ones are told by the legend. */
  dots: (real: RealDays, enough: number) =>
    `The dots are 10 real days${real.sameWeekday ? ' of this weekday' : ''}, ${between(real)}: enough on ${enough}`,
} as const
