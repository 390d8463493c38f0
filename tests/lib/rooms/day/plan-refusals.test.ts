import { describe, expect, it } from 'vitest'
import { asSaid } from '#lib/rooms/prep/views/crew-entry.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import { commandSchema } from '#lib/spine/registry.ts'
import {
  OPEN_PLANNED,
  PLAN,
  type PlanGiven,
  type PlanRefused,
  plannedService,
  RICE,
} from '#tests/support/plans.ts'
import {
  codeOf,
  demoStation,
  type Given,
  NOTHING,
  type Told,
  when,
} from '#tests/support/service.ts'

const plan = (over: Partial<PlanGiven>): readonly [Told, Given] => [NOTHING, { ...PLAN, ...over }]
const there = { initials: 'KT', adult: true, from: '08:00', to: '12:00' }

/** A command that is refused with each code, and where. */
const refused: Readonly<Record<PlanRefused, readonly [Told, Given]>> = {
  'plan-in-past': plan({ on: '2026-11-24' }),
  'doors-close-first': plan({ doorsOpen: '13:00', doorsClose: '11:00' }),
  'over-midnight': plan({ crew: [{ ...there, from: '22:00', to: '01:00' }] }),
  // Clocks are set forward in Chicago from two to three.
  'no-such-time': plan({ on: '2027-03-14', doorsOpen: '02:30', doorsClose: '04:00', crew: [] }),
  'after-the-service': plan({ crew: [{ ...there, on: '2026-11-27' }] }),
  'there-twice': plan({ crew: [there, { ...there, from: '11:59', to: '13:00' }] }),
  'adult-and-student': plan({
    crew: [there, { ...there, adult: false, from: '12:00', to: '13:00' }],
  }),
  'plans-overlap': plan({}),
  'not-as-planned': [plannedService(), { ...OPEN_PLANNED, kind: 'demo' }],
  'food-of-before': [plannedService(RICE), OPEN_PLANNED],
  'food-unanswered': [plannedService(RICE), { type: 'dropPlan' }],
  'unknown bells': plan({ bells: 'early-release' }),
}

const withoutRice = {
  ...demoStation,
  components: demoStation.components.filter(({ id }) => id !== 'rice'),
}
const NOON = Date.parse('2026-11-26T18:00:00Z')
const other = { service: 's-other', on: '2026-11-26', doorsOpen: '12:00', doorsClose: '15:00' }

/** Where they come about by what is around the state. */
const around: Readonly<Partial<Record<PlanRefused, Partial<Circumstances>>>> = {
  'plans-overlap': {
    plans: () => [{ ...other, opensAt: NOON, closesAt: NOON + 3 * 3_600_000 }],
  },
  'food-of-before': { station: () => ({ revision: 4, document: withoutRice }) },
}

describe('what stands in the way of a plan', () => {
  it.each(Object.entries(refused) as [PlanRefused, readonly [Told, Given]][])(
    '[S60] [PL2] %s is data with a code, and nothing happens',
    (code, [told, command]) => {
      const decision = when(told, command, around[code] ?? {})
      expect(codeOf(decision)).toBe(code)
      expect(Object.keys(decision)).toEqual(['refusal'])
      expect(JSON.parse(JSON.stringify(decision))).toEqual(decision)
    },
  )

  it('[PL2] an item that the document doesn’t sell is refused too', () => {
    expect(codeOf(when(...plan({ items: ['harbor-tuna', 'kelp-roll'] })))).toBe('unknown item')
  })

  it('[PL2] of another station nothing that is planned is changed or opened', () => {
    const elsewhere = { ...PLAN, station: 'birch-hall' }
    expect(codeOf(when(plannedService(), elsewhere))).toBe('not-as-planned')
    const station = () => ({ revision: 1, document: { ...demoStation, id: 'birch-hall' } })
    const opening = { ...OPEN_PLANNED, station: 'birch-hall' }
    expect(codeOf(when(plannedService(), opening, { station }))).toBe('not-as-planned')
  })

  it('[PL2] doors that close to the minute when clocks are set back are the earlier of the two', () => {
    const back = plan({ on: '2027-11-07', doorsOpen: '00:30', doorsClose: '01:30', crew: [] })
    const decision = when(...back)
    if (!('events' in decision)) throw new Error('it was refused')
    expect(decision.events[0]).toMatchObject({
      plan: {
        opensAt: Date.parse('2027-11-07T05:30:00Z'),
        closesAt: Date.parse('2027-11-07T06:30:00Z'),
      },
    })
  })

  it.each([
    ['one that ends as the other begins', '09:00', '12:00', null],
    ['one that begins as the other ends', '15:00', '16:00', null],
    ['one within the other', '13:00', '14:00', 'plans-overlap'],
    ['one around the other', '11:00', '16:00', 'plans-overlap'],
  ])('[PL3] of two plans %s', (_, doorsOpen, doorsClose, code) => {
    const [told, command] = plan({ doorsOpen, doorsClose })
    expect(codeOf(when(told, command, around['plans-overlap']))).toBe(code)
  })

  it('[PL3] a plan doesn’t stand in its own way', () => {
    const own = {
      plans: () => [{ ...other, service: 's-lunch', opensAt: NOON, closesAt: NOON + 1 }],
    }
    expect(codeOf(when(plannedService(), { ...PLAN, doorsClose: '13:30' }, own))).toBeNull()
  })

  it.each([
    ['one after the other', [there, { ...there, from: '12:00', to: '13:00' }], null],
    ['on two days', [there, { ...there, on: '2026-11-25' }], null],
    ['of two people', [there, { ...there, initials: 'AB' }], null],
    ['the same said again', [there, there], 'there-twice'],
    ['one within the other', [there, { ...there, from: '09:00', to: '09:01' }], 'there-twice'],
    ['its own day said of one alone', [there, { ...there, on: PLAN.on }], 'there-twice'],
    ['behind spaces', [there, { ...there, initials: ' KT ' }], 'there-twice'],
    [
      'an adult and a student on two days',
      [there, { ...there, adult: false, on: '2026-11-25' }],
      'adult-and-student',
    ],
  ])('[PL40] one person’s times, %s', (_, crew, code) => {
    const [told, command] = plan({})
    const asked = commandSchema.parse({ ...command, crew })
    if (asked.type !== 'plan') throw new Error('it is a plan')
    const decision = when(told, asked)
    expect(codeOf(decision)).toBe(code)
    // An answer lies in the log, where no initials are.
    if (code !== null) expect(JSON.stringify(decision)).not.toContain('KT')
  })

  it('[PL40] the screen sends what overlaps as one time, which is taken', () => {
    const rows = [there, { ...there, from: '11:00', to: '13:00' }].map((one) => ({
      ...{ ...one, on: PLAN.on, person: 'a' },
    }))
    const crew = asSaid(rows)
    expect(crew.map(({ from, to }) => [from, to])).toEqual([['08:00', '13:00']])
    expect(codeOf(when(...plan({ crew })))).toBeNull()
    expect(codeOf(when(...plan({ crew: rows.map(({ person: __, ...one }) => one) })))).toBe(
      'there-twice',
    )
  })
})
