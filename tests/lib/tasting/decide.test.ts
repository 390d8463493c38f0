import { describe, expect, test } from 'vitest'
import type { TastingCommand } from '#lib/tasting/command.ts'
import { decideTasting, type TastingFacts } from '#lib/tasting/decide.ts'
import type { Tasting, ToldByTaster } from '#lib/tasting/tasting.ts'
import {
  DAWN,
  keeps,
  NONE,
  NOT_SURE,
  PLAN,
  READ,
  TASTING,
  TASTING_STATION,
} from '#tests/support/tasting.ts'

const facts = (told: ToldByTaster = {}, now = DAWN): TastingFacts => ({
  now,
  station: TASTING_STATION,
  told,
})
const BOTH: ToldByTaster = { 1: NONE, 2: NONE }
const MAKING: Tasting = { ...TASTING, stage: 'making' }
const READY: Tasting = { ...TASTING, stage: 'ready', readings: [READ] }

const code = (before: Tasting | null, command: TastingCommand, by = facts()) => {
  const decided = decideTasting(before, 'c1', command, by)
  return 'refusal' in decided ? decided.refusal : decided.tasting
}

describe('planning', () => {
  test('[TB2] a time of the day that is to come, of food of the station, for two', () => {
    expect(code(null, PLAN)).toEqual({ ...TASTING, id: 'c1' })
    expect(code(null, { ...PLAN, components: ['tuna', 'tuna'] })).toMatchObject({
      components: ['tuna'],
    })
  })

  test.each([
    [{ on: '2026-11-26' }, 'in-the-past'],
    [{ from: '06:00', to: '06:50' }, 'in-the-past'],
    [{ from: '23:00', to: '00:30' }, 'over-midnight'],
    [{ from: '10:00', to: '10:00' }, 'over-midnight'],
    // Clocks are set forward at two in the morning.
    [{ on: '2027-03-14', from: '02:10', to: '04:00' }, 'no-such-time'],
    [{ components: [] }, 'nothing-tasted'],
    [{ components: ['tuna', 'turnip'] }, 'no-such-component'],
  ])('[TB2] %j is refused: %s', (change, refusal) => {
    expect(code(null, { ...PLAN, ...change })).toMatchObject({ code: refusal })
  })

  test('[TB2] what runs already may still be planned', () => {
    expect(code(null, PLAN, facts({}, Date.parse('2026-11-27T15:50:00Z')))).toMatchObject({
      stage: 'planned',
    })
  })

  test('[TB9] the same tasting is planned once', () => {
    expect(code(TASTING, PLAN)).toEqual({ code: 'already-so' })
  })
})

test('[TB20] made later than on its own day, it is judged by labels as they count on that day', () => {
  const told = { 1: keeps('fish'), 2: keeps('fish') }
  const before: Tasting = { ...TASTING, components: ['beans'] }
  const asked = { type: 'makeTasting', tasting: 't1' } as const
  expect(code(before, asked, facts(told))).toMatchObject({ stage: 'making' })
  const yearsLater = Date.parse('2032-11-27T15:00:00Z')
  expect(code(before, asked, facts(told, yearsLater))).toEqual({
    code: 'nobody-can-taste',
    components: ['beans'],
  })
})

describe('asking the tasters', () => {
  const ask = (taster: number, told = NONE): TastingCommand => ({
    type: 'askTaster',
    tasting: 't1',
    taster,
    ...told,
  })

  test('[TB3] each is asked, and the answer lies under the command that brought it', () => {
    expect(code(TASTING, ask(2, keeps('milk')))).toMatchObject({
      tasters: [
        { number: 1, told: null },
        { number: 2, told: 'c1' },
      ],
    })
    // Told late, while it is made: it still counts.
    expect(code(MAKING, ask(1))).toMatchObject({ stage: 'making' })
  })

  test('[TB3] nobody else is asked, and no need that the station doesn’t know', () => {
    expect(code(TASTING, ask(3))).toEqual({ code: 'no-such-taster' })
    expect(code(TASTING, ask(1, keeps('turnip')))).toEqual({ code: 'no-such-need' })
    expect(code(TASTING, ask(1, { asked: 'needs', needs: [] }))).toEqual({ code: 'no-such-need' })
    expect(code(TASTING, ask(1, { ...keeps('milk'), asked: 'none' }))).toEqual({
      code: 'no-such-need',
    })
  })

  test('[TB3] it isn’t made while somebody wasn’t asked, nor where nobody can have a food of it', () => {
    const make: TastingCommand = { type: 'makeTasting', tasting: 't1' }
    expect(code(TASTING, make)).toEqual({ code: 'not-asked', tasters: [1, 2] })
    expect(code(TASTING, make, facts({ 1: NONE }))).toEqual({ code: 'not-asked', tasters: [2] })
    const fish = { 1: keeps('fish'), 2: NOT_SURE }
    expect(code(TASTING, make, facts(fish))).toEqual({
      code: 'nobody-can-taste',
      components: ['tuna'],
    })
    expect(code(TASTING, make, facts({ ...fish, 2: NONE }))).toMatchObject({ stage: 'making' })
  })

  test('[TB3] the ways out: another taster, or without that food', () => {
    expect(code(TASTING, { type: 'addTaster', tasting: 't1' })).toMatchObject({
      tasters: [{ number: 1 }, { number: 2 }, { number: 3, told: null }],
    })
    const out = (component: string, of = TASTING) =>
      code(of, { type: 'leaveOutOfTasting', tasting: 't1', component })
    expect(out('tuna')).toMatchObject({ components: ['beans'] })
    expect(out('slaw')).toMatchObject({ code: 'no-such-component' })
    expect(out('tuna', { ...TASTING, components: ['tuna'] })).toEqual({ code: 'nothing-tasted' })
    const tasters = Array.from({ length: 20 }, (_, index) => ({ number: index + 1, told: null }))
    expect(code({ ...TASTING, tasters }, { type: 'addTaster', tasting: 't1' })).toEqual({
      code: 'too-many-tasters',
    })
  })
})

