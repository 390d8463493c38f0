import { describe, expect, it } from 'vitest'
import { SCRAPE } from '#lib/rooms/pans/facts/beliefs.ts'
import {
  choice,
  codeOf,
  deciding,
  eventsOf,
  give,
  happens,
  load,
  openedAs,
  order,
  panFor,
  portionOf,
  refusalOf,
  type Stocked,
  stocked,
} from '#tests/support/stock.ts'

const belief = ({ state }: Stocked, component: string) => {
  const found = state.beliefs[component]
  if (!found) throw new Error(`nothing is believed of ${component}`)
  return found
}
const counted = ({ state }: Stocked, component: string): number =>
  (state.pans[panFor(component)]?.amount ?? Number.NaN) / portionOf(component)

/** So many chicken builds made, two minutes apart. */
const made = (told: Stocked, builds: number): Stocked =>
  Array.from({ length: builds }).reduce<Stocked>((so) => {
    const at = { ticket: so.state.nextTicket, letter: 'A' }
    const minutes = so.state.nextTicket * 2
    return give(
      so,
      minutes,
      order(choice('garden-chicken')),
      { type: 'start', ...at },
      { type: 'finish', ...at },
    )
  }, told)

describe('a correction', () => {
  it('[U1] that was counted is taken as it is', () => {
    const told = give(stocked(), 5, {
      type: 'correct',
      pan: panFor('chicken'),
      amount: 7 * portionOf('chicken'),
      kind: 'count',
    })
    expect(counted(told, 'chicken')).toBe(7)
    expect(belief(told, 'chicken').left).toBeCloseTo(7)
    expect(told.state.lookedAt.chicken).toBe(told.state.at)
  })

  it('[U1] without a word of how it was come by is a count', () => {
    const told = give(stocked(), 5, { type: 'correct', pan: panFor('almonds'), amount: 3 })
    expect(told.state.pans[panFor('almonds')]?.amount).toBe(3)
    expect(codeOf(deciding(told, { type: 'correct', pan: panFor('almonds'), amount: 3 }))).toBe(
      'already-so',
    )
  })

  it('[U1] by eye lands between what was believed and what was seen', () => {
    const before = made(stocked({ chicken: 24 }), 8)
    const told = give(before, 40, { type: 'correct', pan: panFor('chicken'), quarters: 2 })
    expect(counted(before, 'chicken')).toBe(16)
    expect(counted(told, 'chicken')).toBeLessThan(16)
    expect(counted(told, 'chicken')).toBeGreaterThan(0.5 * 24 - 1)
    expect(counted(told, 'chicken')).toBeCloseTo(belief(told, 'chicken').left, 3)
  })

  it('[U1] that confirms is taken too, since it teaches', () => {
    const before = made(stocked(), 4)
    const read = before.state.pans[panFor('chicken')]?.amount ?? 0
    const command = {
      type: 'correct',
      pan: panFor('chicken'),
      amount: read,
      kind: 'weighing',
    } as const
    expect(eventsOf(deciding(before, command))).toHaveLength(1)
    const told = give(before, 40, command)
    expect(belief(told, 'chicken').biasVar).toBeLessThan(belief(before, 'chicken').biasVar)
  })

  it('[U1] of counted food by eye isn’t ignored', () => {
    const before = stocked({ pita: 30 })
    const told = give(before, 5, { type: 'correct', pan: panFor('pita'), quarters: 2 })
    expect(counted(told, 'pita')).toBeLessThan(36)
  })

  it('[U2] of a scrape is about a sixteenth of a full pan', () => {
    const { usualPortions = 0, id = '' } =
      stocked()
        .state.station.line.wells.flatMap(({ pans }) => pans)
        .find((pan) => pan.component === 'slaw') ?? {}
    const reads = [0, 1, 2, 3, 4].map((quarters) => {
      const [event] = eventsOf(deciding(stocked(), { type: 'correct', pan: id, quarters }))
      return event?.type === 'countCorrected' ? (event.read ?? 0) / portionOf('slaw') : null
    })
    const shares = [SCRAPE, 0.25, 0.5, 0.75, 1]
    expect(reads).toHaveLength(5)
    for (const [index, read] of reads.entries())
      expect(read).toBeCloseTo((shares[index] ?? 0) * usualPortions, 3)
  })

  it('[U18] of full takes nothing from a pan that is heaped, and adds to one that was counted low', () => {
    const heaped = stocked({ chicken: 36 })
    const told = give(heaped, 5, { type: 'correct', pan: panFor('chicken'), quarters: 4 })
    expect(counted(told, 'chicken')).toBeCloseTo(36, 2)
    const low = give(made(stocked({ chicken: 24 }), 8), 40, {
      type: 'correct',
      pan: panFor('chicken'),
      quarters: 4,
    })
    expect(counted(low, 'chicken')).toBeGreaterThan(16)
  })

  it('[U3] by weight takes the tare off, and refuses what is below it', () => {
    const pan = panFor('chicken')
    const base = stocked()
    const { station } = base.state
    const wells = station.line.wells.map((well) => ({
      ...well,
      pans: well.pans.map((one) => ({ ...one, tareMg: one.id === pan ? 900_000 : null })),
    }))
    const told: Stocked = {
      ...base,
      state: { ...base.state, station: { ...station, line: { wells } } },
    }
    const net = 20 * portionOf('chicken')
    const [event] = eventsOf(deciding(told, { type: 'correct', pan, weighedMg: 900_000 + net }))
    expect(event).toMatchObject({ type: 'countCorrected', kind: 'weighing', read: net })
    expect(refusalOf(deciding(told, { type: 'correct', pan, weighedMg: 899_999 }))).toEqual({
      code: 'wrong-amount',
      pan,
      problem: { code: 'below-tare', tareMg: 900_000 },
    })
    const slaw = { type: 'correct', pan: panFor('slaw'), weighedMg: 1_000_000 } as const
    expect(codeOf(deciding(told, slaw))).toBe('no-tare')
    const pita = { type: 'correct', pan: panFor('pita'), weighedMg: 1_000_000 } as const
    expect(codeOf(deciding(told, pita))).toBe('not-by-weight')
  })

  it('[U4] that says nothing, or two things, is refused', () => {
    const pan = panFor('chicken')
    for (const command of [
      { type: 'correct', pan },
      { type: 'correct', pan, amount: 1, quarters: 2 },
      { type: 'correct', pan, quarters: 2, kind: 'count' },
    ] as const)
      expect(codeOf(deciding(stocked(), command)), JSON.stringify(command)).toBe('reading-unclear')
    expect(codeOf(deciding(stocked(), { type: 'correct', pan: 'pan-kale', quarters: 2 }))).toBe(
      'unknown pan',
    )
  })
})

