import { describe, expect, it } from 'vitest'
import { tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { panForBuild } from '#lib/rooms/making/views/assembly-pan.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { putSources } from '#lib/rooms/pans/views/put-sources.ts'
import { isUsable } from '#lib/service/held-stock.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { componentOf, findPan } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { at, fahrenheit, minute, read, whenAt } from '#tests/support/food.ts'
import {
  buildIn,
  changePan,
  choose,
  codeOf,
  deepFreeze,
  demoStation,
  type Given,
  given,
  at as of,
  ofPortions,
  openedService,
  ready,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const jumpAt = (told: Told, minutes: number, byMs = 90_000): Told => {
  const now = Math.max(told.state.at, minute(minutes))
  const event = {
    type: 'clockJumped',
    byMs,
    position: told.events.length + 1,
    at: now,
    command: null,
  } as const
  return { state: evolve(deepFreeze(told.state), event), events: [...told.events, event] }
}
const confirm: Given = { type: 'confirmClock' }
const readPan = (id: string, degrees: number, over = {}): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  ...read(degrees, over),
})
const usable = (told: Told, id: string, what: 'pan' | 'backup' = 'pan') =>
  isUsable(running(told), what, id)
const order = send(choose('garden-chicken'))
const NO_CHEDDAR = { cheddar: 'no' } as const
const unsure = (component: string, helps: 'read' | 'confirm' = 'read') => ({
  code: 'clock-unsure',
  component,
  helps,
})

/** Every pan of the demo station that is held hot or cold, with what it is read as. */
const watched = demoStation.line.wells
  .flatMap(({ pans }) => pans)
  .flatMap(({ id, component }) => {
    const { held } = componentOf(demoStation, component)
    return held === 'dry' ? [] : [{ id, degrees: held === 'hot' ? 150 : 38 }]
  })

