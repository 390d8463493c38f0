import { describe, expect, it } from 'vitest'
import { saidOf } from '#lib/paper/allergens/said-of.ts'
import { type LabelFacts, serviceLabels } from '#lib/paper/labels/label-facts.ts'
import { NOTHING_NAMED } from '#lib/paper/words/labels-en.ts'
import { labelsEn } from '#lib/paper/words/labels-screen-en.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { plannedService } from '#tests/support/plans.ts'
import { BEANS, SCHOOL_DAY, SLAW } from '#tests/support/prep-stories.ts'
import {
  cookedService,
  demoStation,
  loadedService,
  onward,
  running,
  type Told,
} from '#tests/support/service.ts'

const labelsOf = (told: Told) => serviceLabels(running(told), running(told).at)
const find = (all: readonly LabelFacts[], id: string): LabelFacts => {
  const one = all.find((label) => label.id === id)
  if (!one) throw new Error(`no label ${id}`)
  return one
}

const WHERE = { timeZone: demoStation.timeZone, scale: 'F', days: 7, isDemo: false } as const
const wordsOf = (facts: LabelFacts): string => {
  const { parts, foot } = labelsEn.texts(facts, WHERE)
  return [...parts, ...foot]
    .flatMap((part) =>
      part.kind === 'row'
        ? part.cells.flatMap(({ label, value, blank }) => [
            label,
            value,
            blank === null ? '' : '__',
          ])
        : [part.lead, part.items.join(', ')],
    )
    .filter((one) => one !== '')
    .join(' ')
}

const planned = onward(plannedService(), SCHOOL_DAY, {
  type: 'planPrep',
  foods: [SLAW, { ...BEANS, ahead: true, coolsIn: { first: 30, total: 80 } }],
})

