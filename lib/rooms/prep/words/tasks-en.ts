/** Tasks of the preparation, as the plan and the crew's tablets call them. */
import type { Task, TaskKind, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import type { DoorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import type { GoesBack } from '#lib/rooms/prep/facts/out-of-cold.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { HowFar, PassedWhere } from '#lib/service/events/prep-event.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayWeekday } from '#lib/words/day-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

/** A name stands where a sentence doesn't begin. */
const KIND: Readonly<Record<TaskKind, (name: string) => string>> = {
  thaw: (name) => `${name}: into the cooler to thaw`,
  chill: (name) => `${name}: cans into the cooler`,
  measure: (name) => `${name}: weigh out`,
  make: (name) => name,
  cook: (name) => `Cook ${inSentence(name)}`,
  sanitize: (name) => `Wash, rinse, sanitize after ${inSentence(name)}`,
  cool: (name) => `Start cooling ${inSentence(name)}: 135 °F or above`,
  'read-first': (name) => `Read ${inSentence(name)}: 70 °F or below`,
  'read-cold': (name) => `Read ${inSentence(name)}: 41 °F or below`,
  reheat: (name) => `Reheat ${inSentence(name)}`,
  labels: () => 'Labels for the pans',
  tools: () => 'Scoops and tools to the line',
  load: () => 'Read and load the line',
  serve: () => 'Serve',
}

/** In a box below its pan, which says of what. */
const WORD: Readonly<Record<TaskKind, string>> = {
  thaw: 'thaw',
  chill: 'chill cans',
  measure: 'weigh',
  make: 'prep',
  cook: 'cook',
  sanitize: 'sanitize',
  cool: '135 °F',
  'read-first': '70 °F',
  'read-cold': '41 °F',
  reheat: 'reheat',
  labels: 'Labels for the pans',
  tools: 'Scoops and tools to the line',
  load: 'Read and load the line',
  serve: 'Serve',
}

const LACK: Readonly<Record<UnreadyWhy, (clock: string) => string>> = {
  'nobody-there': (clock) => `Nobody is here at ${clock}`,
  'no-adult': (clock) => `No certified adult at ${clock}`,
  'no-hands': (clock) => `No hands or table free at ${clock}`,
  'too-late': (clock) => `No time left before ${clock}`,
}

const loadsSaid = (loads: number): string => (loads === 1 ? '1 load' : `${loads} loads`)

/** "2 h 5 min" of whole minutes. */
const hours = (minutes: number): string => {
  const rest = minutes % 60
  const whole = Math.floor(minutes / 60)
  const parts = [whole > 0 ? `${whole} h` : '', rest > 0 ? `${rest} min` : '']
  return parts.filter((part) => part !== '').join(' ')
}

export const tasksEn = {
  hours,
  taskName: ({ kind }: Pick<Task, 'kind'>, name: string) => KIND[kind](name),
  taskWord: WORD,
  loads: loadsSaid,
  /** "2 loads, 48 × 1/2 cup = 6 qt". */
  amount: ({ amount }: Pick<Task, 'amount'>, total: PortionTotal | null): string | null =>
    amount &&
    `${loadsSaid(amount.loads)}, ${total === null ? `${amount.portions} portions` : sayPortionTotal(total)}`,
  lack: (why: UnreadyWhy, clock: string): string => LACK[why](clock),
  /** Of food that isn't on the line as the doors open: "Beans: ready 11:35, doors 11:20". */
  missesDoors: (
    name: string,
    { isBegun }: Pick<DoorsMissed, 'isBegun'>,
    clocks: { readonly ready: string; readonly doors: string },
  ): string =>
    `${name}: ready ${clocks.ready}${isBegun ? '' : ' if begun now'}, doors ${clocks.doors}`,
  /** "Also rice 11:31, pita 11:25 and 4 more". */
  alsoMiss: (
    others: readonly { readonly name: string; readonly ready: string }[],
    more: number,
  ): string => {
    const said = others.map(({ name, ready }) => `${inSentence(name)} ${ready}`)
    return `Also ${list(more === 0 ? said : [...said, `${more} more`], 'and')}`
  },
  /** Of the food of a task: "Ready 11:35: 15 min after the doors". */
  readyLate: ({ isBegun }: Pick<DoorsMissed, 'isBegun'>, ready: string, length: string): string =>
    `Ready ${ready}${isBegun ? '' : ' if begun now'}: ${length} after the doors.`,
  tasks: 'Tasks',
  /** Of the crew, whose initials aren't told. */
  person: (isAdult: boolean, number: number) =>
    isAdult ? (number === 1 ? 'adult' : `adult ${number}`) : `student ${number}`,
  weekday: sayWeekday,
  nobody: 'nobody',
  /** Of food that was weighed out and waits for its making. */
  goesBack: ({ held, limit }: GoesBack, scale: Scale): string =>
    `${held === 'cold' ? 'Straight back' : 'What came cold: straight back'} into the cooler. Cover it, label it with name, day and hour. ${safetyWords.limit(limit, scale)}.`,
  where: {
    cooler: 'in the cooler',
    freezer: 'in the freezer',
    range: 'on the range',
    oven: 'in the oven',
    table: 'on the table',
    ice: 'in ice',
    line: 'at the line',
  } satisfies Readonly<Record<PassedWhere, string>>,
  far: { 1: 'begun', 2: 'half done', 3: 'nearly done' } satisfies Readonly<Record<HowFar, string>>,
} as const
