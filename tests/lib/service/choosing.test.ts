import { describe, expect, it } from 'vitest'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { TicketSent } from '#lib/service/events/event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import {
  accountOf,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  given,
  inPan,
  ofPortions,
  refusalOf,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const ticketOf = (told: Told, command: Given): TicketSent => {
  const [event] = eventsOf(when(told, command))
  if (event?.type !== 'ticketSent') throw new Error('no ticket was sent')
  return event
}

describe("a guest's choice", () => {
  it('[S14] takes the parts that were not named as the item usually has them', () => {
    const bare: BuildChoice = {
      item: 'bean-and-pepper',
      base: 'rice',
      parts: {},
      asked: 'none',
      needs: [],
      agreed: false,
      caution: null,
    }
    expect(ticketOf(given(), send(bare))).toEqual(
      ticketOf(given(), send(choose('bean-and-pepper'))),
    )
  })

  it('[S15] puts on tickets exactly the portions that it takes, on the side or in it', () => {
    const told = given(send(choose('bean-and-pepper', { peppers: 2, slaw: 'no' })))
    const onTickets = demoStation.components.flatMap(({ id }): [string, number][] => {
      const amount = accountOf(told, id).onTickets
      return amount === 0 ? [] : [[id, amount]]
    })
    expect(Object.fromEntries(onTickets)).toEqual({
      rice: ofPortions('rice', 1),
      beans: ofPortions('beans', 1),
      peppers: ofPortions('peppers', 2),
      cheddar: ofPortions('cheddar', 1),
      almonds: ofPortions('almonds', 1),
      'yogurt-sauce': 1,
    })
    expect(inPan(told, 'pan-beans')).toBe(ofPortions('beans', 24))
  })

  it('[S16] costs what its item does, and what each portion beyond the first does', () => {
    const cents = (choice: BuildChoice) => ticketOf(given(), send(choice)).builds[0]?.priceCents
    expect(cents(choose('garden-chicken'))).toBe(650)
    expect(cents(choose('garden-chicken', { slaw: 'no', almonds: 'in' }))).toBe(650)
    expect(cents(choose('garden-chicken', { cheddar: 3, chicken: 2 }))).toBe(650 + 2 * 60 + 200)
    expect(cents(choose('garden-chicken', {}, { base: 'rice' }))).toBe(650)
  })

  const wrong: [string, BuildChoice, Refusal][] = [
    [
      'an item that is not on the menu',
      { ...choose('harbor-tuna'), item: 'kelp-roll' },
      { code: 'unknown', what: 'item', id: 'kelp-roll' },
    ],
    [
      'a component that the line has not',
      choose('harbor-tuna', { kelp: 'in' }),
      { code: 'unknown', what: 'component', id: 'kelp' },
    ],
    [
      'a component that belongs to another item',
      choose('harbor-tuna', { beans: 'in' }),
      { code: 'not-of-this-item', item: 'harbor-tuna', component: 'beans' },
    ],
    [
      'a base as a part',
      choose('harbor-tuna', { rice: 'in' }),
      { code: 'not-of-this-item', item: 'harbor-tuna', component: 'rice' },
    ],
    [
      'no base where one is chosen',
      choose('harbor-tuna', {}, { base: null }),
      { code: 'base-missing', item: 'harbor-tuna' },
    ],
    [
      'a base that is none',
      choose('harbor-tuna', {}, { base: 'slaw' }),
      { code: 'base-missing', item: 'harbor-tuna' },
    ],
  ]
  it.each(wrong)('[S17] is refused with %s', (_, choice, refusal) => {
    expect(refusalOf(when(given(), send(choice)))).toEqual(refusal)
  })

  it('[S17] has no base where its item has none', () => {
    const station = {
      ...demoStation,
      items: demoStation.items.map((item) =>
        item.id === 'harbor-tuna' ? { ...item, base: null } : item,
      ),
    }
    const told = { ...given(), state: { ...given().state, station } }
    expect(codeOf(when(told, send(choose('harbor-tuna', {}, { base: null }))))).toBeNull()
    expect(codeOf(when(told, send(choose('harbor-tuna', {}, { base: 'pita' }))))).toBe(
      'base-missing',
    )
  })

  it.each([
    ['in', 0],
    ['in', -1],
    ['in', 1.5],
    ['in', 5],
    ['in', 1e300],
    ['side', 0],
    ['no', 1],
  ] as const)('[S18] is refused with a component "%s" in %d portions', (placement, portions) => {
    const choice = choose('garden-chicken')
    const parts = { ...choice.parts, peppers: { placement, portions, because: 'asked' as const } }
    expect(refusalOf(when(given(), send({ ...choice, parts })))).toEqual({
      code: 'absurd-portions',
      component: 'peppers',
      most: 4,
    })
  })

  it('[S18] takes one to four portions of a component', () => {
    for (const count of [1, 2, 3, 4])
      expect(codeOf(when(given(), send(choose('garden-chicken', { peppers: count }))))).toBeNull()
  })

  it("[S19] never leaves out its item's heart, nor what can't be left out", () => {
    const refusal = { code: 'cannot-leave-out', item: 'garden-chicken', component: 'chicken' }
    expect(refusalOf(when(given(), send(choose('garden-chicken', { chicken: 'no' }))))).toEqual(
      refusal,
    )
    const station = {
      ...demoStation,
      items: demoStation.items.map((item) => ({
        ...item,
        parts: item.parts.map((part) => ({ ...part, required: part.component === 'slaw' })),
      })),
    }
    const told = { ...given(), state: { ...given().state, station } }
    expect(refusalOf(when(told, send(choose('garden-chicken', { chicken: 'no' }))))).toEqual(
      refusal,
    )
    expect(codeOf(when(told, send(choose('garden-chicken', { slaw: 'no' }))))).toBe(
      'cannot-leave-out',
    )
  })

  it('[S20] has on the side only what has lidded cups', () => {
    expect(refusalOf(when(given(), send(choose('garden-chicken', { cheddar: 'side' }))))).toEqual({
      code: 'no-cups',
      component: 'cheddar',
    })
    expect(codeOf(when(given(), send(choose('garden-chicken', { peppers: 'side' }))))).toBeNull()
  })

  it('[S21] that takes nothing is refused', () => {
    const station = {
      ...demoStation,
      items: demoStation.items.map((item) => ({ ...item, base: null, heart: 'none', parts: [] })),
    }
    const told = { ...given(), state: { ...given().state, station } }
    const empty: BuildChoice = {
      item: 'harbor-tuna',
      base: null,
      parts: {},
      asked: 'none',
      needs: [],
      agreed: false,
      caution: null,
    }
    expect(codeOf(when(told, send(empty)))).toBe('nothing-in-it')
  })
})