describe('what the pans are believed to hold', () => {
  it('[U5] follows loads, builds, and what is taken back', () => {
    const empty = openedAs()
    expect(belief(empty, 'chicken').left).toBe(0)
    const full = happens(empty, 0, load('chicken', 20), load('pita', 20))
    expect(belief(full, 'chicken').left).toBeCloseTo(20)
    expect(belief(full, 'chicken').leftVar).toBeGreaterThan(0)
    expect(belief(full, 'pita').leftVar).toBe(0)
    const before = stocked({ chicken: 20 })
    const one = made(before, 1)
    expect(belief(one, 'chicken').left).toBeCloseTo(19)
    const back = give(one, 10, { type: 'takeBack', ticket: 1, letter: 'A', made: false })
    expect(belief(back, 'chicken').left).toBeCloseTo(20)
  })

  it('[U5] goes with a pan that is changed, and comes with the new one', () => {
    const before = made(stocked({ chicken: 20 }), 4)
    const pan = panFor('chicken')
    const held = before.state.pans[pan]?.amount ?? 0
    const told = happens(before, 30, {
      type: 'panChanged',
      pan,
      takenAway: held,
      amount: 12 * portionOf('chicken'),
      food: { heldBy: 'hot', clock: null, dateMark: null, finishedAt: 0, guarded: false },
    })
    expect(belief(told, 'chicken').left).toBeCloseTo(12)
    const again = happens(told, 31, { type: 'panChanged', pan, takenAway: 0, amount: 1 })
    expect(belief(again, 'chicken').left).toBeCloseTo(0, 1)
  })

  it('[U5] begins with the bias that is known', () => {
    const told = openedAs({ knownBias: { chicken: { bias: 0.1, sd: 0.04 } } })
    expect(belief(told, 'chicken').bias).toBe(0.1)
    expect(belief(told, 'chicken').biasVar).toBeCloseTo(0.04 ** 2)
    expect(belief(told, 'slaw').bias).toBe(0)
  })

  it('[U5] is what weighings say of a heavy hand, one bad one apart', () => {
    const pan = panFor('chicken')
    const weighed = (told: Stocked, portions: number, minutes: number): Stocked =>
      give(told, minutes, {
        type: 'correct',
        pan,
        amount: Math.round(portions * portionOf('chicken')),
        kind: 'weighing',
      })
    let told = weighed(stocked({ chicken: 40 }), 40, 1)
    told = made(told, 10)
    // Ten builds took 11 portions' worth: 10 percent heavy.
    told = weighed(told, 29, 22)
    told = made(told, 10)
    told = weighed(told, 18, 43)
    const { bias } = belief(told, 'chicken')
    expect(bias).toBeGreaterThan(0.05)
    expect(bias).toBeLessThan(0.15)
    const misread = weighed(told, 38, 44)
    expect(Math.abs(belief(misread, 'chicken').bias - bias)).toBeLessThan(0.03)
  })
})

