import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Delivery } from '#lib/larder/delivery.ts'
import { cardsOf, madeOf } from '#lib/paper/lists/made-of.ts'
import { cameLast } from '#lib/paper/purchase/came-last.ts'
import { neededFor } from '#lib/paper/purchase/needed.ts'
import { type Buying, packsFor, purchaseFacts, toBuy } from '#lib/paper/purchase/purchase-facts.ts'
import { purchaseListEn as words } from '#lib/paper/words/purchase-list-en.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import { compared, dividedBy, minus, plus, ratio, toNumber, ZERO } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { COUNTED, US_G, US_ML } from '#lib/recipes/units.ts'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import { CARDED } from '#tests/support/carded-station.ts'

const cards = cardsOf(CARDED)

const loads = (station: StationDocument, component: string, count: number): PrepChoice => {
  const found = findComponent(station, component)
  if (!found) throw new Error(`no ${component}`)
  return { component, loads: count, portions: count * loadSize(station, found) }
}

const ofDemo = (said: Readonly<Record<string, number>>): readonly PrepChoice[] =>
  Object.entries(said).map(([component, count]) => loads(CARDED, component, count))

const amount = (typed: string): Amount => {
  const read = typedAmount(typed)
  if (!read.ok || read.amount === null) throw new Error(`${typed} is no amount`)
  return read.amount
}

const buyingOf = (foods: readonly PrepChoice[]): readonly Buying[] =>
  purchaseFacts(cards, foods, {}).places.flatMap(({ buy }) => buy)

const found = (all: readonly Buying[], ingredient: string): Buying => {
  const one = all.find((buying) => buying.ingredient === ingredient)
  if (!one) throw new Error(`${ingredient} isn’t on the list`)
  return one
}

