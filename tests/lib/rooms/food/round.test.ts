import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { missedFrom } from '#lib/rooms/food/facts/place-now.ts'
import { roundOf } from '#lib/rooms/food/facts/round.ts'
import { howProbed } from '#lib/rooms/food/views/reading-entry.ts'
import { isProbeUsed, loadBrings, probeBrings, stepAt } from '#lib/rooms/food/views/round.ts'
import { allPlaces } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import { at, minute, read, until } from '#tests/support/food.ts'
import { demoStation, type Given, ready, running, type Told } from '#tests/support/service.ts'

const told = ready()

/** Without the batches that wait in the kitchen, and no rush said. */
const onTheLine = (given: Told = told): RunningState => {
  const state = running(given)
  return { ...state, batches: {}, rushes: [] }
}

const reads = (id: string, degrees = id.includes('rice') ? 150 : 38): Given => ({
  type: 'readTemperature',
  what: id.startsWith('back-up') ? 'backup' : 'pan',
  id,
  ...read(degrees, { cleaned: true }),
})

/** Its steps as the screen takes them, one place after the other. */
const roundView = (state: RunningState, now: number) => {
  const round = roundOf(state, now, null)
  return (
    round && {
      ...round,
      steps: round.places.flatMap(
        ({ place: { what, id } }) => stepAt(state, { what, id }, now) ?? [],
      ),
    }
  )
}

const idsOf = (round: ReturnType<typeof roundOf>) => round?.places.map(({ place }) => place.id)
const rush = (from: number, to: number) => ({ from: minute(from), to: minute(to) })

const KEPT = ['rice', 'chicken', 'beans', 'peppers', 'slaw', 'cheddar'].map(
  (one) => `back-up-${one}`,
)
const LINE = ['rice', 'chicken', 'beans', 'peppers', 'tuna', 'slaw', 'cheddar', 'yogurt-sauce'].map(
  (one) => `pan-${one}`,
)

