import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { civilDate, daysBetween } from '#lib/measure/civil.ts'
import { declaredBy, declaredIn } from '#lib/needs/declared.ts'
import { tellFinding } from '#lib/needs/finding-told.ts'
import { judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { sheetFacts, sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { asReadOn, isReadAgain } from '#lib/station/read-again.ts'
import { sayFinding } from '#lib/words/findings-en.ts'
import { ingredient, kitchen, need } from '#tests/support/kitchens.ts'
import {
  circumstances,
  demoStation,
  eventsOf,
  given,
  NOTHING,
  OPENED_AT,
  running,
  when,
} from '#tests/support/service.ts'

const dates = fc
  .integer({ min: 0, max: 4_000 })
  .map((day) => new Date(Date.UTC(2020, 0, 1) + day * 86_400_000).toISOString().slice(0, 10))

const withLabel = (readOn: string | null, readAgainDays = 90) => {
  const { station } = kitchen()
  return {
    ...station,
    readAgainDays,
    ingredients: station.ingredients.map((one) =>
      one.id === 'leaf' ? ingredient('leaf', { egg: 'contains' }, { readOn }) : one,
    ),
  }
}

describe('a label that was read long ago', () => {
  it('[N66] is to be read again once more days are past than the station says, by the calendar', () => {
    fc.assert(
      fc.property(dates, dates, fc.integer({ min: 1, max: 730 }), (readOn, on, readAgainDays) => {
        expect(isReadAgain({ readAgainDays }, { readOn }, on)).toBe(
          daysBetween(readOn, on) > readAgainDays,
        )
      }),
    )
    expect(isReadAgain({ readAgainDays: 90 }, { readOn: '2026-08-31' }, '2026-11-29')).toBe(false)
    expect(isReadAgain({ readAgainDays: 90 }, { readOn: '2026-08-30' }, '2026-11-29')).toBe(true)
    expect(isReadAgain({ readAgainDays: 90 }, { readOn: null }, '2026-11-29')).toBe(false)
  })

  it('[N66] is as unread: what it contains stays, all else is unknown', () => {
    const old = asReadOn(withLabel('2026-01-01'), '2026-11-29')
    expect(declaredBy(old, 'leaf', 'milk').state).toBe('unknown')
    expect(declaredBy(old, 'leaf', 'no-pork').state).toBe('unknown')
    expect(declaredBy(old, 'leaf', 'egg').state).toBe('contains')
    expect(declaredBy(old, 'heart', 'milk').state).toBe('free')
  })

  it('[N66] changes nothing while it counts, and where no day is known', () => {
    const station = withLabel('2026-01-01')
    expect(asReadOn(station, undefined)).toBe(station)
    expect(asReadOn(station, '2026-01-30')).toBe(station)
    expect(asReadOn(station, '2026-11-29')).toBe(asReadOn(station, '2026-11-29'))
    // It isn't that of another day.
    expect(asReadOn(station, '2026-01-30')).toBe(station)
  })

  it('[N66] never fits anybody better as it gets older', () => {
    const base = kitchen()
    const order = ['no', 'caution', 'ask', 'note', 'ok']
    fc.assert(
      fc.property(
        fc.constantFrom('milk', 'egg', 'vegan', 'gluten'),
        fc.constantFrom('keep-apart' as const, 'leave-out' as const),
        dates,
        dates,
        (code, handling, one, other) => {
          const [sooner = '', later = ''] = [one, other].sort()
          const at = (on: string) =>
            order.indexOf(
              judgeComponent({ ...base, station: asReadOn(withLabel('2023-01-01'), on) }, 'leaf', [
                need(code, handling),
              ]).level,
            )
          expect(at(later)).toBeLessThanOrEqual(at(sooner))
        },
      ),
    )
  })

  it('[N67] is said with the day, and of nothing that was never known', () => {
    const station = withLabel('2026-08-02')
    const told = (code: string, over: typeof station = station) => {
      const judged = { ...kitchen(), station: asReadOn(over, '2026-11-29') }
      return judgeComponent(judged, 'leaf', [need(code)]).findings.map((one) =>
        sayFinding(tellFinding(over, one)),
      )
    }
    expect(told('milk')[0]).toContain(
      'its label was read on Sun, Aug 2, over 90 days ago: read it again',
    )
    expect(told('kiwi', { ...station, ownAllergens: ['kiwi'] })[0]).toContain('ot known whether')
    expect(told('milk', withLabel(null))[0]).toContain('read the label first')
    expect(told('egg')[0]).toContain('contains egg')
  })
})

describe('the day of a service', () => {
  const open = { type: 'open', station: 'alder-hall', kind: 'real' } as const

  it('[N66] is the civil day of its opening, and stands in its event; what is invented has none', () => {
    const real = { ...demoStation, invented: false }
    const of = (document: typeof demoStation) =>
      eventsOf(
        when(NOTHING, open, {
          ...circumstances,
          station: () => ({ document, revision: 1 }),
        }),
      )[0]
    expect(of(real)).toMatchObject({ servedOn: civilDate(OPENED_AT, demoStation.timeZone) })
    expect(of(demoStation)).not.toHaveProperty('servedOn')
  })

  it('[N66] judges by it, and so does the sheet; without one every label counts', () => {
    const state = running(given())
    const [first] = state.station.ingredients
    if (!first) throw new Error('the demo station has no ingredient')
    expect(kitchenOf(state).station).toBe(state.station)
    const late = { ...state, servedOn: '2027-06-01' }
    const { station } = kitchenOf(late)
    expect(station.ingredients.map((one) => one.readOn)).toEqual(
      station.ingredients.map(() => null),
    )
    const known = (of: typeof first) => declaredIn(station, of, 'milk')
    expect(known(station.ingredients[0] ?? first)).not.toBe('free')
    const sheet = sheetOf(sheetFacts(late))
    expect(sheet.unread.length).toBeGreaterThan(5)
    expect(sheet.components[0]?.readOn).toBe(first.readOn)
    expect(sheetOf(sheetFacts(state)).unread).toEqual([])
  })
})
