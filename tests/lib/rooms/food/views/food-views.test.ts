import { describe, expect, test } from 'vitest'
import { foodTimes, THROW_OUT_SOON_MS } from '#lib/rooms/food/facts/food-times.ts'
import { batchSteps, nextStep } from '#lib/rooms/food/views/batch-steps.ts'
import { batchPictures } from '#lib/rooms/food/views/batch-strip.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { toDos } from '#lib/rooms/pans/facts/pans-to-do.ts'
import { firstSource, isOutOfTurn, putSources } from '#lib/rooms/pans/views/put-sources.ts'
import {
  backupReady,
  choose,
  type Given,
  given,
  onward as later,
  ofPortions,
  openedService,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const HOUR_MS = 3_600_000

const read = (id: string, tenths: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  reading: { tenths, scale: 'F', probe: '1', where: 'middle-stirred' },
  initials: 'AB',
})

const heat = (batch: string, tenths: number): Given => ({
  type: 'recordCooking',
  batch,
  reading: { tenths, scale: 'F', probe: '1', where: 'thickest-part', heldSeconds: 20 },
  initials: 'AB',
})

const start = (component: string, batch: string, loads = 1): Given => ({
  type: 'startBatch',
  component,
  batch,
  loads,
})

const timeOnly = (pan: string, leftAt: number, rule: '4h' | '6h' = '4h'): Given => ({
  type: 'startTimeClock',
  what: 'pan',
  id: pan,
  leftAt,
  from: 'cold',
  rule,
  reading: { tenths: 390, scale: 'F', probe: '1', where: 'middle-stirred', at: leftAt },
  initials: 'AB',
})

const pictureOf = (told: Told, pan: string) => panPictures(running(told))[pan]

describe('a pan whose food may not be sold', () => {
  test('[P25] says so, and none of it is left to sell', () => {
    const off = given(read('pan-tuna', 500))
    expect(pictureOf(off, 'pan-tuna')).toMatchObject({ trouble: 'off-sale', left: 0 })
    expect(pictureOf(off, 'pan-slaw')).toMatchObject({ trouble: null, left: 40 })
  })

  test('[P25] to be thrown out comes before off sale, and nothing recorded counts as nothing', () => {
    const told = given()
    const warm = later(told, timeOnly('pan-slaw', running(told).at, '6h'), read('pan-slaw', 760))
    expect(pictureOf(warm, 'pan-slaw')).toMatchObject({ trouble: 'throw-out', left: 0 })
    const state = running(told)
    const tuna = state.pans['pan-tuna']
    if (!tuna) throw new Error('no tuna')
    const unknown = { ...state, pans: { ...state.pans, 'pan-tuna': { ...tuna, food: null } } }
    expect(panPictures(unknown)['pan-tuna']).toMatchObject({ trouble: 'not-known', left: 0 })
  })

  test('[P25] isn’t asked to be refilled as if it were sold out, but short builds are told', () => {
    expect(toDos(running(given(read('pan-tuna', 500))))).toEqual([])
    const short = given(send(choose('harbor-tuna')), read('pan-tuna', 500))
    expect(toDos(running(short)).map((one) => one.kind)).toEqual(['short'])
  })
})

describe('the clock of a pan', () => {
  const told = given()
  const now = running(told).at

  test('[P26] tells when it is read, and asks for it only shortly before', () => {
    const times = foodTimes(running(told), 'pan', 'pan-chicken', now)
    expect(times).toMatchObject({ readBy: null, throwOutAt: null, offSale: null })
    const due = times?.nextBy ?? Number.NaN
    expect(foodTimes(running(told), 'pan', 'pan-chicken', due - 60_000)?.readBy).toBe(due)
  })

  test('[P26] tells when food on time alone is thrown out, strongly half an hour before', () => {
    const timed = running(later(told, timeOnly('pan-slaw', now - HOUR_MS)))
    const until = now + 3 * HOUR_MS
    const at = (when: number) => foodTimes(timed, 'pan', 'pan-slaw', when)
    expect(at(now)).toMatchObject({ throwOutAt: until, isSoon: false, readBy: null })
    expect(at(until - THROW_OUT_SOON_MS)?.isSoon).toBe(true)
  })

  test('[P26] there is none for what is dry, and no pan of an unknown id', () => {
    expect(foodTimes(running(told), 'pan', 'pan-almonds', now)).toMatchObject({
      readBy: null,
      nextBy: null,
      throwOutAt: null,
    })
    expect(foodTimes(running(told), 'pan', 'pan-kale', now)).toBeNull()
  })
})