describe('while a jump of the clock isn’t confirmed', () => {
  const jumped = jumpAt(given(), 6)

  it('[B37] no hot or cold pan is sold that was read before it, and what is dry is', () => {
    expect(watched.length).toBeGreaterThan(4)
    for (const { id } of watched) {
      expect(usable(given(), id)).toBe(true)
      expect(usable(jumped, id)).toBe(false)
    }
    const dry = demoStation.line.wells
      .flatMap(({ pans }) => pans)
      .filter(({ id }) => !watched.some((one) => one.id === id))
    expect(dry.length).toBeGreaterThan(0)
    for (const { id } of dry) expect(usable(jumped, id)).toBe(true)
  })

  it('[B37] set forward or back, a pan is sold at once when it is read, the others aren’t', () => {
    for (const byMs of [90_000, -90_000, -3_600_000]) {
      const told = at(jumpAt(given(), 6, byMs), 6, readPan('pan-chicken', 150))
      expect(usable(told, 'pan-chicken')).toBe(true)
      expect(usable(told, 'pan-rice')).toBe(false)
    }
  })

  it('[B37] a reading at the moment of the jump, before it, is none since', () => {
    const before = at(given(), 6, readPan('pan-chicken', 150))
    const back = jumpAt(before, 6, -3_600_000)
    expect(back.state.clockJump?.at).toBe(before.state.pans['pan-chicken']?.readings.at(-1)?.at)
    expect(usable(back, 'pan-chicken')).toBe(false)
  })

  it('[B37] a reading that is told to be from before the jump is none since', () => {
    const told = at(jumped, 8, readPan('pan-chicken', 150, { at: minute(5) }))
    expect(usable(told, 'pan-chicken')).toBe(false)
    expect(usable(at(told, 9, readPan('pan-chicken', 150)), 'pan-chicken')).toBe(true)
  })

  it('[B37] another jump leaves every reading open again', () => {
    const told = at(jumped, 7, readPan('pan-chicken', 150))
    expect(usable(jumpAt(told, 8), 'pan-chicken')).toBe(false)
  })

  it('[B37] confirmed, all are sold again; so is each that is read', () => {
    for (const { id } of watched) expect(usable(at(jumped, 7, confirm), id)).toBe(true)
    const all = at(jumped, 7, ...watched.map((one) => readPan(one.id, one.degrees)))
    // The cheddar has a date, and nobody knows whether that is over: only confirming helps.
    expect(codeOf(whenAt(all, 8, send(choose('garden-chicken', NO_CHEDDAR))))).toBeNull()
    expect(refusalOf(whenAt(all, 8, order))).toEqual(unsure('cheddar', 'confirm'))
  })

  it('[B37] a reading holds until the next would be due, since none is missed by then', () => {
    const told = at(jumped, 7, readPan('pan-chicken', 150))
    const { everyMin } = running(told).station.safety.readings
    const later = (minutes: number) => ({
      ...told,
      state: { ...told.state, at: minute(7 + minutes) },
    })
    expect(usable(later(everyMin - 1), 'pan-chicken')).toBe(true)
    expect(usable(later(everyMin), 'pan-chicken')).toBe(false)
  })

  it('[B37] out of limits it is off sale as ever, and a later reading makes nothing good', () => {
    const low = at(jumped, 7, readPan('pan-chicken', 120))
    expect(low.state.pans['pan-chicken']?.offSale).toMatchObject({ why: 'out-of-limits' })
    expect(usable(at(low, 8, readPan('pan-chicken', 150)), 'pan-chicken')).toBe(false)
  })

  it('[B37] a batch that waits is loaded only where it was read since, and is sold then', () => {
    const change = changePan('pan-chicken', ofPortions('chicken', 10))
    const problem = { code: 'cannot-load', component: 'chicken', problem: { code: 'clock-unsure' } }
    expect(refusalOf(whenAt(jumped, 7, change))).toEqual(problem)
    const source = (told: Told) =>
      putSources(running(told), { component: 'chicken', id: 'pan-chicken' }, minute(7)).find(
        ({ kind }) => kind === 'batch',
      )
    expect(source(jumped)).toMatchObject({ problem: { code: 'clock-unsure' } })
    expect(source(given())).toMatchObject({ problem: null })
    const readBatch: Given = {
      type: 'readTemperature',
      what: 'batch',
      id: 'opening-chicken',
      ...read(150),
    }
    const told = at(jumped, 7, readBatch)
    expect(source(told)).toMatchObject({ problem: null })
    expect(usable(at(told, 7, change), 'pan-chicken')).toBe(true)
    expect(codeOf(whenAt(at(jumped, 7, confirm), 7, change))).toBeNull()
  })

  it('[B37] a batch that is cooked after it is loaded, and its pan sold', () => {
    const told = at(
      jumpAt(openedService(), 1),
      30,
      { type: 'startBatch', batch: 'b1', component: 'chicken', loads: 1, startedAt: minute(2) },
      {
        type: 'recordCooking',
        batch: 'b1',
        reading: { ...fahrenheit(168), heldSeconds: 20 },
        initials: 'KT',
      },
      { type: 'finishBatch', batch: 'b1', amount: ofPortions('chicken', 24) },
      {
        type: 'load',
        pan: 'pan-chicken',
        amount: ofPortions('chicken', 20),
        batch: 'b1',
        ...read(150),
      },
    )
    expect(usable(told, 'pan-chicken')).toBe(true)
  })

  it('[B37] a back-up pan stands ready, and is put in, only where it was read since', () => {
    const behind = jumpAt(ready(), 9)
    expect(ready().state.backups.rice).toBeDefined()
    expect(behind.state.backups.rice).toBeUndefined()
    const put: Given = { type: 'changePan', pan: 'pan-rice', from: 'back-up-rice', ...read(150) }
    expect(refusalOf(whenAt(behind, 10, put))).toEqual(unsure('rice'))
    const told = at(behind, 10, {
      type: 'readTemperature',
      what: 'backup',
      id: 'back-up-rice',
      ...read(150, { cleaned: true }),
    })
    expect(told.state.backups.rice).toBeDefined()
    expect(usable(told, 'back-up-rice', 'backup')).toBe(true)
    const changed = at(told, 11, put)
    expect(usable(changed, 'pan-rice')).toBe(true)
    expect(codeOf(whenAt(at(behind, 10, confirm), 10, put))).toBeNull()
  })

  it('[B37] what is refused names the clock and what helps: reading, or only confirming', () => {
    const whole = refusalOf(whenAt(jumped, 7, send(choose('garden-chicken', NO_CHEDDAR))))
    const lacks = whole?.code === 'lacks' ? whole.lacks : []
    expect(lacks.length).toBeGreaterThan(1)
    for (const lack of lacks) expect(lack).toMatchObject({ code: 'clock-unsure', helps: 'read' })
    const fish = send(choose('harbor-tuna', NO_CHEDDAR))
    const all = watched.filter(({ id }) => id !== 'pan-tuna')
    const others = at(jumped, 7, ...all.map((one) => readPan(one.id, one.degrees)))
    expect(refusalOf(whenAt(others, 7, fish))).toEqual(unsure('tuna'))
    const timed = at(given(), 6, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(5),
      from: 'cold',
      rule: '4h',
      ...read(38, { at: minute(5) }),
    })
    const open = at(jumpAt(timed, 6), 7, ...all.map((one) => readPan(one.id, one.degrees)))
    expect(refusalOf(whenAt(open, 7, fish))).toEqual(unsure('tuna', 'confirm'))
    const said = (helps: 'read' | 'confirm') =>
      sayRefusal({ code: 'clock-unsure', component: 'tuna', helps }, nameIn(demoStation))
    expect(said('read')).toMatch(/clock jumped.*confirms the clock, or reads the pan/)
    expect(said('confirm')).toMatch(/clock jumped.*confirms the clock/)
    expect(said('confirm')).not.toMatch(/reads/)
  })

  it('[B37] what was accepted before is neither started nor finished, and Assembly is told why', () => {
    const start: Given = { type: 'start', ...of('1A') }
    const finish: Given = { type: 'finish', ...of('1A') }
    const waiting = jumpAt(given(order), 6)
    const making = jumpAt(given(order, start), 6)
    expect(refusalOf(whenAt(waiting, 7, start))).toMatchObject({ code: 'clock-unsure' })
    expect(refusalOf(whenAt(making, 7, finish))).toMatchObject({ code: 'clock-unsure' })
    expect(codeOf(whenAt(at(making, 7, confirm), 7, finish))).toBeNull()
    expect(assemblyView(running(waiting), null).now).toMatchObject({ lacksWhy: 'clock' })
    const pan = findPan(demoStation, 'pan-chicken')
    const shown = pan && panForBuild(running(making), pan, buildIn(making, '1A').choice, null)
    expect(shown).toMatchObject({ stands: 'clock' })
  })

  it('[B37] the lead is told to confirm the clock, and not what the pans lack by it', () => {
    const told = jumpAt(given(order), 6)
    const tasks = tasksOf(running(told), null, told.state.at)
    expect(tasks[0]).toMatchObject({ kind: 'fact', toDo: { kind: 'confirm-clock' } })
    const kinds = tasks.map((one) => (one.kind === 'fact' ? one.toDo.kind : one.kind))
    expect(kinds).not.toContain('short')
    expect(panPictures(running(told))['pan-chicken']).toMatchObject({ trouble: 'unread', left: 0 })
  })
})
