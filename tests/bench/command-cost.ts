import { openBuilds } from '#lib/service/tickets.ts'
import { give, roundOf, serveUntil } from '#tests/bench/long-service.ts'
import { median } from '#tests/bench/median.ts'
import type { Verdict } from '#tests/bench/verdict.ts'

const MOST_RATIO = 1.1
/** Orders in a run, so that each holds the same commands wherever it begins. */
const ORDERS_A_RUN = 30
const WARM_UP = 40
const RUNS = 600

/** Microseconds a command over one run from a moment, which stays as it is. */
const runFrom = ({ moment, orders }: ReturnType<typeof serveUntil>): number => {
  const commands = Array.from({ length: ORDERS_A_RUN }, (_, index) =>
    roundOf(orders + 1 + index),
  ).flat()
  let at = moment
  const begun = performance.now()
  for (const command of commands) at = give(at, command)
  return ((performance.now() - begun) * 1_000) / commands.length
}

/** Deciding and folding a command after `many` events in one service, against after `few`. */
export const benchCommandCost = (few: number, many: number): Verdict => {
  const early = serveUntil(few)
  const late = serveUntil(many)
  const times = { early: [] as number[], late: [] as number[] }
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    // In turns, and each first as often as the other, so that both meet the same machine.
    const order = run % 2 === 0 ? (['early', 'late'] as const) : (['late', 'early'] as const)
    for (const name of order) {
      const time = runFrom(name === 'early' ? early : late)
      if (run >= WARM_UP) times[name].push(time)
    }
  }
  const before = median(times.early)
  const after = median(times.late)
  const ratio = after / before
  return {
    title: `a command after ${many} events costs ${ratio.toFixed(3)} times one after ${few} (at most ${MOST_RATIO})`,
    figures: [
      `decide and evolve: ${before.toFixed(1)} µs after ${early.moment.position} events, ${after.toFixed(1)} µs after ${late.moment.position}; medians of ${RUNS} runs each, in turns`,
      `open builds: ${openBuilds(early.moment.state).length} and ${openBuilds(late.moment.state).length}; tickets: ${early.orders} and ${late.orders}`,
    ],
    isWithin: ratio <= MOST_RATIO,
  }
}
