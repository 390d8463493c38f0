import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { readBack } from '#lib/rooms/orders/views/read-back.ts'
import { shortOffers } from '#lib/rooms/orders/views/short-offers.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import {
  at,
  buildIn,
  choose,
  type Given,
  given,
  needs,
  ofPortions,
  onward,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const count = (component: string, portions: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, portions),
})
const chicken = choose('garden-chicken')
const double = choose('garden-chicken', { chicken: 2 })
const beans = choose('bean-and-pepper')

const offers = (told: Told, name: string) => shortOffers(running(told), at(name))
const ways = (told: Told, name: string) => offers(told, name).map(({ way }) => way)
const shortIn = (told: Told) => [...shortBuilds(running(told)).keys()].sort()

/** What the tap on an offer opens, and the command that sends it. */
const taken = (told: Told, name: string, index = 0) => {
  const state = running(told)
  const way = ways(told, name)[index]
  if (!way) throw new Error(`${name} has no such way`)
  const tap: Act = { act: 'change-build', ...at(name), way }
  const opened = act(IDLE, tap, state)
  return { opened, command: commandOf(opened, state) }
}

const onceTaken = (told: Told, name: string, index = 0): Told => {
  const { command } = taken(told, name, index)
  if (!command) throw new Error('nothing to send')
  return onward(told, command as Given)
}

describe('what a short build can become', () => {
  test('[C56] a short double becomes a single for less, and is short no more', () => {
    const told = given(send(chicken), send(double), count('chicken', 2))
    const [offer] = offers(told, '2A')
    expect(offer?.way).toMatchObject({ fewer: { chicken: 1 }, without: [], base: null, item: null })
    const single = onceTaken(told, '2A')
    expect(buildIn(single, '2A').choice).toEqual({
      ...double,
      parts: { ...double.parts, chicken: { placement: 'in', portions: 1, because: 'asked' } },
    })
    expect(buildIn(single, '2A').priceCents).toBe(offer?.priceCents)
    expect(offer?.priceCents).toBeLessThan(buildIn(told, '2A').priceCents)
    expect(shortIn(told)).toEqual(['2A'])
    expect(shortIn(single)).toEqual([])
  })

  test('[C56] as many portions as there are, and none where another build takes the rest', () => {
    const four = choose('garden-chicken', { chicken: 4 })
    expect(ways(given(send(four), count('chicken', 3)), '1A')[0]?.fewer).toEqual({ chicken: 3 })
    const rest = given(send(double), send(chicken), count('chicken', 1))
    expect(shortIn(rest)).toEqual(['1A'])
    expect(ways(rest, '1A').some(({ fewer }) => Object.keys(fewer).length > 0)).toBe(false)
  })

  test('[C56] what isn’t its heart is left out, with fewer before without', () => {
    const told = given(
      send(choose('garden-chicken', { cheddar: 3 })),
      send(chicken),
      count('cheddar', 2),
    )
    expect(shortIn(told)).toEqual(['1A'])
    expect(ways(told, '1A')).toMatchObject([{ fewer: { cheddar: 1 } }, { without: ['cheddar'] }])
    const { opened } = taken(told, '1A', 1)
    const [found] = settleAll(opened, running(told))
    if (!found?.settled) throw new Error('nothing settled')
    expect(readBack(found.offer, found.settled)).toContainEqual({
      say: 'out',
      components: ['cheddar'],
    })
  })

  test('[C56] a base that is left stands in, and each thing that is lacking is seen to at once', () => {
    const told = given(
      send(choose('garden-chicken', { chicken: 2, cheddar: 1 })),
      count('pita', 0),
      count('cheddar', 0),
      count('chicken', 1),
    )
    expect(ways(told, '1A')).toMatchObject([
      { fewer: { chicken: 1 }, without: ['cheddar'], base: 'rice' },
    ])
    expect(shortIn(onceTaken(told, '1A'))).toEqual([])
  })

  test('[C56] no base is offered that the guest keeps from, and no item', () => {
    const none = needs({ code: 'wheat', handling: 'leave-out', reason: null })
    const rice = choose('bean-and-pepper', { slaw: 'no' }, { base: 'rice', ...none })
    const told = given(send(rice), count('rice', 0))
    expect(shortIn(told)).toEqual(['1A'])
    expect(ways(told, '1A')).toEqual([])
    const free = given(send(choose('bean-and-pepper', {}, { base: 'rice' })), count('rice', 0))
    expect(ways(free, '1A')).toMatchObject([{ base: 'pita' }])
  })

  test('[C56] where nothing else helps, other items are offered that the guest can have', () => {
    const told = given(send(chicken), count('chicken', 0))
    expect(ways(told, '1A').map(({ item }) => item)).toEqual(['bean-and-pepper', 'harbor-tuna'])
    const noFish = { ...chicken, ...needs({ code: 'fish', handling: 'leave-out', reason: null }) }
    expect(ways(given(send(noFish), count('chicken', 0)), '1A').map(({ item }) => item)).toEqual([
      'bean-and-pepper',
    ])
  })

  test('[C56] nothing is offered for what isn’t short, is held or is stopped', () => {
    const told = given(send(chicken), send(double), count('chicken', 2))
    expect(offers(told, '1A')).toEqual([])
    const held = onward(told, {
      type: 'tellNeed',
      ...at('2A'),
      asked: 'needs',
      needs: [{ code: 'egg', handling: 'leave-out', reason: null }],
    })
    expect(offers(held, '2A')).toEqual([])
  })

  test('[C56] whatever is offered is accepted as it is, and makes nothing else short', () => {
    const build = fc
      .record({
        item: fc.constantFrom('garden-chicken', 'bean-and-pepper', 'harbor-tuna'),
        base: fc.constantFrom('pita', 'rice'),
        cheddar: fc.integer({ min: 1, max: 3 }),
        slaw: fc.integer({ min: 1, max: 3 }),
        out: fc.constantFrom('egg', 'fish', 'sesame', null),
      })
      .map(({ item, base, cheddar, slaw, out }) =>
        out === null ? choose(item, { cheddar, slaw }, { base }) : choose(item, {}, { base }),
      )
    let tried = 0
    fc.assert(
      fc.property(
        fc.array(build, { minLength: 1, maxLength: 5 }),
        fc.array(
          fc.tuple(fc.constantFrom('cheddar', 'slaw', 'pita', 'rice', 'chicken'), fc.nat(4)),
          {
            minLength: 1,
            maxLength: 3,
          },
        ),
        (builds, counts) => {
          const told = given(
            ...builds.map((one) => send(one)),
            ...[...new Map(counts)].map(([component, portions]) => count(component, portions)),
          )
          const before = shortIn(told)
          for (const name of before)
            for (const [index] of ways(told, name).entries()) {
              tried += 1
              const rest = shortIn(onceTaken(told, name, index))
              expect(rest).not.toContain(name)
              expect(before).toEqual(expect.arrayContaining(rest))
            }
        },
      ),
      { numRuns: 60, seed: 11 },
    )
    expect(tried).toBeGreaterThan(50)
  })

  test('[C56] what is being made is offered as well, and assembly is asked first', () => {
    const told = given(send(beans), send(double), { type: 'start', ticket: 2, letter: 'A' })
    const short = onward(told, count('chicken', 1))
    expect(ways(short, '2A')[0]?.fewer).toEqual({ chicken: 1 })
    expect(buildIn(onceTaken(short, '2A'), '2A').stop?.to?.choice.parts.chicken?.portions).toBe(1)
  })
})
