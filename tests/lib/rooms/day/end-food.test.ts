import { describe, expect, it } from 'vitest'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { FoodEnded } from '#lib/service/events/end-event.ts'
import { placeOf } from '#lib/service/place.ts'
import { asPlanned } from '#tests/support/ends-refused.ts'
import {
  at,
  cooledBefore,
  fahrenheit,
  madeBefore,
  minute,
  read,
  whenAt,
} from '#tests/support/food.ts'
import {
  accountOf,
  backupReady,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  inPan,
  ofPortions,
  onward,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'
import { held } from '#tests/support/stock-sums.ts'

type Ending = Extract<Given, { type: 'endFood' }>

const end = (id: string, over: Partial<Ending> & Pick<Ending, 'end'>): Given => ({
  type: 'endFood',
  what: 'pan',
  id,
  how: 'weighed',
  lot: `lot-${id}`,
  initials: 'KT',
  ...over,
})

const cool = (id: string, over: Partial<Ending> = {}): Given =>
  end(id, { end: 'cool', ...read(150), presentUntil: minute(8 * 60), ...over })

const withCrewMeal = (told: Told): Told => {
  const state = running(told)
  const day = { ...state.station.day, crewMeal: true }
  return { ...told, state: { ...state, station: { ...state.station, day } } }
}

const endedIn = (told: Told): FoodEnded => {
  const found = told.events.find((one) => one.type === 'foodEnded')
  if (found?.type !== 'foodEnded') throw new Error('nothing ended')
  return found
}

const alongOf = (told: Told) => {
  const { lot, along } = endedIn(told)
  if (lot === undefined || along === undefined) throw new Error('nothing was set aside')
  return along
}

const whyOf = (told: Told, command: Given, over: Partial<Circumstances> = {}) => {
  const refusal = refusalOf(when(told, command, over))
  return refusal?.code === 'end-not-offered' ? [refusal.why, refusal.paragraph] : refusal?.code
}

const slaw = ofPortions('slaw', 3)
const onClock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(0),
  from: 'cold',
  rule: '4h',
  ...read(38, { at: minute(0) }),
}

