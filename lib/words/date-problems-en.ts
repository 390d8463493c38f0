/** Why days of food can't be, and that its last day is past. */
import type { DateProblem, ToldDay } from '#lib/safety/told-dates.ts'
import { sayDate } from '#lib/words/day-en.ts'

const ahead: Readonly<Record<ToldDay, (day: string) => string>> = {
  preparedOn: (day) => `It can’t have been opened or made on ${day}: that day is still to come.`,
  frozenOn: (day) => `It can’t have been frozen on ${day}: that day is still to come.`,
  thawedOn: (day) => `It can’t have come out of the freezer on ${day}: that day is still to come.`,
}

export const sayDateProblem = (problem: DateProblem): string => {
  switch (problem.code) {
    case 'day-ahead':
      return ahead[problem.what](sayDate(problem.on))
    case 'opened-after-use-by':
      return `It was opened or made after its use-by, ${sayDate(problem.useBy)}. Check both dates; else throw it out.`
    case 'no-first-day':
      return 'Say when it was opened or made: the days before it was frozen count.'
    case 'frozen-before-first-day':
      return 'It was frozen before it was opened or made. Check both days.'
    case 'thawed-before-frozen':
      return 'It came out of the freezer before it went in. Check both days.'
    case 'frozen-too-late':
      return 'Its days were over when it was frozen. Throw it out.'
  }
}

/** `lastDay`: a civil date, 2026-11-24. */
export const sayDateOver = (lastDay: string): string =>
  `Throw it out: its last day was ${sayDate(lastDay)}.`
