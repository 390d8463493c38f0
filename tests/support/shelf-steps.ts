/** Steps of a random history about builds that are stopped in part, or mixed up. */
import fc from 'fast-check'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import type { Step } from '#tests/support/spare-station.ts'

const inState = (state: ServiceState, is: 'making' | 'made'): readonly QueuedBuild[] =>
  isRunning(state) ? openBuilds(state).filter(({ build }) => build.state === is) : []

const at = ({ ticket, build }: QueuedBuild) => ({ ticket: ticket.number, letter: build.letter })

/** Some of what a stopped build takes was in it, at times something that it doesn't take. */
const answeringInPart: fc.Arbitrary<Step> = fc
  .record({ index: fc.nat({ max: 9 }), kept: fc.nat({ max: 255 }) })
  .map(({ index, kept }) => (state) => {
    const stopped = inState(state, 'making').filter(({ build }) => build.stop !== null)
    const one = stopped[index % Math.max(1, stopped.length)]
    const inIt = Object.keys(one?.build.takes ?? {}).filter((_, bit) => kept & (1 << bit))
    return {
      type: 'acknowledge',
      ...(one ? at(one) : { ticket: 1, letter: 'A' }),
      foodInIt: true,
      inIt: kept % 16 === 0 ? [...inIt, 'not-on-the-line'] : inIt,
    }
  })

/** Nobody knows which is which of what stands made, held ones among them. */
const mixingUp: fc.Arbitrary<Step> = fc.nat({ max: 4 }).map((count) => (state) => ({
  type: 'remakeMixedUp',
  builds: inState(state, 'made').slice(0, count).map(at),
}))

/** Made food that is stopped goes nowhere but out, whatever is said of it. */
const keepingMade: fc.Arbitrary<Step> = fc.nat({ max: 9 }).map((index) => (state) => {
  const held = inState(state, 'made').filter(({ build }) => build.hold !== null)
  const one = held[index % Math.max(1, held.length)]
  return {
    type: 'acknowledge',
    ...(one ? at(one) : { ticket: 1, letter: 'A' }),
    foodInIt: false,
  }
})

export const ofTheShelf: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: answeringInPart },
  { weight: 2, arbitrary: mixingUp },
  { weight: 1, arbitrary: keepingMade },
)
