import { describe, expect, it } from 'vitest'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { at, fahrenheit, read, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  buildIn,
  choose,
  codeOf,
  eventsOf,
  type Given,
  at as of,
  ofPortions,
  ready,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const on1A = (type: 'start' | 'finish'): Given => ({ type, ...of('1A') })

describe('a back-up pan', () => {
  it('[B8] stands ready with what it holds, and all of it goes along when it is put in', () => {
    const told = ready()
    expect(told.state.backupPans['back-up-rice']).toMatchObject({
      amount: ofPortions('rice', 12),
      guarded: true,
      batches: ['opening-rice'],
      food: { heldBy: 'hot', guarded: true },
    })
    const put: Given = { type: 'changePan', pan: 'pan-rice', from: 'back-up-rice', ...read(150) }
    const { reading: _, initials: __, ...unread } = put as Extract<Given, { type: 'changePan' }>
    expect(refusalOf(whenAt(told, 9, unread))).toMatchObject({
      problem: { code: 'no-load-reading' },
    })
    const changed = at(told, 9, put)
    expect(changed.state.pans['pan-rice']).toMatchObject({
      amount: ofPortions('rice', 12),
      batches: ['opening-rice'],
    })
    expect(changed.state.backupPans['back-up-rice']).toMatchObject({ amount: 0, batches: [] })
    expect(changed.state.backups.rice).toBeUndefined()
    expect(accountOf(changed, 'rice')).toMatchObject({
      loaded: ofPortions('rice', 36),
      takenAway: ofPortions('rice', 24),
      corrected: 0,
    })
  })

  it('[B8] that a scoop went into takes it along', () => {
    const soiled = ready({ type: 'soilPan', pan: 'pan-rice', by: 'cheddar', backup: true })
    expect(soiled.state.backupPans['back-up-rice']).toMatchObject({
      guarded: false,
      soiledBy: ['cheddar'],
    })
    const put: Given = { type: 'changePan', pan: 'pan-rice', from: 'back-up-rice', ...read(150) }
    expect(at(soiled, 9, put).state.pans['pan-rice']?.soiledBy).toEqual(['cheddar'])
  })

  it('[B8] is put away with its food', () => {
    const away = ready({ type: 'setBackup', component: 'rice', ready: false })
    expect(away.state.backupPans['back-up-rice']?.amount).toBe(0)
    expect(accountOf(away, 'rice').takenAway).toBe(ofPortions('rice', 12))
    expect(away.state.backups.rice).toBeUndefined()
  })

  it('[B8][B14] off sale is ready no more, and what counted on it is held', () => {
    const milk = {
      asked: 'needs',
      needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
      agreed: true,
    } as const
    const apart = choose(
      'bean-and-pepper',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
      milk,
    )
    const told = ready(send(apart))
    const low: Given = {
      type: 'readTemperature',
      what: 'backup',
      id: 'back-up-slaw',
      reading: fahrenheit(52),
      initials: 'KT',
    }
    const events = eventsOf(whenAt(told, 9, low))
    expect(events.map((one) => one.type)).toEqual(['temperatureRead', 'takenOffSale', 'buildHeld'])
    expect(at(told, 9, low).state.backups.slaw).toBeUndefined()
  })

  it('[B9] is what a kept-apart build takes from, and nobody else', () => {
    const milk = {
      asked: 'needs',
      needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
      agreed: true,
    } as const
    const apart = choose(
      'bean-and-pepper',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
      milk,
    )
    const told = ready(send(apart))
    expect(levelOf(running(told), 'slaw')).toMatchObject({
      inPan: ofPortions('slaw', 40),
      remaining: ofPortions('slaw', 40),
      behind: ofPortions('slaw', 12),
    })
    const made = at(told, 9, { type: 'start', ...of('1A'), read: true }, on1A('finish'))
    expect(buildIn(made, '1A').took.find((one) => one.pan.includes('slaw'))).toMatchObject({
      pan: 'back-up-slaw',
      amount: ofPortions('slaw', 1),
    })
    const back = at(made, 10, { type: 'takeBack', ...of('1A'), made: false })
    expect(back.state.backupPans['back-up-slaw']?.amount).toBe(ofPortions('slaw', 12))
    const little = at(ready({ type: 'setBackup', component: 'slaw', ready: false }), 9, {
      type: 'setBackup',
      component: 'slaw',
      ready: true,
      amount: ofPortions('slaw', 1),
      batch: 'opening-slaw',
      ...read(39, { cleaned: true }),
    })
    const one = at(little, 10, send(apart))
    expect(refusalOf(whenAt(one, 11, send(apart)))).toEqual({ code: 'sold-out', component: 'slaw' })
    expect(codeOf(whenAt(one, 11, send(choose('bean-and-pepper'))))).toBeNull()
  })

  it('[B10] that doesn’t fit where another stands is refused', () => {
    const told = ready()
    const { station } = running(told)
    const large: Told = {
      ...told,
      state: {
        ...told.state,
        station: {
          ...station,
          backups: station.backups.map((one) => ({ ...one, size: 'full' as const })),
        },
      },
    }
    const put: Given = { type: 'changePan', pan: 'pan-slaw', from: 'back-up-slaw', ...read(39) }
    expect(refusalOf(whenAt(large, 9, put))).toEqual({
      code: 'wrong-place',
      pan: 'pan-slaw',
      problem: { code: 'does-not-fit', well: 'cold' },
    })
    expect(codeOf(whenAt(told, 9, { ...put, from: 'back-up-kale' } as Given))).toBe(
      'unknown backup',
    )
  })
})
