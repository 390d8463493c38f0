/** Random histories of commands on a station with little in its pans, for fast-check. */
import fc from 'fast-check'
import { isFine, judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import { type BuildState, isRunning, type ServiceState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { counting, emptying, ofTheKitchen } from '#tests/support/kitchen-steps.ts'
import { foodOf, type Given, ofPortions } from '#tests/support/service.ts'
import { ofTheShelf } from '#tests/support/shelf-steps.ts'
import { components, items, mostly, pans, type Step } from '#tests/support/spare-station.ts'

const part = fc.oneof(
  {
    weight: 16,
    arbitrary: fc.constantFrom(
      { placement: 'in', portions: 1 } as const,
      { placement: 'no', portions: 0 } as const,
    ),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      placement: fc.constantFrom('in' as const, 'side' as const),
      portions: fc.integer({ min: 1, max: 4 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      placement: fc.constantFrom('in' as const, 'side' as const, 'no' as const),
      portions: fc.constantFrom(-1, 0, 1, 2.5, 5, -0),
    }),
  },
)

const need = fc.record({
  code: fc.constantFrom('milk', 'sesame', 'soy', 'vegan', 'peanut', 'almond', 'kelp-dust'),
  handling: fc.constantFrom('keep-apart' as const, 'leave-out' as const),
  reason: fc.constantFrom(null, 'allergy' as const),
})

const choice: fc.Arbitrary<BuildChoice> = fc
  .record({
    item: fc.constantFrom(...items),
    base: fc.oneof(
      { weight: 29, arbitrary: fc.constantFrom('pita', 'rice') },
      { weight: 1, arbitrary: fc.constantFrom(null, 'slaw') },
    ),
    parts: fc.dictionary(fc.constantFrom(...components, 'kelp', 'constructor'), part, {
      maxKeys: 2,
    }),
    needs: fc.oneof(
      { weight: 2, arbitrary: fc.constant([]) },
      { weight: 2, arbitrary: fc.array(need, { minLength: 1, maxLength: 2 }) },
    ),
    isSure: fc.integer({ min: 0, max: 40 }),
    agreed: mostly,
    plain: fc.boolean(),
    caution: fc.oneof(
      { weight: 3, arbitrary: fc.constant(null) },
      { weight: 2, arbitrary: fc.integer({ min: 1, max: 4 }) },
    ),
  })
  .map(({ item, base, parts, needs, isSure, agreed, plain, caution }) => {
    const usual = usualChoice(item)
    const stays = item.parts.filter((one) => one.required).map((one) => one.component)
    const plainer =
      plain && needs.length > 0 ? Object.keys(usual.parts).filter((id) => !stays.includes(id)) : []
    const own = Object.entries(parts).filter(([id]) => isSure < 2 || id in usual.parts)
    return {
      item: isSure === 1 ? 'kelp-roll' : item.id,
      base,
      parts: {
        ...usual.parts,
        ...Object.fromEntries(
          plainer.map((id) => [id, { placement: 'no', portions: 0, because: 'need' } as const]),
        ),
        ...Object.fromEntries(own.map(([id, one]) => [id, { ...one, because: 'asked' as const }])),
      },
      asked: isSure === 0 ? 'not-sure' : needs.length > 0 ? 'needs' : 'none',
      needs,
      agreed,
      caution,
    }
  })

/** Which build is meant: mostly one that suits, now and then any number and letter. */
const meant = fc.record({
  suits: fc.integer({ min: 0, max: 9 }).map((one) => one > 0),
  index: fc.nat({ max: 11 }),
  letter: fc.constantFrom('A', 'B'),
})
type Meant = typeof meant extends fc.Arbitrary<infer One> ? One : never

interface BuildAt {
  readonly ticket: number
  readonly letter: string
}

const pick = (state: ServiceState, by: Meant, suiting: readonly BuildState[]): BuildAt => {
  const tickets = [...Object.values(state.past), state.tickets].flatMap((one) => Object.values(one))
  const suited = tickets.flatMap((ticket) =>
    ticket.builds
      .filter((build) => suiting.includes(build.state))
      .map(({ letter }) => ({ ticket: ticket.number, letter })),
  )
  const found = suited[by.index % Math.max(1, suited.length)]
  return by.suits && found ? found : { ticket: by.index, letter: by.letter }
}

/** Builds that are held, wherever they stand. */
const heldBuilds = (state: ServiceState): readonly BuildAt[] =>
  [...Object.values(state.past), state.tickets]
    .flatMap((one) => Object.values(one))
    .flatMap((ticket) =>
      ticket.builds
        .filter((build) => build.hold !== null)
        .map(({ letter }) => ({ ticket: ticket.number, letter })),
    )

const ofBuild = (
  suiting: readonly BuildState[],
  make: (at: BuildAt) => Given,
): fc.Arbitrary<Step> => meant.map((by) => (state) => make(pick(state, by, suiting)))

const amount = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 0, max: 9 }).map((count) => ({ count, off: 0 })) },
  {
    weight: 2,
    arbitrary: fc.record({
      count: fc.integer({ min: 0, max: 4 }),
      off: fc.integer({ min: -3, max: 3 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      { count: 1e9, off: 0 },
      { count: -1, off: 0 },
      { count: 0, off: 0.5 },
      { count: -0, off: -0 },
    ),
  },
)

const ofPan: fc.Arbitrary<Step> = fc
  .record({
    pan: fc.constantFrom(...pans),
    type: fc.constantFrom(
      'load' as const,
      'changePan' as const,
      'topUp' as const,
      'correct' as const,
    ),
    amount,
    from: fc.boolean(),
  })
  .map(({ pan, type, amount: { count, off }, from }) => (state): Given => {
    const amount = ofPortions(pan.component, count) + off
    if (type === 'correct') return counting(state, pan.id, amount, from)
    const backup = Object.entries(state.backupPans).find(
      ([, one]) => one.component === pan.component && one.amount > 0,
    )?.[0]
    const food = foodOf(pan.component)
    if (from && backup !== undefined && type !== 'load') {
      const read = 'reading' in food ? { reading: food.reading, initials: food.initials } : {}
      return type === 'topUp'
        ? { type, pan: pan.id, from: backup, amount, ...read }
        : { type, pan: pan.id, from: backup, ...read }
    }
    return {
      type,
      pan: pan.id,
      amount,
      ...food,
      ...(type === 'load' && off === 0 ? { washed: true } : {}),
    }
  })

/** Readings in limits and out of them, and what becomes of food that isn't sold. */
const ofFood: fc.Arbitrary<Step> = fc
  .record({
    pan: fc.constantFrom(...pans),
    isOut: fc.integer({ min: 0, max: 2 }).map((one) => one === 0),
    act: fc.constantFrom('read' as const, 'resolve' as const, 'throwOut' as const),
    way: fc.constantFrom('discard' as const, 'time-only' as const, 'reheat' as const),
  })
  .map(({ pan, isOut, act, way }) => (state): Given => {
    const held = state.pans[pan.id]
    if (act !== 'read' && Object.keys(state.toThrowOut).length > 0) {
      const [first] = Object.values(state.toThrowOut)
      if (first)
        return {
          type: 'throwOut',
          what: first.what,
          id: first.id,
          reason: 'out-of-limits',
          initials: 'KT',
        }
    }
    const offSale = Object.entries(state.pans).find(([, one]) => one.offSale !== null)
    if (act !== 'read' && offSale)
      return { type: 'resolveOffSale', what: 'pan', id: offSale[0], way }
    const isHot = held?.food?.heldBy === 'hot'
    const tenths = isOut === isHot ? (isHot ? 1200 : 380) : isHot ? 1500 : 500
    return {
      type: 'readTemperature',
      what: 'pan',
      id: pan.id,
      reading: { tenths, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
      initials: 'KT',
    }
  })

const selling: fc.Arbitrary<Step> = fc
  .record({
    type: fc.constantFrom('stopSelling' as const, 'resumeSelling' as const),
    what: fc.constantFrom('component' as const, 'item' as const),
    index: fc.nat({ max: 11 }),
  })
  .map(({ type, what, index }) => ({ notSelling }) => {
    const all = what === 'item' ? items.map((item) => item.id) : components
    const stopped = Object.keys(notSelling[what])
    const ids = type === 'resumeSelling' && stopped.length > 0 ? stopped : all
    return { type, what, id: ids[index] ?? ids[0] ?? 'kelp' }
  })

/** What the counter would make of a choice: parts and bases that don't suit its needs are out. */
export const fitted = (
  state: ServiceState,
  sent: BuildChoice,
  accepted: readonly string[] = [],
): BuildChoice => {
  const item = items.find((one) => one.id === sent.item)
  if (!isRunning(state) || !item || sent.needs.length === 0) return sent
  const kitchen = kitchenOf(state)
  const suits = (id: string) =>
    accepted.includes(id) || isFine(judgeComponent(kitchen, id, sent.needs).level)
  const out = item.parts.filter((one) => !one.required && !suits(one.component))
  return {
    ...sent,
    base: item.base?.choices.find(suits) ?? sent.base,
    parts: {
      ...sent.parts,
      ...Object.fromEntries(
        out.map(({ component }) => [
          component,
          { placement: 'no', portions: 0, because: 'need' } as const,
        ]),
      ),
    },
  }
}

/** An order under an acceptance that no build has used. */
const underAcceptance: fc.Arbitrary<Step> = fc.nat({ max: 9 }).map((index) => (state) => {
  const open = Object.entries(state.cautions).filter(([, one]) => one.build === null)
  const [key, acceptance] = open[index % Math.max(1, open.length)] ?? ['c1', null]
  const item = items.find((one) => one.id === acceptance?.item) ?? items[0]
  if (!item) throw new Error('the station sells nothing')
  const choice: BuildChoice = {
    ...usualChoice(item),
    asked: 'needs',
    needs: (acceptance?.needs ?? []).map((one) => ({ ...one, reason: null })),
    agreed: true,
    caution: Number(key.slice(1)),
  }
  const accepted = (acceptance?.findings ?? []).map((one) => one.component)
  return { type: 'send', builds: [fitted(state, choice, accepted)], readBack: true }
})

const sending: fc.Arbitrary<Step> = fc
  .record({
    builds: fc.array(choice, { maxLength: 2, size: 'max' }),
    paid: fc.boolean(),
    readBack: mostly,
    fits: mostly,
  })
  .map(({ fits, builds, ...sent }) => (state) => ({
    type: 'send',
    ...sent,
    builds: fits ? builds.map((one) => fitted(state, one)) : builds,
  }))

/** Needs of a build, told late as well, go into what it becomes, as the counter puts them there. */
const withTold = (state: ServiceState, at: BuildAt, to: BuildChoice): BuildChoice => {
  const build = findBuild(state, at.ticket, at.letter)
  const known = [...(build?.choice.needs ?? []), ...(build?.hold?.told?.needs ?? [])]
  const needs = [...to.needs, ...known]
  return needs.length === 0 ? to : { ...to, asked: 'needs', needs }
}

const changing: fc.Arbitrary<Step> = fc
  .record({ by: meant, to: choice, readBack: mostly, remembers: mostly, heldOnly: fc.boolean() })
  .map(({ by, to, readBack, remembers, heldOnly }) => (state) => {
    const held = heldOnly ? heldBuilds(state) : []
    const at = held[by.index % Math.max(1, held.length)] ?? pick(state, by, ['waiting', 'making'])
    const told = remembers ? fitted(state, withTold(state, at, to)) : to
    return { type: 'change', ...at, to: told, readBack }
  })

const telling: fc.Arbitrary<Step> = fc
  .record({
    by: meant,
    asked: fc.constantFrom(
      'needs' as const,
      'needs' as const,
      'not-sure' as const,
      'none' as const,
    ),
    needs: fc.array(need, { minLength: 1, maxLength: 2 }),
    made: fc.boolean(),
  })
  .map(({ by, asked, needs, made }) => (state) => ({
    type: 'tellNeed',
    ...pick(state, by, made ? ['made'] : ['waiting', 'making', 'made', 'handed-over']),
    asked,
    needs: asked === 'needs' ? needs : [],
  }))

const answering: fc.Arbitrary<Step> = fc
  .record({ by: meant, foodInIt: fc.boolean() })
  .map(({ by, foodInIt }) => (state) => {
    const held = heldBuilds(state)
    const at = held[by.index % Math.max(1, held.length)] ?? pick(state, by, ['making'])
    return { type: 'acknowledge', ...at, foodInIt }
  })

/** Accepts the cautions of an order, and the next sends that order under it. */
const accepting: fc.Arbitrary<Step> = choice.map((build) => () => ({
  type: 'acceptCaution',
  build,
  reason: 'guest-accepts',
}))

export const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 19, arbitrary: sending },
  { weight: 10, arbitrary: ofPan },
  { weight: 6, arbitrary: ofFood },
  { weight: 9, arbitrary: changing },
  { weight: 6, arbitrary: telling },
  { weight: 14, arbitrary: answering },
  { weight: 7, arbitrary: ofTheShelf },
  { weight: 5, arbitrary: ofTheKitchen },
  { weight: 5, arbitrary: emptying },
  { weight: 5, arbitrary: accepting },
  { weight: 3, arbitrary: underAcceptance },
  {
    weight: 9,
    arbitrary: fc
      .record({ read: fc.boolean(), seen: fc.constantFrom(undefined, undefined, undefined, 0) })
      .chain(({ read, seen }) =>
        ofBuild(['waiting'], (at) => ({ type: 'start', ...at, seen, read })),
      ),
  },
  { weight: 8, arbitrary: ofBuild(['making'], (at) => ({ type: 'finish', ...at })) },
  {
    weight: 4,
    arbitrary: ofBuild(['waiting', 'making', 'made'], (at) => ({ type: 'cancel', ...at })),
  },
  { weight: 3, arbitrary: ofBuild(['made'], (at) => ({ type: 'handOver', ...at })) },
  { weight: 4, arbitrary: ofBuild(['made', 'handed-over'], (at) => ({ type: 'remake', ...at })) },
  {
    weight: 7,
    arbitrary: fc
      .boolean()
      .chain((made) => ofBuild(['made'], (at) => ({ type: 'takeBack', ...at, made }))),
  },
  {
    weight: 8,
    arbitrary: fc
      .boolean()
      .chain((foodInIt) => ofBuild(['making'], (at) => ({ type: 'acknowledge', ...at, foodInIt }))),
  },
  {
    weight: 2,
    arbitrary: fc
      .boolean()
      .chain((paid) => ofBuild(['waiting'], ({ ticket }) => ({ type: 'pay', ticket, paid }))),
  },
  { weight: 4, arbitrary: selling },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Step>(
      () => ({ type: 'confirmClock' }),
      () => ({ type: 'open', station: 'alder-hall', kind: 'demo' }),
    ),
  },
)

export const history = fc.array(step, { minLength: 70, maxLength: 110, size: 'max' })
