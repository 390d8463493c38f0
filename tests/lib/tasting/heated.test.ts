import { describe, expect, test } from 'vitest'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { ReadTasting, TastingCommand } from '#lib/tasting/command.ts'
import { decideTasting } from '#lib/tasting/decide.ts'
import { heatOf, toCookOn } from '#lib/tasting/heated.ts'
import type { Tasting, ToldByTaster } from '#lib/tasting/tasting.ts'
import { DAWN, NONE, READ, TASTING, TASTING_STATION } from '#tests/support/tasting.ts'

const MAKING: Tasting = { ...TASTING, stage: 'making' }
const BOTH: ToldByTaster = { 1: NONE, 2: NONE }

const outcome = (
  before: Tasting,
  command: TastingCommand,
  told: ToldByTaster = BOTH,
  now = DAWN,
) => {
  const decided = decideTasting(before, 'c1', command, { now, station: TASTING_STATION, told })
  return 'refusal' in decided ? decided.refusal : decided.tasting
}
const ready = (before: Tasting, told: ToldByTaster = BOTH) =>
  outcome(before, { type: 'readyToTaste', tasting: 't1' }, told)

const read = (more: Partial<ReadTasting> = {}): ReadTasting => ({
  type: 'readTasting',
  tasting: 't1',
  component: 'beans',
  tenths: 1350,
  scale: 'F',
  probe: 'probe 1',
  where: 'middle-stirred',
  initials: 'KT',
  ...more,
})

const withFood = (change: object): StationDocument => ({
  ...TASTING_STATION,
  components: TASTING_STATION.components.map((one) =>
    one.id === 'beans' ? { ...one, food: { ...one.food, ...change } } : one,
  ),
})

describe('ready to taste', () => {
  test('[TB13] no reading never passes; what isn’t cooked here asks for none', () => {
    const lack = [{ component: 'beans', why: 'no-reading' }]
    expect(ready(MAKING)).toEqual({ code: 'cook-on', foods: lack })
    expect(ready({ ...MAKING, components: ['tuna'] })).toMatchObject({ stage: 'ready' })
  })

  // FDA Food Code 2022, 3-401.13: plant foods cooked for hot holding, 135 °F (57 °C).
  test.each([
    [1349, 'F', 'cook-on'],
    [1350, 'F', 'ready'],
    [569, 'C', 'cook-on'],
    [570, 'C', 'ready'],
  ] as const)('[TB13] %i tenths °%s: %s', (tenths, scale, is) => {
    const then = outcome(MAKING, read({ tenths, scale, scaleConfirmed: true })) as Tasting
    expect(then).toMatchObject({ stage: 'making', readings: [{ temperature: { tenths, scale } }] })
    expect(ready(then)).toMatchObject(
      is === 'ready'
        ? { stage: 'ready' }
        : { code: 'cook-on', foods: [{ component: 'beans', why: 'too-low' }] },
    )
  })

  test('[TB13] what was too low stays recorded, and a later one may reach the limit', () => {
    const low = outcome(MAKING, read({ tenths: 1200 })) as Tasting
    const then = outcome(low, read(), BOTH, DAWN + 60_000) as Tasting
    expect(then.readings.map(({ temperature }) => temperature.tenths)).toEqual([1200, 1350])
    expect(ready(then)).toMatchObject({ stage: 'ready' })
  })

  test('[TB13] ground meat is held for its seconds, and what nobody said is cooked as poultry', () => {
    // 3-401.11: ground meat 155 °F for 17 seconds; poultry 165 °F.
    const ground = withFood({ kind: 'ground-meat' })
    const at = (tenths: number, heldSeconds: number | null) => ({
      readings: [{ ...READ, temperature: { tenths, scale: 'F' as const }, heldSeconds }],
    })
    expect(heatOf(ground, at(1550, null), 'beans')).toMatchObject({ why: 'not-long-enough' })
    expect(heatOf(ground, at(1550, 16), 'beans')).toMatchObject({ why: 'not-long-enough' })
    expect(heatOf(ground, at(1550, 17), 'beans')).toMatchObject({ met: true })
    const unsaid = withFood({ kind: null })
    expect(heatOf(unsaid, at(1640, null), 'beans')).toMatchObject({ why: 'too-low' })
    expect(heatOf(unsaid, at(1650, null), 'beans')).toMatchObject({ met: true })
  })

  test('[TB13] what the line has no more has no known limit, so it isn’t met', () => {
    const gone = { readings: [{ ...READ, component: 'turnip' }], components: ['turnip'] }
    expect(toCookOn(TASTING_STATION, gone)).toEqual([{ component: 'turnip', why: 'no-reading' }])
  })

  test('[TB3] who came while it was made is asked before anybody tastes', () => {
    const more = {
      ...MAKING,
      readings: [READ],
      tasters: [...MAKING.tasters, { number: 3, told: null }],
    }
    expect(ready(more)).toEqual({ code: 'not-asked', tasters: [3] })
  })
})

describe('a reading', () => {
  test.each([
    [{ initials: undefined }, { code: 'reading-lacks', lack: 'not-initialled' }],
    [{ initials: ' ' }, { code: 'reading-lacks', lack: 'not-initialled' }],
    [{ probe: '' }, { code: 'reading-lacks', lack: 'no-probe' }],
    [{ where: 'surface' }, { code: 'reading-lacks', lack: 'surface-only' }],
    [{ tenths: 9000 }, { code: 'reading-asked', question: { code: 'cannot-be' } }],
    [{ tenths: 570 }, { code: 'reading-asked', question: { code: 'did-you-mean' } }],
    [{ component: 'tuna' }, { code: 'not-cooked-here' }],
    [{ component: 'slaw' }, { code: 'no-such-component' }],
  ] as const)('[TB13] %j isn’t taken', (change, refusal) => {
    expect(outcome(MAKING, read(change))).toMatchObject(refusal)
  })

  test('[TB13] it is read while it is made, and ends only after it was ready', () => {
    expect(outcome(TASTING, read())).toEqual({ code: 'not-made' })
    expect(ready(TASTING)).toEqual({ code: 'not-made' })
    const done: Tasting = { ...MAKING, stage: 'ready', readings: [READ] }
    expect(outcome(done, read())).toEqual({ code: 'already-so' })
    expect(ready(done)).toEqual({ code: 'already-so' })
    const end: TastingCommand = { type: 'endTasting', tasting: 't1', yields: [] }
    expect(outcome({ ...MAKING, readings: [READ] }, end)).toEqual({ code: 'not-ready' })
    expect(outcome(done, end)).toMatchObject({ stage: 'over', readings: [READ] })
  })
})