describe('waste', () => {
  it('[U6] leaves its pan with its reason, and what is believed of it', () => {
    const before = stocked({ chicken: 20 })
    const amount = 5 * portionOf('chicken')
    const told = give(before, 5, { type: 'waste', pan: panFor('chicken'), amount, reason: 'spill' })
    expect(counted(told, 'chicken')).toBe(15)
    expect(belief(told, 'chicken').left).toBeCloseTo(15)
    expect(told.state.wastes.chicken).toEqual({ spill: amount })
    expect(told.state.accounts.chicken?.wasted).toBe(amount)
    const more = give(told, 6, {
      type: 'waste',
      component: 'chicken',
      amount: portionOf('chicken'),
      reason: 'sample',
    })
    expect(more.state.wastes.chicken).toEqual({ spill: amount, sample: portionOf('chicken') })
  })

  it('[U6] beyond the count is waste all the same, and the account stays right', () => {
    const told = give(stocked({ chicken: 2 }), 5, {
      type: 'waste',
      component: 'chicken',
      amount: 3 * portionOf('chicken'),
      reason: 'dropped',
    })
    const { loaded, corrected, used, wasted, takenAway } = told.state.accounts.chicken ?? {
      loaded: 0,
      corrected: 0,
      used: 0,
      wasted: 0,
      takenAway: 0,
    }
    expect(loaded + corrected).toBe(used + wasted + takenAway)
    expect(wasted).toBe(3 * portionOf('chicken'))
  })

  it('[U6] of nothing, of too much, or of what isn’t there is refused', () => {
    const waste = (over: object) =>
      codeOf(deciding(stocked(), { type: 'waste', amount: 1, reason: 'spill', ...over }))
    expect(waste({ component: 'chicken', amount: 0 })).toBe('absurd-amount')
    expect(waste({ component: 'chicken', amount: 1e12 })).toBe('absurd-amount')
    expect(waste({ component: 'kale' })).toBe('unknown component')
    expect(waste({ pan: 'pan-kale' })).toBe('unknown pan')
    expect(waste({})).toBe('unknown component')
  })
})

describe('a reading far from what is believed', () => {
  const far = made(stocked({ chicken: 24 }), 2)
  const look = (so: Stocked, quarters: number, minutes: number): Stocked =>
    give(so, minutes, { type: 'correct', pan: panFor('chicken'), quarters })
  const weigh = (so: Stocked, portions: number, minutes: number): Stocked =>
    give(so, minutes, {
      type: 'correct',
      pan: panFor('chicken'),
      amount: Math.round(portions * portionOf('chicken')),
      kind: 'weighing',
    })

  it('[U17] moves it little and is questioned', () => {
    const once = weigh(far, 10, 30)
    expect(counted(once, 'chicken')).toBeGreaterThan(20)
    expect(belief(once, 'chicken').doubted).toMatchObject({
      pan: panFor('chicken'),
      kind: 'weighing',
      amount: 10 * portionOf('chicken'),
      at: once.state.at,
    })
  })

  it('[U17] wins when a second one agrees, and the scoops are not blamed', () => {
    const twice = weigh(weigh(far, 10, 30), 10.3, 31)
    expect(counted(twice, 'chicken')).toBeCloseTo(10.15, 1)
    expect(belief(twice, 'chicken').doubted).toBeUndefined()
    expect(Math.abs(belief(twice, 'chicken').bias)).toBeLessThan(0.05)
    expect(counted(weigh(twice, 10, 32), 'chicken')).toBeCloseTo(10, 0)
  })

  it('[U17] wins also between what is used in the meantime', () => {
    const once = weigh(far, 12, 30)
    const at = { ticket: once.state.nextTicket, letter: 'A' }
    const used = give(
      once,
      31,
      order(choice('garden-chicken')),
      { type: 'start', ...at },
      { type: 'finish', ...at },
    )
    expect(counted(weigh(used, 11, 33), 'chicken')).toBeCloseTo(11, 0)
  })

  it('[U17] wins with two equal looks, as sure as one look', () => {
    const twice = look(look(far, 1, 30), 1, 31)
    expect(counted(twice, 'chicken')).toBeCloseTo(counted(look(twice, 1, 32), 'chicken'), 0)
    expect(counted(twice, 'chicken')).toBeLessThan(12)
    expect(belief(twice, 'chicken').leftVar).toBeGreaterThan(2)
  })

  it('[U17] stays alone where the second agrees with the belief, or with neither', () => {
    const confirmed = weigh(weigh(far, 10, 30), 22, 31)
    expect(counted(confirmed, 'chicken')).toBeGreaterThan(20.5)
    expect(belief(confirmed, 'chicken').doubted).toBeUndefined()
    const neither = weigh(weigh(far, 10, 30), 4, 31)
    expect(belief(neither, 'chicken').doubted?.amount).toBe(4 * portionOf('chicken'))
    expect(counted(weigh(neither, 4, 32), 'chicken')).toBeCloseTo(4, 0)
  })

  it('[U17] is forgotten with the pan', () => {
    const once = weigh(far, 10, 30)
    const full = load('chicken', 24)
    if (full.type !== 'panLoaded') throw new Error('no load')
    const changed = happens(once, 31, { ...full, type: 'panChanged', takenAway: 0 })
    expect(belief(changed, 'chicken').doubted).toBeUndefined()
  })
})