describe('a round of readings', () => {
  it('[F81] takes all that is due soon, the protected back-up pans first, then in line order', () => {
    const early = roundOf(onTheLine(), minute(60))
    expect(early?.isAsked).toBe(false)
    expect(idsOf(early)).toEqual([...KEPT, ...LINE])
    const asked = roundOf(onTheLine(), minute(112))
    expect(asked).toMatchObject({ isAsked: true, rushFrom: null })
    expect(idsOf(asked)).toEqual([...KEPT, ...LINE])
    expect(asked?.places.slice(0, 6).every(({ isProtected }) => isProtected)).toBe(true)
    expect(asked?.places.slice(6).some(({ isProtected }) => isProtected)).toBe(false)
  })

  it('[F81] takes no pan along that was read lately, and one that is no longer protected after the line', () => {
    const later = at(told, 50, reads('pan-rice'), {
      type: 'soilPan',
      pan: 'pan-slaw',
      by: 'rice',
      backup: true,
    })
    const round = roundOf(onTheLine(later), minute(112))
    expect(idsOf(round)).toEqual([
      ...KEPT.filter((id) => id !== 'back-up-slaw'),
      ...LINE.filter((id) => id !== 'pan-rice'),
      'back-up-slaw',
    ])
  })

  it('[F81] takes what waits to be loaded last', () => {
    const round = roundOf(running(told), minute(112))
    const kinds = round?.places.map(({ place }) => place.what) ?? []
    expect(kinds.filter((what) => what === 'batch').length).toBeGreaterThan(0)
    expect(kinds.lastIndexOf('pan')).toBeLessThan(kinds.indexOf('batch'))
  })

  it('[F82] is brought forward before a rush that is known, and not where none is', () => {
    const state = onTheLine()
    expect(roundOf(state, minute(77), null)?.isAsked).toBe(false)
    const before = roundOf(state, minute(77), rush(90, 130))
    expect(before).toMatchObject({ isAsked: true, dueBy: minute(90), rushFrom: minute(90) })
    expect(before?.places.every(({ why }) => why === 'rush')).toBe(true)
    // All of them take a minute each, so that it begins that much sooner.
    expect(roundOf(state, minute(75), rush(90, 130))?.isAsked).toBe(false)
    // Far ahead it waits; what is due after the rush, or was read lately, isn't brought forward.
    expect(roundOf(state, minute(40), rush(90, 130))?.isAsked).toBe(false)
    expect(roundOf(state, minute(77), rush(90, 100))?.isAsked).toBe(false)
    const lately = at(
      told,
      65,
      ...[...KEPT, ...LINE].map((id) =>
        reads(
          id,
          id.includes('rice') || ['chicken', 'beans', 'peppers'].some((hot) => id.includes(hot))
            ? 150
            : 38,
        ),
      ),
    )
    expect(roundOf(onTheLine(lately), minute(77), rush(90, 200))?.isAsked).toBe(false)
  })

  it('[F82] leaves what is due before the rush where it is', () => {
    const round = roundOf(onTheLine(), minute(112), rush(116, 180))
    const first = Math.min(...(round?.places ?? []).map(({ dueBy }) => dueBy))
    expect(round?.dueBy).toBe(Math.min(first, minute(116)))
  })

  it('[F83] never puts a reading off past its own time', () => {
    const times = fc.integer({ min: 0, max: 260 })
    fc.assert(
      fc.property(
        fc.array(fc.record({ by: times, id: fc.constantFrom(...KEPT, ...LINE) }), { maxLength: 6 }),
        times,
        fc.option(fc.tuple(times, fc.integer({ min: 1, max: 90 }))),
        (readings, now, ahead) => {
          const isHot = (id: string) =>
            ['rice', 'chicken', 'beans', 'peppers'].some((one) => id.includes(one))
          const so = [...readings]
            .sort((one, other) => one.by - other.by)
            .reduce((given, { by, id }) => {
              const state = running(until(given, by))
              const place = allPlaces(state).find((one) => one.id === id)
              return place?.offSale ? given : at(given, by, reads(id, isHot(id) ? 150 : 38))
            }, told)
          const state = running(until(so, now))
          const moment = Math.max(minute(now), state.at)
          const round = roundOf(state, moment, ahead && rush(ahead[0], ahead[0] + ahead[1]))
          const { askBeforeMs } = practiceOf(state.station)
          for (const place of allPlaces(state)) {
            const own = missedFrom(state, place, moment)
            const taken = round?.places.find(
              (one) => one.place.id === place.id && one.place.what === place.what,
            )
            if (taken && own !== null && taken.why !== 'missed') {
              expect(taken.dueBy).toBe(own)
              expect(round?.dueBy).toBeLessThanOrEqual(own)
            }
            const isAsked =
              (place.stage === 'standing' || place.stage === 'waiting') &&
              own !== null &&
              own - askBeforeMs <= moment
            if (!isAsked) continue
            expect(round?.isAsked).toBe(true)
            expect(taken, place.id).toBeDefined()
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  it('[F81][F83] leaves a minute for each that is read before the first that is due', () => {
    const others = [...KEPT, ...LINE].filter((id) => id !== 'pan-yogurt-sauce')
    const hot = (id: string) => /rice|chicken|beans|peppers/.test(id)
    const told = at(ready(), 25, ...others.map((id) => reads(id, hot(id) ? 150 : 38)))
    const state = onTheLine(told)
    const dueBy = roundOf(state, minute(60))?.dueBy ?? 0
    const least = [...KEPT, ...LINE].length
    const asked = roundOf(state, dueBy - least * 60_000)
    expect(asked).toMatchObject({ isAsked: true, dueBy })
    expect(idsOf(asked)).toEqual([...KEPT, ...LINE])
    expect(roundOf(state, dueBy - least * 60_000 - 1)?.isAsked).toBe(false)
  })

  it('[F84] keeps what was missed or read out of its limits, with its ways out', () => {
    const out = at(told, 30, reads('pan-rice', 120))
    const view = roundView(onTheLine(out), minute(31))
    expect(view?.steps).toEqual([
      expect.objectContaining({ id: 'pan-rice', why: 'out', wasIn: false }),
    ])
    expect(view?.isAsked).toBe(true)
    expect(view?.steps[0]?.ways.map(({ way }) => way)).toEqual(['reheat', 'time-only', 'discard'])
    const missed = roundView(onTheLine(until(told, 125)), minute(125))
    expect(missed?.steps.find(({ id }) => id === 'pan-rice')).toMatchObject({
      why: 'missed',
      ways: [],
    })
  })

  it('[F85] says how each is probed, by how it is portioned, and its limit', () => {
    const how = Object.fromEntries(
      demoStation.components.map((one) => [one.id, howProbed(one)] as const),
    )
    expect(how).toMatchObject({
      chicken: 'stir',
      slaw: 'stir',
      'yogurt-sauce': 'cup',
      pita: 'piece',
    })
    const chicken = componentOf(demoStation, 'chicken')
    const pieces = { ...chicken, portion: { tool: 'tongs-pieces', pieces: 3 } } as const
    expect(howProbed(pieces)).toBe('piece')
    const strips = {
      ...chicken,
      portion: { tool: 'tongs', grams: 80, source: 'invented' },
    } as const
    expect(howProbed(strips)).toBe('piece')
    const steps = roundView(onTheLine(), minute(112))?.steps ?? []
    expect(steps.find(({ id }) => id === 'pan-chicken')).toMatchObject({
      heldBy: 'hot',
      where: 'middle-stirred',
      context: 'hot-holding',
      limit: { kind: 'temperature', limit: { tenths: { F: 1350 } } },
      wasIn: true,
    })
    expect(steps.find(({ id }) => id === 'pan-tuna')).toMatchObject({
      heldBy: 'cold',
      context: 'cold-holding',
    })
  })

  it('[F86] tells what a probe would bring into a place that is kept apart', () => {
    const nuts = at(told, 60, {
      type: 'readTemperature',
      id: 'pan-cheddar',
      ...read(38, { cleaned: true }),
    })
    const state = onTheLine(nuts)
    const kept = { what: 'backup', id: 'back-up-rice' } as const
    expect(probeBrings(state, kept, 'probe 1')).toEqual(['cheddar'])
    expect(probeBrings(state, kept, 'another')).toBeNull()
    expect(probeBrings(state, { what: 'pan', id: 'pan-rice' }, 'probe 1')).toBeNull()
    // What waits may go into a protected back-up pan, where there is one of its food [F91].
    const waiting = running(nuts)
    const pot = (component: string) => ({ what: 'batch', id: `opening-${component}` }) as const
    expect(probeBrings(waiting, pot('rice'), 'probe 1')).toEqual(['cheddar'])
    expect(probeBrings(waiting, pot('tuna'), 'probe 1')).toBeNull()
  })

  it('[F80][P65] tells the same of what is put in, and which probe is cleaned before the next food', () => {
    const cheddar: Given = {
      type: 'readTemperature',
      id: 'pan-cheddar',
      ...read(38, { cleaned: true }),
    }
    const away: Given = { type: 'setBackup', component: 'rice', ready: false }
    const state = onTheLine(at(told, 60, away, cheddar))
    expect(loadBrings(state, 'back-up-rice', 'Probe 1 ')).toEqual(['cheddar'])
    expect(loadBrings(state, 'back-up-rice', 'another')).toBeNull()
    expect(loadBrings(state, 'pan-rice', 'probe 1')).toBeNull()
    expect(isProbeUsed(state, 'probe 1')).toBe(true)
    expect(isProbeUsed(state, 'another')).toBe(false)
    expect(isProbeUsed(state, 'another', ['probe 1', ' Another'])).toBe(true)
    expect(isProbeUsed(state, '', [''])).toBe(false)
  })
})
