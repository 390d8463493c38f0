import type { ServiceState } from '#lib/service/state.ts'
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { give, giving, type Moment, roundOf, serveUntil } from '#tests/bench/long-service.ts'
import { median } from '#tests/bench/median.ts'
import type { Verdict } from '#tests/bench/verdict.ts'

const MOST_RATIO = 1.25
/** Orders in a run, so that each holds the same commands whatever follows from them. */
const ORDERS_A_RUN = 30
const WARM_UP = 40
const RUNS = 600

/** Every other guest leaves peanut out, so that their builds are asked about. */
const withNeed = (command: Command): Command =>
  command.type !== 'send'
    ? command
    : {
        ...command,
        builds: command.builds.map((build): (typeof command.builds)[number] =>
          build.parts.slaw?.placement === 'no'
            ? {
                ...build,
                asked: 'needs',
                needs: [{ code: 'peanut', handling: 'leave-out', reason: null }],
              }
            : build,
        ),
      }

/** As the rail did before consequences had a place of their own: decided, and folded twice. */
const foldedTwice = (at: Moment, command: Command): Moment => {
  const { moment, recorded } = giving(at, command, [])
  recorded.reduce<ServiceState>(evolve, at.state)
  return moment
}

const runWith = (
  moment: Moment,
  commands: readonly Command[],
  one: (at: Moment, command: Command) => Moment,
): number => {
  let at = moment
  const begun = performance.now()
  for (const command of commands) at = one(at, command)
  return ((performance.now() - begun) * 1_000) / commands.length
}

/** A command with all that follows from it and each event folded once, against none of it and two folds. */
export const benchConsequences = (events: number): Verdict => {
  const { moment, orders } = serveUntil(events)
  const commands = Array.from({ length: ORDERS_A_RUN }, (_, index) => roundOf(orders + 1 + index))
    .flat()
    .map(withNeed)
  const times = { without: [] as number[], with: [] as number[] }
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    const order = run % 2 === 0 ? (['without', 'with'] as const) : (['with', 'without'] as const)
    for (const name of order) {
      const time = runWith(moment, commands, name === 'with' ? give : foldedTwice)
      if (run >= WARM_UP) times[name].push(time)
    }
  }
  const [bare, led] = [median(times.without), median(times.with)]
  const ratio = led / bare
  return {
    title: `a command with its consequences costs ${ratio.toFixed(3)} times one that was folded twice, as before (at most ${MOST_RATIO})`,
    figures: [
      `${bare.toFixed(1)} µs without, ${led.toFixed(1)} µs with, after ${moment.position} events; medians of ${RUNS} runs each, in turns`,
      `${CONSEQUENCES.length} rules, every other order with a need`,
    ],
    isWithin: ratio <= MOST_RATIO,
  }
}
