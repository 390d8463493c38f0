/** Tasks of the preparation, as the plan and the crew's tablets call them. */
import type { Task, TaskKind, UnreadyWhy } from '#lib/prep/prep-plan.ts'
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import type { HowFar, PassedWhere } from '#lib/service/events/prep-event.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'

/** A name stands where a sentence doesn't begin. */
const KIND: Readonly<Record<TaskKind, (name: string) => string>> = {
  thaw: (name) => `${name}: into the cooler to thaw`,
  chill: (name) => `${name}: cans into the cooler`,
  measure: (name) => `${name}: weigh out`,
  make: (name) => name,
  cook: (name) => `Cook ${name}`,
  sanitize: (name) => `Wash, rinse, sanitize after ${name}`,
  'read-first': (name) => `Read ${name}: 70 °F or below`,
  'read-cold': (name) => `Read ${name}: 41 °F or below`,
  reheat: (name) => `Reheat ${name}`,
  labels: () => 'Labels for the pans',
  tools: () => 'Scoops and tools to the line',
  load: () => 'Read and load the line',
  serve: () => 'Serve',
}

const SHORT: Readonly<Record<TaskKind, (name: string) => string>> = {
  ...KIND,
  thaw: (name) => `Thaw ${name}`,
  chill: (name) => `Chill cans, ${name}`,
  measure: (name) => `Weigh ${name}`,
  sanitize: () => 'Wash, sanitize',
  'read-first': () => '70 °F',
  'read-cold': () => '41 °F',
  labels: () => 'Labels',
  tools: () => 'Tools',
  load: () => 'read and load the line',
}

const loadsSaid = (loads: number): string => (loads === 1 ? '1 load' : `${loads} loads`)

export const tasksEn = {
  taskName: ({ kind }: Pick<Task, 'kind'>, name: string) => KIND[kind](name),
  taskShort: ({ kind }: Pick<Task, 'kind'>, name: string) => SHORT[kind](name),
  loads: loadsSaid,
  /** "2 loads, 48 × 1/2 cup = 6 qt". */
  amount: ({ amount }: Pick<Task, 'amount'>, total: PortionTotal | null): string | null =>
    amount &&
    `${loadsSaid(amount.loads)}, ${total === null ? `${amount.portions} portions` : sayPortionTotal(total)}`,
  lack: (why: UnreadyWhy, what: string, clock: string): string => {
    switch (why) {
      case 'nobody-there':
        return `Nobody is here at ${clock} for this: ${what}.`
      case 'no-adult':
        return `No certified adult is here at ${clock} for this: ${what}.`
      case 'no-hands':
        return `At ${clock} no hands or no table are free for this: ${what}.`
      case 'too-late':
        return `There is no time left for this before ${clock}: ${what}.`
    }
  },
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
