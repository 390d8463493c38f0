import { SIGHTS } from '#lib/access/seen/classes.ts'
import { project, projectState } from '#lib/access/seen/project.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import { giving, roundOf, serveUntil } from '#tests/bench/long-service.ts'
import { median } from '#tests/bench/median.ts'
import type { Verdict } from '#tests/bench/verdict.ts'

/** Against deciding and folding the command whose events they are, for all roles together. */
const MOST_RATIO = 0.1
const ORDERS_A_RUN = 30
const WARM_UP = 40
const RUNS = 400

const timed = (work: () => void): number => {
  const begun = performance.now()
  work()
  return performance.now() - begun
}

/** What is sent to all roles of a command's events, against deciding and folding that command. */
export const benchProjecting = (many: number): Verdict => {
  const { moment, orders } = serveUntil(many)
  const roles = [...SIGHTS.values()]
  const commands = Array.from({ length: ORDERS_A_RUN }, (_, index) =>
    roundOf(orders + 1 + index),
  ).flat()
  const times = { decided: [] as number[], sent: [] as number[] }
  let events = 0
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    // Every run records events anew: what was projected once is known.
    let at = moment
    const batches: (readonly Recorded[])[] = []
    const decided = timed(() => {
      for (const command of commands) {
        const given = giving(at, command, CONSEQUENCES)
        at = given.moment
        batches.push(given.recorded)
      }
    })
    const sent = timed(() => {
      for (const batch of batches)
        for (const role of roles) for (const event of batch) project(role, event)
    })
    if (run < WARM_UP) continue
    times.decided.push(decided)
    times.sent.push(sent)
    events = batches.flat().length
  }
  const [decided, sent] = [median(times.decided), median(times.sent)]
  const ratio = sent / decided
  const [role = 'lead'] = roles
  const state = structuredClone(moment.state)
  const first = timed(() => projectState(role, state))
  const [next] = commands
  const after = next ? giving({ ...moment, state }, next, CONSEQUENCES).moment.state : state
  const again = timed(() => projectState(role, after))
  return {
    title: `what ${roles.length} kinds of roles are sent of a command costs ${ratio.toFixed(3)} times deciding it (at most ${MOST_RATIO})`,
    figures: [
      `${((decided * 1_000) / commands.length).toFixed(1)} µs to decide and fold, ${((sent * 1_000) / commands.length).toFixed(1)} µs to project; medians of ${RUNS} runs, after ${moment.position} events`,
      `${((events * roles.length) / sent).toFixed(0)} events projected a millisecond, one role each`,
      `the state of ${orders} tickets: ${first.toFixed(1)} ms the first time, ${again.toFixed(2)} ms after another command`,
    ],
    isWithin: ratio <= MOST_RATIO,
  }
}
