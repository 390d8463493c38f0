/** Random steps of waste, portions that are kept, the day, and what is said to advice. */
import fc from 'fast-check'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { WASTE_REASONS } from '#lib/service/events/stock-event.ts'
import { isRunning } from '#lib/service/state.ts'
import { namedBuild, openBuilds } from '#lib/service/tickets.ts'
import { ofPortions } from '#tests/support/service.ts'
import { components, items, pans, type Step } from '#tests/support/spare-station.ts'

const component = fc.constantFrom(...components)
const item = fc.constantFrom(...items.map(({ id }) => id), 'kelp-roll')

const wasting: fc.Arbitrary<Step> = fc
  .record({
    pan: fc.constantFrom(...pans),
    portions: fc.integer({ min: 0, max: 3 }),
    reason: fc.constantFrom(...WASTE_REASONS),
  })
  .map(({ pan: { id: pan, component }, portions, reason }) => () => {
    const amount = ofPortions(component, portions)
    return { type: 'waste', pan, amount, reason }
  })

const keeping: fc.Arbitrary<Step> = fc
  .record({ component, portions: fc.integer({ min: 1, max: 3 }), whom: item })
  .map(({ component, portions, whom }) => () => ({
    type: 'keep',
    component,
    portions,
    for: [whom],
  }))

const endingKeep: fc.Arbitrary<Step> = component.map((other) => ({ keeps }) => ({
  type: 'endKeep',
  component: Object.keys(keeps)[0] ?? other,
}))

const missing: fc.Arbitrary<Step> = item.map((id) => () => ({ type: 'wantedGone', item: id }))

/** Any open build says that it waits: only one that is short may. */
const waiting: fc.Arbitrary<Step> = fc.nat({ max: 9 }).map((index) => (state) => {
  const short = isRunning(state) ? [...shortBuilds(state).keys()].map(namedBuild) : []
  const open = openBuilds(state).map(({ ticket, build }) => ({
    ticket: ticket.number,
    letter: build.letter,
  }))
  const from = index > 2 && short.length > 0 ? short : open
  return { type: 'wait', ...(from[index % Math.max(1, from.length)] ?? { ticket: 1, letter: 'A' }) }
})

const planning: fc.Arbitrary<Step> = fc
  .record({
    assemblers: fc.constantFrom(1, 2),
    closesAt: fc.constantFrom(undefined, undefined, '13:30', null),
  })
  .map(({ assemblers, closesAt }) => () => ({
    type: 'setDay',
    assemblers,
    ...(closesAt === undefined ? {} : { closesAt }),
  }))

const advised: fc.Arbitrary<Step> = fc
  .constantFrom('done' as const, 'put-off' as const, 'declined' as const)
  .map((answer) => ({ adviceLog }) => ({
    type: 'answerAdvice',
    key: adviceLog.find((one) => one.answer === 'open')?.key ?? 'nothing',
    answer,
  }))

/** What isn't sold is sold again; else something isn't any more. */
const selling: fc.Arbitrary<Step> = component.map((id) => ({ notSelling }) => {
  const [stopped] = Object.keys(notSelling.component)
  return stopped === undefined
    ? { type: 'stopSelling', what: 'component', id }
    : { type: 'resumeSelling', what: 'component', id: stopped }
})

export const ofTheStock: fc.Arbitrary<Step> = fc.oneof(
  { weight: 2, arbitrary: wasting },
  { weight: 2, arbitrary: keeping },
  { weight: 2, arbitrary: endingKeep },
  missing,
  { weight: 2, arbitrary: waiting },
  planning,
  selling,
  { weight: 2, arbitrary: advised },
  { weight: 2, arbitrary: fc.constant<Step>(() => ({ type: 'confirmClock' })) },
  fc.constant<Step>(() => ({ type: 'close' })),
)
