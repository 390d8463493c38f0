import { type JudgedComponent, judgeComponent } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { median } from '#tests/bench/median.ts'
import type { Verdict } from '#tests/bench/verdict.ts'
import { verdictsFor } from '#tests/support/counter-verdicts.ts'
import { backup, ingredient, kitchen, need } from '#tests/support/kitchens.ts'

const ITEMS = 60
const COMPONENTS = 40
const MOST_RATIO = 10
const WARM_UP = 2_000
const RUNS = 2_000
/** Calls in a run, so that one is longer than the clock's grain. */
const CALLS = 10

const NEEDS: readonly Need[] = [
  need('milk'),
  need('almond'),
  need('gluten'),
  need('sesame', 'leave-out'),
  need('fish'),
  need('soy', 'leave-out'),
  need('vegetarian', 'leave-out'),
  need('no-pork'),
]

const id = (index: number): string => `c${index}`

/** Sixty items that take all forty components among them, some of each ruled out, warned or shared. */
const largeKitchen = (): Kitchen => {
  const { station } = kitchen()
  const template = station.components[0]
  const item = station.items[0]
  if (!template || !item) throw new Error('the small station is empty')
  const all = Array.from({ length: COMPONENTS }, (_, index) => id(index))
  const large: StationDocument = {
    ...station,
    ingredients: all.map((one, index) =>
      ingredient(one, {
        milk: index % 5 === 0 ? 'contains' : 'free',
        sesame: index % 7 === 0 ? 'may-contain' : 'free',
        soy: index % 11 === 0 ? 'unknown' : 'free',
      }),
    ),
    components: all.map((one) => ({ ...template, id: one, ingredients: [one] })),
    items: Array.from({ length: ITEMS }, (_, index) => {
      const at = (offset: number) => id((index + offset) % COMPONENTS)
      return {
        ...item,
        id: `i${index}`,
        heart: at(2),
        base: { choices: [at(0), at(1)], usual: at(0) },
        parts: Array.from({ length: COMPONENTS - 2 }, (__, part) => ({
          component: at(part + 2),
          usual: 'in' as const,
          required: false,
        })),
      }
    }),
    contacts: Array.from({ length: COMPONENTS / 4 }, (_, index) => ({
      id: `k${index}`,
      kind: index % 3 === 0 ? ('griddle' as const) : ('beside' as const),
      components: [0, 1, 2, 3].map((offset) => id(4 * index + offset)),
    })),
    backups: all.filter((_, index) => index % 2 === 0).map((component) => backup(component)),
  }
  return { station: large, soiled: [], lent: [], ready: large.backups.map((one) => one.component) }
}

/** Touches every item × component × need once and does nothing else with them. */
const bareLoop = (kept: readonly (readonly boolean[])[]): number => {
  let count = 0
  for (let item = 0; item < ITEMS; item += 1)
    for (const column of kept) for (const one of column) if (one) count += 1
  return count
}

/** Microseconds a call, each run in turns with the other, so that both meet the same machine. */
const inTurns = (one: () => void, other: () => void): readonly [number, number] => {
  const times: [number[], number[]] = [[], []]
  for (let run = 0; run < WARM_UP + RUNS; run += 1)
    for (const [index, call] of [one, other].entries()) {
      const begun = performance.now()
      for (let count = 0; count < CALLS; count += 1) call()
      const time = ((performance.now() - begun) * 1_000) / CALLS
      if (run >= WARM_UP) times[index]?.push(time)
    }
  return [median(times[0]), median(times[1])]
}

const judgeAll = (kitchen: Kitchen): readonly JudgedComponent[] =>
  kitchen.station.components.map((one) => judgeComponent(kitchen, one.id, NEEDS))

/** All that a guest's items are settled by, for eight needs, against the loop that only touches them. */
export const benchVerdicts = (): Verdict => {
  const large = largeKitchen()
  const kept = Array.from({ length: COMPONENTS }, (_, component) =>
    NEEDS.map((__, index) => (component + index) % 3 === 0),
  )
  let touched = 0
  const [call, floor] = inTurns(
    () => judgeAll(large),
    () => {
      touched += bareLoop(kept)
    },
  )
  const first: number[] = []
  for (let run = 0; run < 200; run += 1) {
    const begun = performance.now()
    judgeAll({ ...large })
    first.push((performance.now() - begun) * 1_000)
  }
  const ratio = call / floor
  const kinds = Object.values(verdictsFor(large, NEEDS)).map((one) => one.kind)
  const count = (kind: string) => kinds.filter((one) => one === kind).length
  return {
    title: `what ${ITEMS} items × ${COMPONENTS} components × ${NEEDS.length} needs are settled by costs ${ratio.toFixed(2)} times a bare loop over them (at most ${MOST_RATIO})`,
    figures: [
      `${(call / 1_000).toFixed(3)} ms a call, ${(floor / 1_000).toFixed(3)} ms the bare loop; medians of ${RUNS} runs of ${CALLS}, in turns (${touched > 0 ? 'touched' : 'not touched'})`,
      `${(median(first) / 1_000).toFixed(3)} ms the first call after a label, a pan or a back-up changed, which works out labels and contact anew`,
      `verdicts: ${count('fits')} fit, ${count('with-change')} with a change, ${count('ask')} ask, ${count('no')} don't`,
    ],
    isWithin: ratio <= MOST_RATIO,
  }
}
