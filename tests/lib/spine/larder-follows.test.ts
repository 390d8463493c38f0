import { describe, expect, it } from 'vitest'
import { thawedMark } from '#lib/larder/days.ts'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { EMPTY_LARDER } from '#lib/larder/lot.ts'
import { lotTakeProblem } from '#lib/larder/take.ts'
import { goesAlong } from '#lib/rooms/day/facts/ends/goes-along.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { placeOf } from '#lib/service/place.ts'
import { larderFollows } from '#lib/spine/larder-follows.ts'
import { read } from '#tests/support/food.ts'
import { coldRice } from '#tests/support/larder.ts'
import { type Given, given, happening, OPENED_AT, running } from '#tests/support/service.ts'

const ends = (end: 'cold' | 'cool' | 'freeze' | 'crew', id: string, more: object = {}): Given =>
  ({
    type: 'endFood',
    what: 'pan',
    id,
    end,
    amount: 400_000,
    how: 'weighed',
    lot: 'lot-a',
    ...more,
    ...read(38),
  }) as Given

const PAN = { what: 'pan', id: 'pan-slaw' } as const

const followed = (command: Given) => {
  const told = given(command)
  return { told, events: larderFollows('s-one', told.state, told.events) }
}

describe('what happens in the larder with a service’s events', () => {
  it('[LA33] cold food is cold there, with its reading, date and what it is made of', () => {
    const { events } = followed(ends('cold', 'pan-slaw', { preparedOn: '2026-11-25' }))
    expect(events).toMatchObject([
      {
        type: 'lotSetAside',
        lot: 'lot-a',
        amount: 400_000,
        food: {
          component: 'slaw',
          kept: 'cold',
          readings: [{ temperature: { tenths: 380, scale: 'F' } }],
          stoodOpen: true,
          from: { service: 's-one', what: 'pan', id: 'pan-slaw' },
        },
      },
    ])
    const [event] = events
    const stamp = { position: 1, at: OPENED_AT + 60_000, command: 'end' }
    const larder = evolveLarder(EMPTY_LARDER, { ...event, ...stamp } as LarderRecorded)
    const asked = { amount: 400_000, now: OPENED_AT + 120_000, saysWhy: false }
    expect(lotTakeProblem(larder, 'lot-a', asked)).toBeNull()
  })

  it('[LA33] frozen it keeps its days, and of a reading nothing', () => {
    const { events } = followed(ends('freeze', 'pan-slaw', { preparedOn: '2026-11-25' }))
    expect(events).toMatchObject([
      { food: { kept: 'frozen', frozen: { on: '2026-11-25', daysLeft: 6 }, readings: [] } },
    ])
  })

  it('[EN23] the maker’s use-by that is told as it is frozen goes along: no freezing moves it', () => {
    const told = { preparedOn: '2026-11-25', useBy: '2026-11-28' }
    const [event] = followed(ends('freeze', 'pan-slaw', told)).events
    expect(event).toMatchObject({ food: { frozen: { daysLeft: 4, useBy: '2026-11-28' } } })
    if (event?.type !== 'lotSetAside' || !event.food.frozen) throw new Error('nothing is frozen')
    const { under, frozen } = event.food
    expect(thawedMark({ under, frozen }, '2026-11-27')?.lastDay).toBe('2026-11-28')
    expect(thawedMark({ under, frozen }, '2026-12-20')).toBeNull()
  })

  it('[LA59] the maker’s use-by that was told as it was loaded goes along, though nobody tells it again', () => {
    const state = running(given())
    const pan = state.pans['pan-slaw']
    if (!pan?.food) throw new Error('nothing is known of the slaw')
    const dateMark = { ...stampOf('2026-11-28', state.station.timeZone), useBy: '2026-11-28' }
    const slaw = { ...pan, food: { ...pan.food, dateMark } }
    const place = placeOf({ ...state, pans: { ...state.pans, 'pan-slaw': slaw } }, PAN)
    if (!place) throw new Error('no slaw')
    const now = state.at
    const as = { end: 'freeze', mark: dateMark, reading: null, presentUntil: undefined } as const
    expect(goesAlong(state, place, { ...as, now }).frozen?.useBy).toBe('2026-11-28')
    expect(goesAlong(state, place, { ...as, useBy: '2026-11-27', now }).frozen?.useBy).toBe(
      '2026-11-27',
    )
    expect(goesAlong(state, place, { ...as, useBy: '2026-12-27', now }).frozen?.useBy).toBe(
      '2026-11-28',
    )
  })

  it('[LA33] food that cools goes on from the reading of its start, with who stays', () => {
    const presentUntil = OPENED_AT + 8 * 3_600_000
    const command = ends('cool', 'pan-rice', { preparedOn: '2026-11-25', presentUntil })
    const { events } = followed({ ...command, ...read(150) } as Given)
    expect(events).toMatchObject([
      {
        food: {
          kept: 'cooling',
          cooledFrom: 'cooked',
          cooling: [{ temperature: { tenths: 1500 } }],
          presentUntil,
        },
      },
    ])
  })

  it('[LA33] what is taken leaves its lot; nothing else of a service is of the larder', () => {
    const taken = happening(given(), [
      { type: 'foodTaken', batch: 'b9', lot: 'lot-a', amount: 5, food: coldRice() },
    ])
    expect(larderFollows('s-one', taken.state, taken.events)).toEqual([
      {
        type: 'lotTaken',
        lot: 'lot-a',
        amount: 5,
        by: { service: 's-one', station: 'alder-hall', batch: 'b9' },
      },
    ])
    const other = given()
    expect(larderFollows('s-one', other.state, other.events)).toEqual([])
  })
})
