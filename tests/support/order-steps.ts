/** Random steps of orders that may well be taken, and of builds that go on. */
import fc from 'fast-check'
import { strictest } from '#lib/needs/judge.ts'
import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { findBuild, findTicket, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { commandSchema, decideAlone } from '#lib/spine/registry.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { Item } from '#lib/station/station-document.ts'
import { fitted } from '#tests/support/histories.ts'
import { circumstances, type Given } from '#tests/support/service.ts'
import { items, type Step } from '#tests/support/spare-station.ts'

const need: fc.Arbitrary<Need> = fc.record({
  code: fc.constantFrom('milk', 'milk', 'fish', 'egg', 'sesame', 'wheat', 'peanut', 'vegan'),
  handling: fc.constantFrom('keep-apart' as const, 'keep-apart' as const, 'leave-out' as const),
  reason: fc.constant('allergy' as const),
})

const isLeft = (state: ServiceState, component: string): boolean =>
  isRunning(state) && levelOf(state, component).remaining > 0

/** An item as the counter would make it fit: without what doesn't suit, or is gone. */
const made = (
  state: ServiceState,
  {
    item,
    base,
    needs,
  }: { readonly item: Item; readonly base: string; readonly needs: readonly Need[] },
  caution: number | null = null,
): BuildChoice => {
  const accepted = state.cautions[`c${caution}`]?.findings.map(({ component }) => component)
  const choice = fitted(
    state,
    {
      ...usualChoice(item),
      base: item.base ? base : null,
      asked: needs.length > 0 ? 'needs' : 'none',
      needs,
      agreed: true,
      caution,
    },
    accepted,
  )
  const parts = Object.entries(choice.parts).map(([id, part]) => {
    const isOut = part.placement === 'no' || isLeft(state, id) || id === item.heart
    return [
      id,
      isOut ? part : ({ placement: 'no', portions: 0, because: 'gone' } as const),
    ] as const
  })
  return { ...choice, parts: Object.fromEntries(parts) }
}

const foundBuilds = (state: ServiceState): readonly QueuedBuild[] =>
  Object.values(state.toFind).flatMap(({ ticket: number, letter }) => {
    const ticket = findTicket(state, number)
    const build = findBuild(state, number, letter)
    return ticket && build ? [{ ticket, build }] : []
  })

const refusalOf = (state: ServiceState, command: Given): string | null => {
  const decision = decideAlone(
    state,
    commandSchema.parse(command),
    circumstances({ now: state.at, by: 'in-charge', newestLabels: {} }),
  )
  return 'refusal' in decision ? decision.refusal.code : null
}

/** An order under an acceptance that no build used yet. */
const underAcceptance = (state: ServiceState): Given | null => {
  const [key, found] = Object.entries(state.cautions).find(([, one]) => one.build === null) ?? []
  const item = items.find(({ id }) => id === found?.item)
  if (key === undefined || !found || !item) return null
  const needs = found.needs.map((one) => ({ ...one, reason: null }))
  const builds = ['pita', 'rice'].map((base) =>
    made(state, { item, base, needs }, Number(key.slice(1))),
  )
  const sent = builds.map((one): Given => ({ type: 'send', builds: [one], readBack: true }))
  return sent.find((one) => refusalOf(state, one) === null) ?? null
}

/** The first item that can be had, from where `from` says on; else what the person in charge accepts. */
const ordering: fc.Arbitrary<Step> = fc
  .record({
    from: fc.nat({ max: 5 }),
    needs: fc.oneof(
      { weight: 1, arbitrary: fc.constant<readonly Need[]>([]) },
      { weight: 4, arbitrary: fc.array(need, { minLength: 1, maxLength: 2 }) },
    ),
    builds: fc.constantFrom(1, 1, 2),
    accepted: fc.boolean(),
  })
  .map(({ from, needs, builds, accepted }) => (state): Given => {
    const isApart = needs.some(({ handling }) => handling === 'keep-apart')
    if (isApart && state.inCharge === null) return { type: 'signOn' }
    const under = accepted ? underAcceptance(state) : null
    if (under) return under
    const all = items.flatMap((item) =>
      ['pita', 'rice'].map((base) => made(state, { item, base, needs })),
    )
    const turned = [...all.slice(from), ...all.slice(0, from)]
    const send = (one: BuildChoice): Given => ({
      type: 'send',
      builds: Array.from({ length: builds }, () => one),
      readBack: true,
    })
    const tried = turned.map((one) => ({ one, code: refusalOf(state, send(one)) }))
    const fits = tried.find(({ code }) => code === null)
    if (fits) return send(fits.one)
    const cautioned = tried.find(({ code }) => code === 'caution')
    return cautioned
      ? { type: 'acceptCaution', build: cautioned.one, reason: 'guest-accepts' }
      : send(turned[0] ?? made(state, { item: items[0] as Item, base: 'pita', needs }))
  })

const place = fc.nat({ max: 30 })

/** The next act on an open build, as it stands; an order where there is none. */
const goingOn: fc.Arbitrary<Step> = fc
  .record({ index: place, foodInIt: fc.boolean(), some: fc.nat({ max: 3 }), orders: ordering })
  .map(({ index, foodInIt, some, orders }) => (state) => {
    const open = openBuilds(state)
    const found = open[index % Math.max(1, open.length)]
    if (!found) return orders(state)
    const { ticket, build } = found
    const at = { ticket: ticket.number, letter: build.letter }
    if (build.stop) {
      const inIt = foodInIt && some > 1 ? { inIt: Object.keys(build.takes).slice(0, some) } : {}
      return { type: 'acknowledge', ...at, foodInIt, ...inIt }
    }
    if (build.state === 'waiting') return { type: 'start', ...at, read: true }
    return { type: build.state === 'making' ? 'finish' : 'handOver', ...at }
  })

/** An open build, or one whose guest is to be found, becomes another item that can be had. */
const changing: fc.Arbitrary<Step> = fc
  .record({ index: place, from: fc.nat({ max: 5 }), more: fc.array(need, { maxLength: 1 }) })
  .map(({ index, from, more }) => (state) => {
    const open = [...openBuilds(state), ...foundBuilds(state)]
    const found = open[index % Math.max(1, open.length)]
    const at = { ticket: found?.ticket.number ?? 1, letter: found?.build.letter ?? 'A' }
    const needs = strictest([...(found ? knownNeeds(found.build) : []), ...more])
    const all = items.flatMap((item) =>
      ['pita', 'rice'].map((base) => made(state, { item, base, needs })),
    )
    const changes = [...all.slice(from), ...all.slice(0, from)].map(
      (to): Given => ({ type: 'change', ...at, to, readBack: true }),
    )
    const taken = changes.find((one) => refusalOf(state, one) === null)
    return taken ?? changes[0] ?? { type: 'cancel', ...at }
  })

/** Nobody knows any more which of some made builds is which. */
const mixingUp: fc.Arbitrary<Step> = fc
  .tuple(goingOn, fc.boolean())
  .map(([other, all]) => (state) => {
    const made = openBuilds(state).filter(({ build }) => build.state === 'made')
    const builds = made.map(({ ticket, build: { letter } }) => ({ ticket: ticket.number, letter }))
    if (builds.length < 2) return other(state)
    return { type: 'remakeMixedUp', builds: builds.slice(0, all ? 3 : 2) }
  })

export const ofOrders: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: ordering },
  { weight: 10, arbitrary: goingOn },
  { weight: 2, arbitrary: mixingUp },
  { weight: 1, arbitrary: changing },
)