describe('its end', () => {
  const end = (yields: readonly (readonly [string, string, boolean])[], initials?: string) =>
    ({
      type: 'endTasting',
      tasting: 't1',
      initials,
      yields: yields.map(([component, typed, saved]) => ({ component, typed, saved })),
    }) satisfies TastingCommand

  test('[TB10] what was weighed is told against the card for two', () => {
    const after = code(READY, end([['tuna', '6 1/2 oz', true]], 'KT'), facts(BOTH))
    expect(after).toMatchObject({
      stage: 'over',
      tasted: [{ component: 'tuna', typed: '6 1/2 oz', saved: true }],
    })
  })

  test('[TB12] it ends without any end of pans, with nothing measured too', () => {
    expect(code(READY, end([]), facts(BOTH))).toMatchObject({ stage: 'over', tasted: [] })
    expect(code(READY, end([['tuna', ' ', true]]), facts(BOTH))).toMatchObject({
      stage: 'over',
      tasted: [],
    })
  })

  test('[TB11] a yield is saved with initials', () => {
    expect(code(READY, end([['tuna', '6 oz', true]]), facts(BOTH))).toEqual({ code: 'no-initials' })
    expect(code(READY, end([['tuna', '6 oz', true]], ' '), facts(BOTH))).toEqual({
      code: 'no-initials',
    })
    expect(code(READY, end([['tuna', '6 oz', false]]), facts(BOTH))).toMatchObject({
      stage: 'over',
    })
  })

  test('[TB10] a yield of nothing, and of what has no card, is refused by its food', () => {
    expect(code(READY, end([['tuna', '0 oz', true]], 'KT'), facts(BOTH))).toEqual({
      code: 'not-measured',
      component: 'tuna',
      because: 'zero',
    })
    expect(code(READY, end([['beans', '1 cup', true]], 'KT'), facts(BOTH))).toMatchObject({
      because: 'nothing-stated',
    })
    expect(code(READY, end([['slaw', '1 cup', true]], 'KT'), facts(BOTH))).toMatchObject({
      code: 'no-such-component',
    })
  })

  test('[TB9] what wasn’t made has no end, and what is over takes nothing more', () => {
    expect(code(TASTING, end([]))).toEqual({ code: 'not-made' })
    for (const stage of ['over', 'dropped'] as const)
      for (const command of [
        end([]),
        { type: 'makeTasting', tasting: 't1' },
        { type: 'dropTasting', tasting: 't1' },
      ] satisfies TastingCommand[])
        expect(code({ ...TASTING, stage }, command)).toEqual({ code: 'over' })
    expect(code(READY, { type: 'makeTasting', tasting: 't1' })).toEqual({ code: 'already-so' })
    expect(code(MAKING, { type: 'makeTasting', tasting: 't1' })).toEqual({ code: 'already-so' })
    expect(code(null, end([]))).toEqual({ code: 'no-such-tasting' })
  })

  test('[TB3] who came once it was ready to taste is asked before it ends', () => {
    const added = code(READY, { type: 'addTaster', tasting: 't1' }, facts(BOTH)) as Tasting
    expect(added).toMatchObject({ stage: 'ready', tasters: [{}, {}, { number: 3, told: null }] })
    expect(code(added, end([]), facts(BOTH))).toEqual({ code: 'not-asked', tasters: [3] })
    const ask = { type: 'askTaster', tasting: 't1', taster: 3, ...keeps('fish') } as const
    const asked = code(added, ask, facts(BOTH)) as Tasting
    const all = facts({ ...BOTH, 3: keeps('fish') })
    expect(code(asked, end([]), all)).toMatchObject({ stage: 'over' })
    expect(code(added, { type: 'dropTasting', tasting: 't1' }, facts(BOTH))).toMatchObject({
      stage: 'dropped',
    })
  })

  test('[TB9] it may be dropped at any time before', () => {
    expect(code(TASTING, { type: 'dropTasting', tasting: 't1' })).toMatchObject({
      stage: 'dropped',
    })
  })
})