describe('the batches', () => {
  const stages = (told: Told) => {
    const state = running(told)
    return batchPictures(state, state.at).map((one) => `${one.id} ${one.stage}`)
  }

  test('[P33] stand with what has to be done first, and are gone once they are loaded or thrown out', () => {
    const told = later(
      openedService(),
      start('chicken', 'one', 2),
      start('rice', 'two'),
      heat('two', 1500),
      start('slaw', 'three'),
      { type: 'finishBatch', batch: 'three', amount: ofPortions('slaw', 20) },
    )
    expect(stages(told)).toEqual(['two cooked', 'one making', 'three ready'])
    const out = { type: 'throwOut', what: 'batch', id: 'three', reason: 'quality' } as const
    expect(stages(later(told, { ...out, initials: 'AB' }))).toEqual(['two cooked', 'one making'])
    const load: Given = {
      type: 'load',
      pan: 'pan-slaw',
      amount: ofPortions('slaw', 20),
      batch: 'three',
      reading: { tenths: 380, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'AB',
    }
    expect(stages(later(told, load))).toEqual(['two cooked', 'one making'])
  })

  test('[P33] are gone once less than a portion is left of them', () => {
    const amount = ofPortions('slaw', 20)
    const load: Given = {
      type: 'load',
      pan: 'pan-slaw',
      amount: amount - ofPortions('slaw', 1) / 2,
      batch: 'three',
      reading: { tenths: 380, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'AB',
    }
    const finished = later(openedService(), start('slaw', 'three'), {
      type: 'finishBatch',
      batch: 'three',
      amount,
    })
    expect(stages(finished)).toEqual(['three ready'])
    expect(stages(later(finished, load))).toEqual([])
  })

  test('[P33] tell when they are expected, and that this moment is over', () => {
    const state = running(later(openedService(), start('chicken', 'one', 2)))
    const [one] = batchPictures(state, state.at)
    expect(one).toMatchObject({ at: state.at + 27 * 60_000, isLate: false, portions: null })
    expect(batchPictures(state, state.at + 28 * 60_000)[0]?.isLate).toBe(true)
  })

  test('[P33] offer what comes next: cooked to, finished, then what is done with it', () => {
    const cooking = later(openedService(), start('chicken', 'one'))
    expect(batchSteps(running(cooking), 'one')).toEqual(['cook', 'finish', 'throw-out'])
    expect(nextStep(running(cooking), 'one')).toBe('cook')
    const cooked = later(cooking, heat('one', 1660))
    expect(nextStep(running(cooked), 'one')).toBe('finish')
    const amount = ofPortions('chicken', 12)
    const done = later(cooked, { type: 'finishBatch', batch: 'one', amount })
    expect(batchSteps(running(done), 'one')).toEqual(['load', 'read', 'cool', 'clock', 'throw-out'])
    expect(nextStep(running(done), 'one')).toBeNull()
    expect(nextStep(running(later(cooking, heat('one', 1500))), 'one')).toBe('cook')
  })
})

describe('what may go into a pan', () => {
  const into = (component: string) => ({ component, id: `pan-${component}` })

  test('[P32] a batch that isn’t shown to be cooked says why it can’t, and isn’t offered first', () => {
    const amount = ofPortions('chicken', 12)
    const told = later(openedService(), start('chicken', 'one'), {
      type: 'finishBatch',
      batch: 'one',
      amount,
    })
    const sources = putSources(running(told), into('chicken'), running(told).at)
    expect(sources).toMatchObject([
      { kind: 'batch', id: 'one', amount, problem: { code: 'not-cooked', why: 'no-reading' } },
    ])
    expect(firstSource(sources)).toBeNull()
  })

  test('[P32] the oldest batch comes first, and a later one is out of its turn', () => {
    const of = (batch: string): readonly Given[] => [
      start('chicken', batch),
      heat(batch, 1660),
      { type: 'finishBatch', batch, amount: ofPortions('chicken', 12) },
    ]
    const told = later(openedService(), ...of('one'), ...of('two'))
    const sources = putSources(running(told), into('chicken'), running(told).at)
    expect(sources.map((one) => 'id' in one && one.id)).toEqual(['one', 'two'])
    expect(sources.map(isOutOfTurn)).toEqual([false, true])
    expect(firstSource(sources)).toMatchObject({ id: 'one', problem: null })
  })

  test('[P32] a back-up pan of it can be put in, but not into itself', () => {
    const told = given(backupReady('beans', 12))
    const state = running(told)
    const of = (id: string) =>
      putSources(state, { component: 'beans', id }, state.at).filter((one) => one.kind === 'backup')
    expect(of('pan-beans')).toMatchObject([
      { id: 'back-up-beans', amount: ofPortions('beans', 12), guarded: true },
    ])
    expect(of('back-up-beans')).toEqual([])
  })

  test('[P32] only what isn’t cooked here goes in as it came', () => {
    const state = running(openedService())
    expect(putSources(state, into('cheddar'), state.at)).toEqual([
      { kind: 'plain', heldBy: 'cold' },
    ])
    expect(putSources(state, into('rice'), state.at)).toEqual([])
  })
})
