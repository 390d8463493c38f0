import { describe, expect, it } from 'vitest'
import { batchSteps } from '#lib/rooms/food/views/batch-steps.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  demoStation,
  type Given,
  ofPortions,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

/** The demo station with beans out of a can, which are only heated and held hot. */
const station: StationDocument = {
  ...demoStation,
  components: demoStation.components.map((one) =>
    one.id === 'beans' ? { ...one, food: { ...one.food, kind: 'ready', reheatable: true } } : one,
  ),
}
const open: Told = { ...openedService(), state: { ...openedService().state, station } }
const amount = ofPortions('beans', 10)
const cool = (degrees: number, over: object = {}): Given => ({
  type: 'recordCooling',
  batch: 'b1',
  ...read(degrees),
  presentUntil: minute(500),
  ...over,
})
const load = (over: object = {}): Given => ({
  type: 'load',
  pan: 'pan-beans',
  amount,
  batch: 'b1',
  ...over,
})
const hot = at(
  open,
  1,
  { type: 'startBatch', component: 'beans', loads: 1, startedAt: minute(-30) },
  { type: 'finishBatch', batch: 'b1', amount, finishedAt: minute(0) },
  { type: 'readTemperature', what: 'batch', id: 'b1', ...read(150) },
)
const cooling = at(hot, 2, cool(140))
const offSale = ({ state }: Told) => state.batches.b1?.offSale ?? null

// FDA Food Code 2022, 3-501.14(A): 135 to 70 °F within 2 hours, to 41 °F within 6 in all.
describe('bought-in food that was held hot and cools', () => {
  it('[F62] is below 70 °F within 2 hours, as food that is cooked here', () => {
    expect(offSale(until(cooling, 122))).toBeNull()
    expect(offSale(until(cooling, 123))).toMatchObject({ why: 'cooling-missed' })
    expect(offSale(at(cooling, 121, cool(71)))).toBeNull()
    expect(offSale(until(at(cooling, 121, cool(71)), 123))).toMatchObject({
      why: 'cooling-missed',
    })
  })

  it('[F62] and below 41 °F within 6 hours in all: a fast first stage lends time to the second', () => {
    const cool70 = at(cooling, 121, cool(70))
    const early = at(cool70, 300, cool(55))
    expect(offSale(early)).toBeNull()
    expect(offSale(at(early, 361, cool(41)))).toBeNull()
    expect(offSale(until(early, 363))).toMatchObject({ why: 'cooling-missed' })
  })

  it('[F62] never read at 135 °F, nobody knows how long it cools: it is off sale', () => {
    expect(offSale(at(hot, 2, cool(120)))).toMatchObject({ why: 'cooling-missed' })
  })

  it('[F63] isn’t loaded cold before it is shown to have cooled', () => {
    const cold = load({ heldBy: 'cold', ...read(40) })
    const not = { code: 'cannot-load', problem: { code: 'not-cooled' } }
    expect(refusalOf(whenAt(hot, 2, cold))).toMatchObject(not)
    expect(refusalOf(whenAt(cooling, 3, cold))).toMatchObject(not)
    const cooled = at(at(cooling, 100, cool(65)), 240, cool(40))
    expect(codeOf(whenAt(cooled, 241, cold))).toBeNull()
  })

  it('[F63] cooled, it is loaded hot only once it is reheated to 165 °F', () => {
    const cooled = at(at(cooling, 100, cool(65)), 240, cool(40))
    expect(refusalOf(whenAt(cooled, 241, load(read(150))))).toMatchObject({
      problem: { code: 'not-reheated' },
    })
    expect(batchSteps(running(cooled), 'b1')).toContain('reheat')
    const heat = (degrees: number): Given => ({
      type: 'recordReheating',
      batch: 'b1',
      place: 'range',
      startedAt: minute(241),
      reading: { ...fahrenheit(degrees), heldSeconds: 15 },
      initials: 'KT',
    })
    const short = at(cooled, 260, heat(150))
    expect(codeOf(whenAt(short, 261, load(read(150))))).toBe('cannot-load')
    expect(codeOf(whenAt(at(cooled, 260, heat(165)), 261, load(read(150))))).toBeNull()
  })

  it('[F63] out of a back-up pan that held it cold it is asked nothing again', () => {
    const cooled = at(at(cooling, 100, cool(65)), 240, cool(40))
    const fill: Given = {
      type: 'setBackup',
      component: 'beans',
      ready: true,
      amount,
      batch: 'b1',
      heldBy: 'cold',
      ...read(40),
    }
    const behind = at(cooled, 241, fill)
    const put = { type: 'load', pan: 'pan-beans', from: 'back-up-beans', ...read(40) } as const
    expect(codeOf(whenAt(behind, 242, put))).toBeNull()
  })

  it('[F62] what was never hot cools from room temperature, within 4 hours', () => {
    const slaw = at(
      open,
      1,
      { type: 'startBatch', component: 'slaw', loads: 1, startedAt: minute(-30) },
      { type: 'finishBatch', batch: 'b1', amount, finishedAt: minute(0) },
      { type: 'recordCooling', batch: 'b1', ...read(68), presentUntil: minute(400) },
    )
    expect(offSale(until(slaw, 200))).toBeNull()
    expect(offSale(until(slaw, 242))).toMatchObject({ why: 'cooling-missed' })
  })
})