describe('what has to be bought for a plan', () => {
  it('[LS1] lines of several foods are added by what is bought, exactly', () => {
    const all = buyingOf(ofDemo({ chicken: 2, peppers: 3, slaw: 2 }))
    // 2 × 3 Tbsp and 3 × 1/4 cup: 6 + 12 Tbsp.
    const [oil] = found(all, 'canola-oil').amounts
    expect(oil && compared(oil.size, dividedBy(US_ML.cup, ratio(8, 9)))).toBe(0)
    expect(words.amount(found(all, 'canola-oil'))).toBe('1 cup 2 Tbsp')
    expect(found(all, 'canola-oil').foods).toEqual(['Herb chicken', 'Roast peppers'])
    // A recipe in it: two loads take two cups of a card that makes one.
    expect(words.amount(found(all, 'soy-sauce'))).toBe('1 cup')
    expect(words.amount(found(all, 'cabbage'))).toBe('5 lb')
  })

  it('[LS1] a recipe in a recipe is multiplied through both', () => {
    // 16 portions of 1/2 cup are the card’s 2 qt; 2 cups of 4 1/4 are 8/17 of the other’s.
    const all = buyingOf([{ component: 'tuna', loads: 1, portions: 16 }])
    const [mayonnaise] = found(all, 'mayonnaise').amounts
    expect(mayonnaise && compared(mayonnaise.size, dividedBy(US_ML.qt, ratio(17, 8)))).toBe(0)
    expect(words.amount(found(all, 'tuna'))).toBe('4 lb')
  })

  it('[LS1] loads of a and of b take what a and b take together, to the last fraction', () => {
    const one = fc.integer({ min: 1, max: 40 })
    fc.assert(
      fc.property(one, one, fc.constantFrom('chicken', 'slaw', 'tuna', 'peppers'), (a, b, food) => {
        const sizes = (count: number) =>
          new Map(
            neededFor(cards, [loads(CARDED, food, count)]).of.map(({ ingredient, shares }) => [
              ingredient,
              shares.reduce((sum, share) => plus(sum, share.amount.size), ZERO),
            ]),
          )
        const [apart, other, together] = [sizes(a), sizes(b), sizes(a + b)]
        expect(together.size).toBeGreaterThan(0)
        for (const [ingredient, size] of together) {
          const sum = plus(apart.get(ingredient) ?? ZERO, other.get(ingredient) ?? ZERO)
          expect(compared(size, sum), ingredient).toBe(0)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('[LS2] what is eaten of it is bought for: 4 lb of peppers that are 80 percent are 5 lb', () => {
    // As purchased = edible / yield: the open textbook’s rule, standards.md, yields.
    expect(words.amount(found(buyingOf(ofDemo({ peppers: 1 })), 'bell-peppers'))).toBe('5 lb')
  })

  it('[LS3] packs hold all of it, and one fewer doesn’t', () => {
    const all = buyingOf(ofDemo({ beans: 7, peppers: 6, slaw: 12, chicken: 3, pita: 12 }))
    expect(words.packs(found(all, 'black-beans'))).toBe('2 cases of 6 × #10 cans')
    // 6 × 5 lb of 25 lb; 12 × 2 1/2 lb of 50 lb; 144 pieces of 120.
    expect(words.packs(found(all, 'bell-peppers'))).toBe('2 packs of 25 lb')
    expect(words.packs(found(all, 'cabbage'))).toBe('1 pack of 50 lb')
    expect(words.packs(found(all, 'pita'))).toBe('2 cases of 10 × 12 pieces')
    const size = fc.integer({ min: 1, max: 100_000 })
    fc.assert(
      fc.property(size, fc.integer({ min: 1, max: 500 }), (ounces, pack) => {
        const share: Amount = {
          kind: 'weight',
          size: dividedBy(US_G.oz, ratio(3, ounces)),
          written: 'us',
        }
        const invoice = { date: '2026-11-20', packs: 3, packTyped: `${pack} oz`, cents: 100 }
        const shares = [{ food: 'a', amount: share, density: null }]
        const { packs } = packsFor(shares, invoice)
        expect((packs ?? 0) * pack * 3).toBeGreaterThanOrEqual(ounces)
        expect(((packs ?? 0) - 1) * pack * 3).toBeLessThan(ounces)
      }),
    )
  })

  it('[LS3] weight and volume of one thing are joined by a density alone', () => {
    const shares = [
      { food: 'a', amount: amount('1 qt'), density: null },
      { food: 'b', amount: amount('2 lb'), density: null },
    ]
    const invoice = { date: '2026-11-20', packs: 1, packTyped: '25 lb', cents: 100 }
    expect(packsFor(shares, invoice)).toEqual({ packs: null, why: 'no-density' })
    const density = { gPerMl: ratio(9, 10), by: 'card' as const, offBy: 0.05 }
    const known = shares.map((one) => ({ ...one, density }))
    expect(packsFor(known, invoice)).toEqual({ packs: 1, why: null })
    expect(packsFor(known, null).why).toBe('no-pack')
    expect(packsFor(known, { ...invoice, packTyped: 'a pail' }).why).toBe('pack-not-understood')
  })

  it('[LS4] what can’t be reckoned is named with its food, and no amount is made up', () => {
    const { lacking, places } = purchaseFacts(
      cards,
      ofDemo({ 'yogurt-sauce': 1, beans: 1, tuna: 1 }),
      {},
    )
    const named = lacking.map(({ name, of }) => [name, of.map(({ food, code }) => [food, code])])
    expect(named).toEqual(
      ['Plain yogurt', 'Chives'].map((name) => [name, [['Lemon yogurt sauce', 'no-card']]]),
    )
    const all = places.flatMap(({ buy }) => buy)
    // Reckoned for the tuna salad alone: its one row says for what it isn’t.
    const juice = found(all, 'lemon-juice')
    expect(juice.foods).toEqual(['Tuna salad'])
    expect(words.andMore(juice.lacking)).toBe('and more for lemon yogurt sauce: not reckoned')
    expect(words.andMore(found(all, 'mayonnaise').lacking)).toBe('')
    expect(words.amount(found(all, 'cumin'))).toBe('to taste')
    expect(found(all, 'relish').why).toBe('pack-not-understood')
    expect(found(all, 'mayonnaise').why).toBe('no-pack')
  })

  it('[LS14] what is bought has one row, whatever foods it is for and whatever isn’t known of it', () => {
    const bare = cardsOf({
      ...CARDED,
      recipes: CARDED.recipes.map(({ lines: _, yields: __, ...one }) => one),
      components: CARDED.components.map(({ lines: _, ...one }) => one),
    })
    const foods = ofDemo({ chicken: 1, peppers: 1, 'yogurt-sauce': 1, tuna: 1 })
    for (const own of [cards, bare]) {
      const { lacking, places } = purchaseFacts(own, foods, {})
      const names = [...places.flatMap(({ buy }) => buy), ...lacking].map(({ name }) => name)
      expect(names.length).toBeGreaterThan(8)
      expect(new Set(names).size).toBe(names.length)
    }
    const oil = purchaseFacts(bare, foods, {}).lacking.find(({ name }) => name === 'Canola oil')
    expect(oil && words.lackingFor(oil.of)).toBe('for herb chicken and roast peppers')
    expect(oil && words.whyNot(oil.of)).toHaveLength(1)
    const [one] = oil?.of ?? []
    expect(one && words.whyNot([one, { ...one, food: 'Slaw', code: 'circle' }])).toEqual([
      `${one?.food}: No card says how much of it. Type that on the set-up.`,
      'Slaw: The recipe contains itself. Mend it on the set-up.',
    ])
  })

  it('[LS4] every ingredient of every food is on the list, reckoned or named', () => {
    for (const station of [CARDED, ...STATION_SETS.map(({ document }) => document)]) {
      const own = cardsOf(station)
      const foods = station.components.map(({ id }) => loads(station, id, 2))
      const { places, lacking } = purchaseFacts(own, foods, {})
      const all = places.flatMap(({ buy }) => buy)
      const named = new Set([...all.map(({ name }) => name), ...lacking.map(({ name }) => name)])
      for (const choice of foods) {
        const made = madeOf(own, choice)
        for (const { of, isRecipe } of made?.card.lines ?? []) {
          if (isRecipe) continue
          const name = own.box.bought.get(of)?.name ?? of
          expect([...named], `${station.id}, ${choice.component}`).toContain(name)
        }
      }
    }
  })

  it('[LS4] a card that contains itself, or an amount that isn’t understood, ends and is named', () => {
    const circle: StationDocument = {
      ...CARDED,
      recipes: CARDED.recipes.map((one) =>
        one.id === 'dressed-mayonnaise'
          ? {
              ...one,
              recipes: ['tuna-mix'],
              lines: [
                { of: 'tuna-mix', typed: '1 cup' },
                { of: 'mayonnaise', typed: '2 to 3 lb' },
              ],
            }
          : one,
      ),
    }
    const { lacking } = neededFor(cardsOf(circle), [{ component: 'tuna', loads: 1, portions: 16 }])
    expect(lacking.map(({ code }) => code)).toEqual(['circle', 'range', 'empty'])
  })

  it('[LS5] what lies nowhere comes first, then dry store, cooler, freezer, that day', () => {
    const lies = Object.fromEntries(CARDED.ingredients.map(({ id, lies: at }) => [id, at]))
    const foods = ofDemo({ chicken: 1, peppers: 1, beans: 1, slaw: 1 })
    const { places } = purchaseFacts(cards, foods, { ...lies, 'soy-sauce': 'that-day' })
    expect(places.map((one) => one.lies)).toEqual([null, 'dry-store', 'cooler', 'that-day'])
    expect(places[0]?.buy.map(({ ingredient }) => ingredient)).toContain('herb-rub')
  })

  it('[LS6] what is bought is never less than it takes, and less than a step more', () => {
    const anyAmount = fc
      .tuple(fc.integer({ min: 1, max: 10_000_000 }), fc.integer({ min: 1, max: 997 }))
      .chain(([over, under]) =>
        fc.constantFrom<Amount>(
          { kind: 'weight', size: ratio(over, under), written: 'us' },
          { kind: 'volume', size: ratio(over, under), written: 'us' },
          { kind: 'weight', size: ratio(over, under), written: 'metric' },
          { kind: 'count', size: ratio(over, under), of: 'egg' },
          { kind: 'count', size: ratio(over, under), of: 'head' },
          { kind: 'cans', size: ratio(over, under), can: '10' },
        ),
      )
    fc.assert(
      fc.property(anyAmount, (one) => {
        const bought = toBuy(one)
        expect(compared(bought.size, one.size)).toBeGreaterThanOrEqual(0)
        const step = one.kind === 'weight' || one.kind === 'volume' ? bought.step : ratio(1)
        expect(toNumber(minus(bought.size, one.size))).toBeLessThan(2 * toNumber(step))
      }),
      { numRuns: 300 },
    )
    // 1 1/2 eggs a portion are 30 for 20: common practice, no source; 15 dozen to a case, from memory.
    const eggs = { kind: 'count', size: ratio(30), of: 'egg' } as const
    expect(COUNTED.egg).toContain('eggs')
    expect(
      packsFor([{ food: 'a', amount: eggs, density: null }], {
        date: '2026-11-20',
        packs: 1,
        packTyped: '15 dozen',
        cents: 100,
      }),
    ).toEqual({ packs: 1, why: null })
    expect(toNumber(toBuy({ ...eggs, size: ratio(61, 2) }).size)).toBe(31)
  })
})

const delivered = (
  at: number,
  packs: number | null,
  sentBack: Delivery['sentBack'] = null,
): Delivery => ({
  ...{ ingredient: 'cheddar', name: 'Cheddar', same: 'same', comes: 'cold', read: null },
  ...{ solid: null, useBy: null, lot: null, packs, at, sentBack },
})

describe('what of a thing came last', () => {
  const NOW = Date.parse('2026-12-04T15:00:00Z')
  const DAY = 86_400_000
  const came = (deliveries: readonly Delivery[]) =>
    cameLast({
      ...{ now: NOW, timeZone: 'America/Chicago', wells: [] },
      others: [
        {
          ...{ ingredient: 'cheddar', name: 'Cheddar', maker: null, pack: null },
          ...{ label: 'read', readOn: '2026-12-01', comes: 'cold', deliveries },
          cold: null,
        },
      ],
    }).cheddar

  it('[LS11] is the newest that was received in a fortnight, by day and packs; nothing is taken off for it', () => {
    expect(came([])).toBeUndefined()
    expect(came([delivered(NOW - DAY, 2), delivered(NOW - 3 * DAY, 5)])).toEqual({
      ...{ on: '2026-12-03', packs: 2 },
    })
    // What went back never came, and what came three weeks ago is likely gone.
    expect(came([delivered(NOW, 9, 'too-warm'), delivered(NOW - 2 * DAY, null)])).toEqual({
      ...{ on: '2026-12-02', packs: null },
    })
    expect(came([delivered(NOW - 21 * DAY, 4)])).toBeUndefined()
    const foods = ofDemo({ cheddar: 4 })
    const bare = found(buyingOf(foods), 'cheddar')
    const told = found(
      purchaseFacts(cards, foods, {}, { cheddar: { on: '2026-12-03', packs: 2 } }).places.flatMap(
        ({ buy }) => buy,
      ),
      'cheddar',
    )
    expect(words.came(told)).toBe('Came Thu, Dec 3: 2 packs')
    expect(words.came(bare)).toBe('')
    expect({ ...told, came: null }).toEqual(bare)
  })
})
