/** The prep sheet in English. */
import type { Split } from '#lib/paper/lists/batches-in.ts'
import type { Cooling, Named, PrepRow, PrepSection, ReadFor } from '#lib/paper/prep/prep-facts.ts'
import type { Task } from '#lib/prep/prep-plan.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import type { TemperatureLimit } from '#lib/safety/limits.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { sayAmount } from '#lib/words/recipe/measures-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { needName } from '#lib/words/service-en.ts'

const names = (codes: readonly string[]): string => list(codes.map(needName), 'and')

/** What isn't known is never said as none. */
const named = ({ contains, mayContain, unknown }: Named): readonly string[] => {
  const said = [
    ...(contains.length > 0 ? [`Contains ${names(contains)}.`] : []),
    ...(mayContain.length > 0 ? [`May contain ${names(mayContain)}.`] : []),
  ]
  if (unknown.length > 0) said.push(`Not known: ${names(unknown)}.`)
  return said.length > 0
    ? said
    : ['No allergen named on labels read. No promise: shared line, ask.']
}

const period = ({ on, period: one }: Pick<PrepSection, 'on' | 'period'>, timeZone: string) =>
  one === null
    ? `${sayDate(on)}: outside class periods`
    : `${sayDate(on)}: ${one.name}, ${sayClock(one.from, timeZone)} to ${sayClock(one.to, timeZone)}`

/** "2 batches of 10 in the soup pot (4 qt): 2 qt 2 cups each." Whole portions of a batch, or none. */
const split = ({ batches, vessel, isFitKnown }: Split, portions: number): string => {
  const where = vessel === null ? '' : ` in the ${inSentence(vessel.name)} (${vessel.holds})`
  const unknown = isFitKnown ? '' : `Made${where}: whether it fits isn’t known, look first. `
  if (batches === null) return unknown.trim()
  const { count, each } = batches
  if (count === 1) return vessel === null || !isFitKnown ? unknown.trim() : `At once${where}.`
  const many =
    portions % count === 0 ? `${count} batches of ${portions / count}` : `${count} even batches`
  return `${unknown}${many}${isFitKnown ? where : ''}: ${sayAmount(each)} each.`
}

export const prepSheetEn = {
  title: 'Prep sheet',
  clock: sayClock,
  sub: (on: string, doorsOpen: string, guests: number | null) =>
    `For ${sayDate(on)}, opens ${doorsOpen}${guests === null ? '' : `, ${counted(guests, 'guest', 'guests')}`}`,
  section: period,
  again: (title: string) => `… ${title}`,
  who: (all: readonly string[]) => all.join(', '),
  nobody: 'nobody yet',
  person: tasksEn.person,
  task: ({ kind }: Pick<Task, 'kind'>, name: string) => tasksEn.taskName({ kind }, name),
  amount: (task: Pick<Task, 'amount'>) => tasksEn.amount(task, null) ?? '',
  amountAnd: (amount: string, total: string) => (amount === '' ? total : `${amount}: ${total}`),
  /** "24 × 1/2 cup = 3 qt"; "36 × 1 = 36 pieces". */
  total: (portions: number, portion: Amount) => sayPortionTotal(portionTotal(portion, portions)),
  split,
  taste: (all: readonly string[]) =>
    `By taste: ${list(all, 'and')}. Put in part, taste, then the rest.`,
  raw: 'RAW: after all ready-to-eat food, on its own board. Wash hands after.',
  goesBack: tasksEn.goesBack,
  pans: (numbers: readonly number[]) =>
    numbers.length === 0
      ? ''
      : `${numbers.length === 1 ? 'Pan' : 'Pans'} ${list(numbers.map(String), 'and')}`,
  named,
  discard: (at: NonNullable<PrepRow['discard']>, timeZone: string) =>
    `Discard by ${sayDay(at, timeZone)}, ${sayClock(at, timeZone)}.`,
  limit: (read: ReadFor, scale: Scale) =>
    read.kind === 'heat'
      ? `Heat to ${safetyWords.heat(read.limit, scale)}`
      : safetyWords.limit(read.limit, scale),
  cooling: ({ from, firstTo, to, first, total }: Cooling, scale: Scale) => {
    const said = (limit: TemperatureLimit) =>
      safetyWords.degrees({ tenths: limit.tenths[scale], scale })
    return `Cool it in two stages: ${said(from)} to ${said(firstTo)} within ${first / HOUR_MS} h, to ${said(to)} within ${total / HOUR_MS} h in all.`
  },
  blanks: { time: 'time', read: '', initials: 'initials', cooling: 'cooling from' },
  degrees: (scale: Scale) => `°${scale}`,
  dry: 'dry: no reading',
  foot: 'Black in the small line: the pan that it goes into. Another label than last time: call the person in charge.',
  inCharge: 'In charge',
} as const