describe('food comes to an end', () => {
  it('[EN10] with an amount, how it was learnt, initials, and in an end that its history allows', () => {
    const told = given(end('pan-slaw', { end: 'cold', amount: slaw }))
    expect(endedIn(told)).toMatchObject({ end: 'cold', amount: slaw, how: 'weighed' })
    expect(inPan(told, 'pan-slaw')).toBe(0)
    expect(told.state.ends).toEqual([
      expect.objectContaining({ what: 'pan', id: 'pan-slaw', end: 'cold', amount: slaw }),
    ])
    expect(codeOf(when(told, end('pan-slaw', { end: 'cold' })))).toBe('nothing-there')
    const unnamed = given(
      end('pan-tuna', { end: 'throw-out' }),
      end('pan-slaw', { end: 'cold', lot: undefined }),
    )
    expect(endedIn(unnamed).lot).toBe(`${unnamed.state.service}.2`)
    const unsigned = end('pan-slaw', { end: 'cold', initials: undefined })
    expect(codeOf(when(given(), unsigned))).toBe('not-initialled')
    expect(codeOf(when(given(), end('pan-slaw', { end: 'cold', amount: 1e9 })))).toBe(
      'absurd-amount',
    )
    expect(codeOf(when(given(), end('pan-slaw', { end: 'cold', amount: 0 })))).toBe('nothing-there')
  })

  it('[EN10] an end that isn’t offered is refused with its reason and paragraph', () => {
    expect(whyOf(given(), end('pan-rice', { end: 'cold' }))).toEqual([
      'not-cold-yet',
      '3-501.14(A)',
    ])
    expect(whyOf(given(), end('pan-slaw', { end: 'crew' }))).toEqual(['crew-not-allowed', null])
    expect(whyOf(given(onClock), end('pan-tuna', { end: 'cold' }))).toEqual([
      'on-clock',
      '3-501.19(B)',
    ])
    const warm = given({ type: 'readTemperature', id: 'pan-slaw', ...read(50) })
    expect(whyOf(warm, end('pan-slaw', { end: 'cold' }))).toEqual(['out-of-limits', '3-701.11(A)'])
    expect(eventsOf(when(warm, end('pan-slaw', { end: 'throw-out' })))).toMatchObject([
      { type: 'discardSignedOff', reason: 'out-of-limits', how: 'weighed' },
    ])
  })

  it('[EN10] guests that wait for it come first', () => {
    const told = given(send(choose('harbor-tuna')))
    expect(refusalOf(when(told, end('pan-tuna', { end: 'cold' })))).toEqual({
      code: 'builds-open',
      count: 1,
    })
    expect(eventsOf(when(told, end('pan-tuna', { end: 'throw-out' })))).not.toEqual([])
  })

  it('[EN11] conserved: loaded and corrected are in pan, used, wasted, taken away or set aside', () => {
    const change = changePan('pan-slaw', ofPortions('slaw', 10))
    const told = withCrewMeal(given(backupReady('slaw', 4), change))
    const stories: readonly Given[][] = [
      [end('pan-slaw', { end: 'cold', amount: slaw })],
      [end('pan-slaw', { end: 'freeze' })],
      [end('pan-slaw', { end: 'crew', amount: slaw })],
      [end('pan-slaw', { end: 'throw-out', amount: slaw })],
      [end('pan-slaw', { end: 'cold' }), end('back-up-slaw', { what: 'backup', end: 'cold' })],
      [end('opening-slaw', { what: 'batch', end: 'cold', amount: slaw })],
      [{ type: 'throwOutHot', initials: 'KT' }],
    ]
    for (const story of stories) {
      const after = onward(told, ...story)
      for (const component of ['slaw', 'rice', 'chicken']) {
        const one = accountOf(after, component)
        const away = one.used + one.wasted + one.takenAway + (one.setAside ?? 0)
        expect(one.loaded + one.corrected).toBe(held(running(after), component) + away)
      }
    }
    const aside = onward(told, end('pan-slaw', { end: 'cold', amount: slaw }))
    expect(accountOf(aside, 'slaw')).toMatchObject({ setAside: slaw, wasted: 0 })
    const eaten = onward(told, end('pan-slaw', { end: 'crew', amount: slaw }))
    expect(accountOf(eaten, 'slaw')).not.toHaveProperty('setAside')
    expect(eaten.state.wastes.slaw).toEqual({ 'staff-meal': slaw })
    expect(endedIn(eaten)).not.toHaveProperty('lot')
  })

  it('[EN24] an empty pan says what its food came to, until something is put in', () => {
    const slaw = (told: Told) => panPictures(running(told))['pan-slaw']
    expect(slaw(given())?.ended).toBeNull()
    const told = given(end('pan-slaw', { end: 'cold', ...read(38) }))
    expect(slaw(told)).toMatchObject({ ended: 'cold', amount: 0 })
    const thrown = given(end('pan-slaw', { end: 'throw-out' }))
    expect(slaw(thrown)?.ended).toBe('throw-out')
    expect(panPictures(running(told))['pan-tuna']?.ended).toBeNull()
    const again = running(told)
    const refilled = {
      ...again,
      pans: { ...again.pans, 'pan-slaw': running(given()).pans['pan-slaw'] },
    }
    expect(panPictures(refilled as typeof again)['pan-slaw']?.ended).toBeNull()
    for (const said of Object.values(pansWords.endedAs)) expect(said).not.toBe(pansWords.soldOut)
  })

  it('[EN11] a batch that ended is gone: nothing is loaded of it, and it asks for nothing', () => {
    const told = given(...madeBefore('fresh-slaw', 'slaw'))
    const after = onward(told, end('fresh-slaw', { what: 'batch', end: 'cold' }))
    const place = placeOf(running(after), { what: 'batch', id: 'fresh-slaw' })
    expect(place?.stage).toBe('gone')
    expect(after.state.batches['fresh-slaw']).toMatchObject({ ended: 'cold' })
    expect(toAnswer(running(after)).map(({ id }) => id)).not.toContain('fresh-slaw')
    expect(codeOf(when(after, end('fresh-slaw', { what: 'batch', end: 'cold' })))).toBe(
      'already-so',
    )
  })

  it('[EN12] all that is hot is thrown out at once under one’s initials, amounts not checked', () => {
    const told = given(backupReady('rice', 4))
    const after = onward(told, { type: 'throwOutHot', initials: 'KT' })
    const hot = ['pan-rice', 'pan-chicken', 'pan-beans', 'pan-peppers']
    for (const pan of hot) expect(inPan(after, pan), pan).toBe(0)
    expect(inPan(after, 'pan-slaw')).toBeGreaterThan(0)
    const ends = after.state.ends ?? []
    expect(ends.map(({ id }) => id)).toEqual(expect.arrayContaining([...hot, 'back-up-rice']))
    expect(new Set(ends.map(({ how }) => how))).toEqual(new Set(['not-checked']))
    expect(accountOf(after, 'rice').corrected).toBe(accountOf(told, 'rice').corrected)
    expect(codeOf(when(after, { type: 'throwOutHot', initials: 'KT' }))).toBe('already-so')
    expect(codeOf(when(told, { type: 'throwOutHot' }))).toBe('not-initialled')
    const waiting = given(send(choose('harbor-tuna')))
    expect(codeOf(when(waiting, { type: 'throwOutHot', initials: 'KT' }))).toBe('builds-open')
  })

  it('[EN13] cooling starts with a reading in limits, and with somebody who can read it to the end', () => {
    expect(refusalOf(when(given(), cool('pan-rice', { reading: undefined })))).toEqual({
      code: 'end-asks-reading',
      id: 'pan-rice',
      end: 'cool',
    })
    expect(codeOf(when(given(), cool('pan-rice', { presentUntil: minute(0) })))).toBe('cannot-cool')
    const low = when(given(), cool('pan-rice', { reading: fahrenheit(128) }))
    expect(codeOf(low)).toBe('off-sale')
    expect('also' in low && low.also?.map(({ type }) => type)).toEqual([
      'temperatureRead',
      'takenOffSale',
    ])
    const told = given(cool('pan-rice'))
    expect(alongOf(told)).toMatchObject({
      heldBy: 'hot',
      coolingFrom: 'cooked',
      cooling: [{ temperature: { tenths: 1500, scale: 'F' } }],
      presentUntil: minute(8 * 60),
      stoodOpen: true,
      dateMark: { lastDay: '2026-12-01' },
    })
  })

  it('[EN6] what was cooled and reheated goes into no second cooling', () => {
    const reheated: Given = {
      type: 'recordReheating',
      batch: 'old-rice',
      place: 'range',
      startedAt: minute(0),
      reading: { ...fahrenheit(170, { at: minute(2) }), heldSeconds: 20 },
      initials: 'KT',
    }
    const told = at(given(...cooledBefore('old-rice', 'rice')), 3, reheated)
    const asked = cool('old-rice', { what: 'batch' })
    expect(refusalOf(whenAt(told, 4, asked))).toMatchObject({ why: 'cooled-once', paragraph: null })
  })

  it('[EN7] what is frozen keeps the days that it has left, the first one used', () => {
    const told = given(end('pan-slaw', { end: 'freeze' }))
    expect(alongOf(told)).toMatchObject({
      dateMark: { lastDay: '2026-12-01' },
      frozen: { on: '2026-11-25', daysLeft: 6 },
    })
    const dry = given(end('pan-pita', { end: 'freeze', how: 'counted' }))
    expect(alongOf(dry)).toMatchObject({
      dateMark: null,
      frozen: { daysLeft: null },
      unit: 'piece',
    })
  })

  it('[EN9] what stood open keeps what touched it, and says that it stood open', () => {
    const told = given(
      backupReady('slaw', 4),
      { type: 'soilPan', pan: 'pan-slaw', by: 'cheddar' },
      end('pan-slaw', { end: 'cold' }),
    )
    const along = alongOf(told)
    expect(along).toMatchObject({ stoodOpen: true, soiledBy: ['cheddar'] })
    expect(along.touched?.map(({ component }) => component)).toContain('cheddar')
    expect(along.madeOf.length).toBeGreaterThan(0)
    const behind = given(
      backupReady('slaw', 4),
      end('back-up-slaw', { what: 'backup', end: 'cold' }),
    )
    expect(alongOf(behind)).toMatchObject({ stoodOpen: false, soiledBy: [] })
    // Somebody else's scoop in a protected pan ends its protection, so that it stood open too.
    expect(alongOf(behind).touched?.map(({ component }) => component)).not.toContain('tuna')
  })

  it('[EN9] a product that was changed since and is still in it goes along with its own label', () => {
    const [first] =
      running(given()).station.recipes.find(({ id }) => id === 'slaw')?.ingredients ?? []
    const ingredient = first ?? alongOf(given(end('pan-slaw', { end: 'cold' }))).madeOf[0] ?? ''
    const told = given({ type: 'notSameProduct', ingredient }, end('pan-slaw', { end: 'cold' }))
    expect(alongOf(told).before).toEqual([
      { ingredient, label: expect.objectContaining({ declarations: expect.anything() }) },
    ])
  })

  it('[EN14] a service that was planned closes once each pan is answered; others close as they are', () => {
    expect(eventsOf(when(given(), { type: 'close' }))).toMatchObject([{ type: 'serviceClosed' }])
    const count = toAnswer(running(given())).length
    expect(refusalOf(when(asPlanned(given()), { type: 'close' }))).toMatchObject({
      code: 'food-unanswered',
      count,
      what: 'pan',
      id: 'pan-pita',
      component: 'pita',
    })
    const all = toAnswer(running(given())).map(({ what, id }) =>
      end(id, { what, end: 'throw-out', how: 'eye' }),
    )
    expect(all.length).toBeGreaterThan(9)
    expect(eventsOf(when(asPlanned(given(...all)), { type: 'close' }))).toMatchObject([
      { type: 'serviceClosed' },
    ])
  })
})