describe('labels of a service', () => {
  it('[PA32] are one for each pan in line order, each back-up, each load, and the cups', () => {
    const all = labelsOf(planned)
    const line = all.filter(({ kind }) => kind === 'pan' || kind === 'tray')
    expect(line.map(({ line: on }) => on?.number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
    expect(all.filter(({ kind }) => kind === 'backup')).toHaveLength(demoStation.backups.length)
    expect(all.filter(({ kind }) => kind === 'batch').map(({ load }) => load)).toEqual(
      [SLAW, BEANS].flatMap(({ loads }) =>
        Array.from({ length: loads }, (_, at) => ({ nth: at + 1, of: loads })),
      ),
    )
    expect(find(all, 'cup/yogurt-sauce')).toMatchObject({ isUsual: true })
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length)
  })

  it('[PA52] cups are as many as the plan has of them, a tray has one load', () => {
    const cups = (foods: readonly PrepChoice[]) => {
      const now = running(onward(plannedService(), SCHOOL_DAY, { type: 'planPrep', foods }))
      const all = serviceLabels(now, now.at)
      return [find(all, 'cup/yogurt-sauce').copies, find(all, 'tray/pan-yogurt-sauce').cups]
    }
    expect(cups([{ component: 'yogurt-sauce', loads: 2, portions: 60 }])).toEqual([60, 30])
    expect(cups([{ component: 'yogurt-sauce', loads: 1, portions: 17 }])).toEqual([17, 17])
    // Nothing is planned of them: as its pan is usually loaded.
    expect(cups([SLAW])).toEqual([30, 30])
  })

  it('[PA32] a cup says which items it goes with, where it isn’t all of them', () => {
    const [first, second] = demoStation.items
    if (!first || !second) throw new Error('the demo has two items')
    const one = (component: string) => ({ component, usual: 'in', required: false }) as const
    const items = [
      { ...first, parts: [one('yogurt-sauce'), one('slaw')] },
      { ...second, parts: [one('yogurt-sauce')] },
    ]
    const all = labelsOf({
      ...planned,
      state: { ...running(planned), station: { ...running(planned).station, items } },
    })
    expect(find(all, 'cup/slaw').goesWith).toEqual([first.name])
    expect(wordsOf(find(all, 'cup/slaw'))).toContain(`Goes with ${first.name}`)
    expect(find(all, 'cup/yogurt-sauce').goesWith).toEqual([])
    expect(find(all, 'pan/pan-slaw').goesWith).toEqual([])
  })

  it('[PA33] cold food made by the plan ends seven days from that day, by day and hour, and says that the day is the plan’s', () => {
    const slaw = find(labelsOf(planned), 'planned/slaw.1')
    expect(slaw.dates).toMatchObject({
      first: 'made',
      isPlanned: true,
      discard: { because: 'date' },
    })
    const said = wordsOf(slaw)
    const [, made = ''] = /Made (\w{3}, \w{3} \d+),/.exec(said) ?? []
    const day = Date.parse(`${made} 2026 12:00 UTC`)
    const last = new Date(day + 6 * 86_400_000).toUTCString()
    expect(said).toMatch(/Discard by \w{3}, \w{3} \d+, 11:59 PM/)
    expect(said).toContain(`${Number(last.slice(5, 7))}, 11:59 PM`)
    expect(said).toContain('Planned day. Made on another? Write both.')
  })

  it('[PA33] what stands in a pan ends when the screens say, and hot food with its service', () => {
    const state: RunningState = running(loadedService())
    const standing = serviceLabels(state, state.at).flatMap((label) => {
      const id = /^(?:pan|tray)\/(.*)$/.exec(label.id)?.[1]
      const place = id === undefined ? undefined : placeOf(state, { what: 'pan', id })
      return place?.stage === 'standing' ? [{ label, until: lastsUntil(state, place) }] : []
    })
    expect(standing).toHaveLength(10)
    for (const { label, until } of standing) {
      const { at, because } = label.dates.discard
      const held = componentOf(state.station, label.component).held
      expect(at, label.id).toBe(until)
      expect(['date', 'day'].includes(because), label.id).toBe(held === 'cold')
      // Nothing bounds dry food but what its maker prints, and hot food but its service's end.
      if (held !== 'cold') expect(because).toBe(held === 'dry' ? 'makers-date' : 'not-planned')
    }
    expect(standing.filter(({ until }) => until !== null)).toHaveLength(4)
    const rice = find(labelsOf(planned), 'pan/pan-rice')
    expect(rice.dates.discard).toEqual({
      at: running(planned).plan?.closesAt,
      because: 'service-ends',
    })
    for (const label of labelsOf(planned)) expect(wordsOf(label)).not.toMatch(/at close/i)
  })

  it('[PA33] what is begun has the day on which it was, not the plan’s; what is off sale has no label', () => {
    const begun = running(
      onward(planned, { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 2 }),
    )
    const early: RunningState = {
      ...begun,
      batches: Object.fromEntries(
        Object.entries(begun.batches).map(([id, one]) => [
          id,
          { ...one, startedAt: Date.parse('2026-11-24T18:00:00Z') },
        ]),
      ),
    }
    const slaw = find(serviceLabels(early, early.at), 'batch/b1')
    // 3-501.17(A): the day of preparation, November 24 in Chicago, is day 1 of 7.
    expect(slaw.dates).toMatchObject({
      isPlanned: false,
      discard: { at: Date.parse('2026-12-01T06:00:00Z') },
    })
    const off: RunningState = {
      ...early,
      batches: Object.fromEntries(
        Object.entries(early.batches).map(([id, one]) => [
          id,
          { ...one, offSale: { why: 'cooling-missed', since: early.at, lastGoodAt: null } },
        ]),
      ),
    }
    expect(serviceLabels(off, off.at).map(({ id }) => id)).not.toContain('batch/b1')
  })

  it('[PA33] a cup on the side is thrown out no later than the pan that it is filled from', () => {
    const { state } = cookedService()
    const station: StationDocument = {
      ...demoStation,
      safety: {
        ...demoStation.safety,
        limits: { timeOnly4h: { ...limitsOf(demoStation).timeOnly4h, withinMs: 7_200_000 } },
      },
      line: {
        ...demoStation.line,
        wells: demoStation.line.wells.map((well) => ({ ...well, held: 'time' })),
      },
    }
    const now = running({ state, events: [] })
    const bare = { ...now, station, pans: running(planned).pans }
    const cups = serviceLabels(bare, bare.at).filter(
      ({ kind, component }) =>
        kind === 'cup' &&
        demoStation.components.some(({ id, held }) => id === component && held === 'cold') &&
        demoStation.line.wells.some(({ pans }) => pans.some((pan) => pan.component === component)),
    )
    expect(cups.length).toBeGreaterThan(0)
    for (const cup of cups) {
      expect(cup.dates.discard.because, cup.id).toBe('reading')
      expect(wordsOf(cup)).toContain('2 h from the reading as it goes in')
    }
  })

  it('[PA34] what is cooked ahead has a blank for each reading, with a time and initials of its own', () => {
    const beans = find(labelsOf(planned), 'planned/beans.1')
    expect(wordsOf(beans)).toContain('70 °F or below by __ time __ initials __')
    expect(wordsOf(beans)).toContain('41 °F or below by __ time __ initials __')
    expect(wordsOf(find(labelsOf(planned), 'planned/slaw.1'))).not.toContain('70 °F')
  })
})

const kitchen = (station: StationDocument) => ({ station, soiled: [], lent: [], ready: [] })
const without = (
  change: (one: StationDocument['ingredients'][number]) => object,
): StationDocument => ({
  ...demoStation,
  ingredients: demoStation.ingredients.map((one) => ({ ...one, ...change(one) })),
})
const saying = (station: StationDocument, component: string): string => {
  const all = labelsOf(planned)
  const [any] = all
  if (!any) throw new Error('no label')
  return wordsOf({ ...any, said: saidOf(kitchen(station), component) })
}

describe('what a label says of allergens', () => {
  it('[PA35] contains and may contain are what labels declare, and where none names any it promises nothing', () => {
    expect(saying(demoStation, 'almonds')).toContain('CONTAINS TREE NUTS (ALMOND)')
    expect(saying(demoStation, 'almonds')).toContain('MAY CONTAIN peanut')
    expect(saying(demoStation, 'rice')).toContain(NOTHING_NAMED)
    expect(NOTHING_NAMED).toBe('No allergen named on labels read. No promise: shared line, ask.')
    for (const { id } of demoStation.components)
      expect(saying(demoStation, id)).not.toMatch(/\bfree\b|\bsafe\b|none of the/i)
  })

  it('[PA36] a label that nobody read is said loudly, never as none, and what it contains stays', () => {
    const unread = without(() => ({ readOn: null }))
    for (const { id } of demoStation.components) {
      const said = saying(unread, id)
      expect(said, id).toContain('NOT READ: ASK')
      expect(said, id).not.toContain(NOTHING_NAMED)
    }
    expect(saying(unread, 'cheddar')).toContain('CONTAINS MILK')
    const silent = without(({ declarations }) => ({
      declarations: { ...declarations, milk: 'unknown' },
    }))
    expect(saying(silent, 'rice')).toMatch(/NOT KNOWN: ASK.*milk/)
    expect(saying(silent, 'rice')).not.toContain(NOTHING_NAMED)
  })

  it('[PA37] what it touches on this line is said, and that nobody has said what touches what', () => {
    expect(saying(demoStation, 'rice')).toContain('Touches on this line: wheat, sesame')
    const unsaid = saying({ ...demoStation, contacts: null }, 'rice')
    expect(unsaid).toContain('nobody has said')
    expect(unsaid).not.toContain('Touches on this line:')
  })
})
