/** What has to be done before a service can be closed by hand, one command after the other. */
import { toAnswer, wasPlanned } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { isMissed } from '#lib/service/events/handed-over-event.ts'
import { allStock } from '#lib/service/held-stock.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import type { Given } from '#tests/support/service.ts'

const initials = 'KT'

const ofBuilds = (state: RunningState): Given | null => {
  const [found] = openBuilds(state)
  if (!found) return null
  const { ticket, build } = found
  const at = { ticket: ticket.number, letter: build.letter }
  if (build.stop || build.hold) {
    if (build.state === 'waiting') return { type: 'cancel', ...at }
    return { type: 'acknowledge', ...at, foodInIt: build.state === 'made' }
  }
  const isBound = state.toThrowOut[`build/${ticket.number}${build.letter}`] !== undefined
  if (build.state === 'made' && !isBound) return { type: 'handOver', ...at }
  return { type: 'cancel', ...at }
}

const ofFood = (state: RunningState): Given | null => {
  if (state.shelf?.offSale) return { type: 'resolveShelf', way: 'discard' }
  const off = allStock(state).find(({ stock }) => stock.offSale !== null)
  if (off) return { type: 'resolveOffSale', what: off.what, id: off.id, way: 'discard' }
  const batch = Object.entries(state.batches).find(
    ([, one]) =>
      one.thrownOutAt === null &&
      (one.offSale !== null || (one.cooling.length > 0 && one.amount > one.loaded)),
  )
  if (batch) return { type: 'throwOut', what: 'batch', id: batch[0], reason: 'left-over', initials }
  const [bound] = Object.values(state.toThrowOut)
  return bound
    ? { type: 'throwOut', what: bound.what, id: bound.id, reason: 'past-time', initials }
    : null
}

/** Of a service that was planned each pan is asked for: first all that is hot, then what is left. */
const ofEnds = (state: RunningState): Given | null => {
  if (!wasPlanned(state)) return null
  const [place] = toAnswer(state)
  if (!place) return null
  const isHot = allStock(state).some(
    ({ stock }) => stock.amount > 0 && stock.food?.heldBy === 'hot' && stock.food.clock === null,
  )
  if (isHot && state.ends === undefined) return { type: 'throwOutHot', initials }
  const { what, id } = place
  return { type: 'endFood', what, id, end: 'throw-out', how: 'eye', initials }
}

/** The next thing to do; closing itself where nothing is left. */
export const nextToClose = (state: ServiceState): Given => {
  if (!isRunning(state)) return { type: 'close' }
  if (state.clockJump) return { type: 'confirmClock' }
  const [found] = Object.values(state.toFind)
  if (found) {
    const { ticket, letter } = found
    return { type: 'acknowledge', ticket, letter, foodInIt: false }
  }
  const food = ofBuilds(state) ?? ofFood(state)
  if (food) return food
  const told = Object.values(state.toTell).find(({ because }) => !isMissed(because))
  if (!told) return ofEnds(state) ?? { type: 'close' }
  const { what, id, builds } = told
  return { type: 'answerHandedOver', what, id, answer: 'told', seen: builds.length, initials }
}
