import { describe, expect, it } from 'vitest'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { batchSteps, mainStep } from '#lib/rooms/food/views/batch-steps.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { vesselPictures } from '#lib/rooms/food/views/vessels.ts'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { BEANS, preparedService } from '#tests/support/prep-stories.ts'
import {
  type Given,
  given,
  ofPortions,
  onward,
  running,
  type Told,
} from '#tests/support/service.ts'

const HOUR = 3_600_000
const read = (tenths: number, at?: number) => ({
  ...{ tenths, scale: 'F' as const, probe: '1', where: 'middle-stirred' as const, heldSeconds: 20 },
  ...(at === undefined ? {} : { at }),
})
const cook = (tenths: number): Given => ({
  ...{ type: 'recordCooking', batch: 'pot', reading: read(tenths), initials: 'AB' },
})
const cool = (tenths: number, at: number): Given => ({
  ...{ type: 'recordCooling', batch: 'pot', initials: 'AB', presentUntil: at + 7 * HOUR },
  reading: {
    ...{ tenths, scale: 'F' as const, probe: '1', where: 'middle-stirred' as const, at },
  },
})
const start = (component: string): Given => ({
  ...{ type: 'startBatch', component, batch: 'pot', loads: 1 },
})
const finish: Given = {
  ...{ type: 'finishBatch', batch: 'pot', amount: ofPortions('beans', 20), loads: 1 },
}

/** Planned as cooked ahead, in ice, on a day on which somebody reads it. */
const ahead: Given = {
  type: 'planPrep',
  foods: [{ ...BEANS, ahead: true, coolsIn: { first: 30, total: 80 } }],
}
const planned = (...commands: Given[]): Told => preparedService(ahead, ...commands)

const by = (told: Told, now = running(told).at) => coolBy(running(told), 'pot', now)
const one = (told: Told) =>
  batchPictures(running(told), running(told).at).find(({ id }) => id === 'pot')
const drawn = (told: Told) =>
  Object.values(vesselPictures(running(told), running(told).at))
    .flat()
    .find(({ id }) => id === 'pot')

describe('a pot that is cooked ahead', () => {
  it('[PP35] says by when it is cool from its cooking on: 2 hours to 70 °F, 6 in all to 41 °F', () => {
    const begun = planned(start('beans'))
    expect(by(begun)).toBeNull()
    const cooked = onward(begun, cook(1_500))
    const since = running(cooked).batches.pot?.cooking.at(-1)?.at ?? Number.NaN
    // FDA Food Code 2022 3-501.14(A)(1) and (2).
    const due = { since, first: since + 2 * HOUR, second: since + 6 * HOUR, isStarted: false }
    expect(by(cooked)).toEqual(due)
    expect(one(cooked)).toMatchObject({ stage: 'cooked', coolAt: due.first })
    const finished = onward(cooked, finish)
    expect(one(finished)).toMatchObject({ stage: 'to-cool', at: due.first })
    expect(drawn(finished)).toMatchObject({ kind: 'pot', stage: 'due', at: due.first })
    expect(mainStep(running(finished), 'pot', running(finished).at)).toBe('cool')
  })

  it('[PP35] counts anew from the last reading at 135 °F, and says no more once it is cold', () => {
    const finished = planned(start('beans'), cook(1_500), finish)
    const at = running(finished).at
    const cooling = onward(finished, cool(1_400, at + 1_000))
    const since = running(cooling).batches.pot?.cooling[0]?.at ?? Number.NaN
    expect(by(cooling)).toEqual({
      ...{ since, first: since + 2 * HOUR, second: since + 6 * HOUR, isStarted: true },
    })
    const half = onward(cooling, cool(690, running(cooling).at))
    expect(by(half)).toMatchObject({ first: null, second: since + 6 * HOUR })
    const cold = onward(half, cool(400, running(half).at))
    expect(by(cold)).toBeNull()
    expect(drawn(cold)?.kind).toBe('tub')
  })

  it('[PP35] is none where hot food is held hot, or nothing is cooked', () => {
    expect(by(given(start('beans'), cook(1_700)))).toBeNull()
    expect(by(given(start('slaw')))).toBeNull()
    const hot = running(given(start('beans'), cook(1_700)))
    const components = hot.station.components.map((component) =>
      component.id === 'beans' ? { ...component, held: 'cold' as const } : component,
    )
    expect(
      coolBy({ ...hot, station: { ...hot.station, components } }, 'pot', hot.at),
    ).not.toBeNull()
  })

  it('[PP35] is cooled too where it is cooked on a day before the doors open, and held hot on their own day', () => {
    const cooked = running(preparedService(start('beans'), cook(1_700), finish))
    const since = cooked.batches.pot?.cooking.at(-1)?.at ?? Number.NaN
    expect(coolBy(cooked, 'pot', cooked.at)).toMatchObject({ since, first: since + 2 * HOUR })
    expect(mainStep(cooked, 'pot', cooked.at)).toBe('cool')
    expect(batchSteps(cooked, 'pot')).not.toContain('clock')
    const { plan } = cooked
    if (!plan) throw new RangeError('it is planned')
    const sameDay = { ...cooked, plan: { ...plan, on: '2026-11-25' } }
    expect(coolBy(sameDay, 'pot', sameDay.at)).toBeNull()
    expect(batchSteps(sameDay, 'pot')).toContain('throw-out')
    // It waits for the line: neither loaded, nor thrown out as if that came next.
    expect(mainStep(sameDay, 'pot', sameDay.at)).toBeNull()
    expect(mainStep({ ...sameDay, stage: 'open' }, 'pot', sameDay.at)).toBe('load')
  })

  it('[PP35] is told with both hours, and what they are counted from', () => {
    const clock = (at: number) => `${at / HOUR}:00`
    const say = (first: number | null, isStarted: boolean) =>
      batchWords.coolPot(
        { first, second: 7 * HOUR, since: HOUR, isStarted },
        MODEL_CODE as Parameters<typeof batchWords.coolPot>[1],
        'F',
        clock,
      )
    expect(say(3 * HOUR, true)).toBe('Cool it: 135 to 70 °F by 3:00, then 41 °F by 7:00')
    expect(say(3 * HOUR, false)).toContain('Counted from its reading at 1:00')
    expect(say(null, true)).toBe('Cool it on: 41 °F by 7:00')
  })
})

describe('how a batch is drawn', () => {
  it('[P74] cold food is a tub, and what was on the heat a pot until it is cold', () => {
    expect(drawn(given(start('slaw')))?.kind).toBe('tub')
    expect(drawn(given(start('tuna')))?.kind).toBe('tub')
    expect(drawn(given(start('chicken')))?.kind).toBe('pot')
  })
})
