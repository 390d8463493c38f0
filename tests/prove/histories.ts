/** Whatever goes on fits its guest, every hold has a cause, and what was handed over is listed. */
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import { COMMAND_TYPES } from '#lib/spine/registry.ts'
import type { Proof } from '#tests/prove/proof.ts'
import type { Act } from '#tests/support/acts.ts'
import {
  type BrokenHistory,
  type Counts,
  DUES,
  unreached,
  watchHistories,
} from '#tests/support/watched-histories.ts'

/** The rules of consequences whose lack these histories don't show, each left away alone. */
const unseen = (seed: number, most: number) =>
  CONSEQUENCES.map(({ name }) => {
    const follows = CONSEQUENCES.filter((one) => one.name !== name)
    const asked = { seed, histories: most, follows, most: 1, shrinks: false }
    const { counts, broken } = watchHistories(asked)
    return { name, histories: counts.histories, law: broken[0]?.law ?? null }
  })

const sayAct = (act: Act): string =>
  act.do === 'command' ? `${act.by} ${JSON.stringify(act.command)}` : JSON.stringify(act)

const sayBroken = ({ seed, law, problem, acts }: BrokenHistory): string =>
  [`seed ${seed}, ${law}: ${problem}`, ...acts.map((act) => `    ${sayAct(act)}`)].join('\n')

const sayEach = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([name, count]) => `${name} ${count}`)
    .join(', ')

const tableOf = ({ of }: Counts): readonly string[] => [
  'command            accepted  refused   before the opening  after the close',
  ...COMMAND_TYPES.map((type) => {
    const { accepted, refused, early, late } = of[type]
    const figures = [accepted, refused, early, late].map((one) => String(one).padStart(8))
    return `${type.padEnd(18)}${figures.join('  ')}`
  }),
]

const figuresOf = (counts: Counts, broken: number): readonly string[] => [
  `${counts.histories} histories, ${counts.commands} commands, ${broken} broken`,
  `${counts.restarts} restarts, ${counts.jumps} jumps of the clock, time passed ${counts.passed} times`,
  `fell due: ${sayEach(Object.fromEntries(DUES.map((one) => [one, counts.due[one] ?? 0])))}`,
  `held for: ${sayEach(counts.holds)}; ${counts.lifted} holds lifted`,
  `${counts.found} guests to be found, ${counts.listed} lists of handed-over builds (${sayEach(counts.lists)})`,
  ...tableOf(counts),
]

/** Histories from a seed on, and then as many as it takes without each of the rules, up to `most`. */
export const proveHistories = async (
  histories: number,
  seed: number,
  most: number,
): Promise<Proof> => {
  const { counts, broken } = watchHistories({ seed, histories })
  const without = unseen(seed, most)
  return {
    title: `histories: ${histories} whole services from seed ${seed}, judged by the oracle`,
    figures: [
      ...figuresOf(counts, broken.length),
      ...without.map(({ name, histories: count, law }) =>
        law === null ? `without ${name}: not found` : `without ${name}: ${law} after ${count}`,
      ),
    ],
    failures: [
      ...broken.map(sayBroken),
      ...unreached(counts),
      ...without
        .filter(({ law }) => law === null)
        .map(({ name }) => `${most} histories without ${name} show nothing`),
    ],
  }
}
