import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import {
  amountOf,
  doubtOf,
  mostPortions,
  type PanPicture,
  panPictures,
  queueOf,
} from '#lib/rooms/pans/facts/pans.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { pansOf } from '#lib/station/find.ts'
import {
  at,
  backupReady,
  changePan,
  choose,
  cookedService,
  type Given,
  given,
  onward as later,
  load,
  OPENED_AT,
  ofPortions,
  openedService,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const pictureOf = (told: Told, pan: string): PanPicture => {
  const found = panPictures(running(told))[pan]
  if (!found) throw new Error(`no picture of ${pan}`)
  return found
}

const chicken = () => send(choose('garden-chicken'))

/** The demo station with a second chicken pan, for a component that stands twice on the line. */
const withTwoChickenPans = (told: Told, first: number, second: number): Told => {
  const state = running(told)
  const wells = state.station.line.wells.map((well) => ({
    ...well,
    pans: well.pans.flatMap((pan) =>
      pan.id === 'pan-chicken' ? [pan, { ...pan, id: 'pan-chicken-2' }] : [pan],
    ),
  }))
  const one = state.pans['pan-chicken']
  if (!one) throw new Error('no chicken pan')
  return {
    ...told,
    state: {
      ...state,
      station: { ...state.station, line: { wells } },
      pans: {
        ...state.pans,
        'pan-chicken': { ...one, amount: first },
        'pan-chicken-2': { ...one, amount: second },
      },
    },
  }
}

describe('the line as the lead sees it', () => {
  test('[P1] a pan is drawn against what it was loaded with, what is owed as a part of that', () => {
    const fresh = pictureOf(given(), 'pan-chicken')
    expect(fresh).toMatchObject({ filled: 1, owed: 0, left: 24, onTickets: 0 })
    const owed = pictureOf(given(chicken(), chicken(), chicken()), 'pan-chicken')
    expect(owed).toMatchObject({ filled: 1, owed: 3 / 24, left: 21, onTickets: 3 })
    const made = given(chicken(), { type: 'start', ...at('1A') }, { type: 'finish', ...at('1A') })
    expect(pictureOf(made, 'pan-chicken')).toMatchObject({ filled: 23 / 24, owed: 0, left: 23 })
  })

  test('[P2] what is left in the pans of one component sums to what is left of the component', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        fc.integer({ min: 0, max: 8 }),
        (first, second, part, orders) => {
          const each = ofPortions('chicken', 1)
          const told = withTwoChickenPans(
            given(...Array.from({ length: orders }, chicken)),
            first * each + Math.floor(part * each),
            second * each + Math.floor((1 - part) * each),
          )
          const one = pictureOf(told, 'pan-chicken')
          const other = pictureOf(told, 'pan-chicken-2')
          expect(one.left + other.left).toBe(levelOf(running(told), 'chicken').portionsLeft)
          expect(one.owed).toBeLessThanOrEqual(one.filled)
          expect(other.owed).toBeLessThanOrEqual(other.filled)
        },
      ),
      { seed: 4770 },
    )
  })

  test('[P3] an empty pan is not loaded, empty or sold out, by what else there is', () => {
    expect(pictureOf(openedService(), 'pan-chicken').standing).toBe('not-loaded')
    const used = given({ type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(pictureOf(used, 'pan-chicken').standing).toBe('sold-out')
    const beside = withTwoChickenPans(given(), 0, ofPortions('chicken', 20))
    expect(pictureOf(beside, 'pan-chicken').standing).toBe('empty')
  })

  test('[P3] what is all on tickets is sold out, although the pan holds food', () => {
    const all = given(
      { type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', 2) },
      chicken(),
      chicken(),
    )
    expect(pictureOf(all, 'pan-chicken')).toMatchObject({
      standing: 'sold-out',
      left: 0,
      onTickets: 2,
    })
  })

  test('[P4] a pan is nearly empty under a quarter of what it was loaded with, not at a quarter', () => {
    const of = (count: number) =>
      pictureOf(
        given({ type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', count) }),
        'pan-chicken',
      ).standing
    expect([of(7), of(6), of(5)]).toEqual(['stocked', 'stocked', 'nearly-empty'])
  })

  test('[P5] a pan that builds are short of says by how many portions, also while it is not sold', () => {
    const short = given(
      chicken(),
      chicken(),
      chicken(),
      { type: 'stopSelling', what: 'component', id: 'chicken' },
      { type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', 1) },
    )
    expect(pictureOf(short, 'pan-chicken')).toMatchObject({
      standing: 'short',
      selling: false,
      lacking: 2,
      onTickets: 3,
      left: 0,
    })
  })

  test('[P6] the most portions offered is the most that the pan can be corrected to', () => {
    const told = given()
    for (const pan of pansOf(running(told).station)) {
      const most = mostPortions(running(told), pan)
      const correct = (portions: number) =>
        when(told, { type: 'correct', pan: pan.id, amount: ofPortions(pan.component, portions) })
      expect('events' in correct(most), pan.id).toBe(true)
      expect('refusal' in correct(most + 1), pan.id).toBe(true)
      expect(most, pan.id).toBeGreaterThanOrEqual(pan.usualPortions)
    }
  })
})

test('[P7] the queue counts builds where they are, and tells since when the oldest waits', () => {
  const told = given(
    chicken(),
    send(choose('bean-and-pepper'), choose('harbor-tuna')),
    chicken(),
    { type: 'start', ...at('1A') },
    { type: 'finish', ...at('1A') },
    { type: 'handOver', ...at('1A') },
    { type: 'start', ...at('2A') },
    { type: 'finish', ...at('2A') },
    { type: 'start', ...at('2B') },
  )
  const third = told.events.findLast(({ type }) => type === 'ticketSent')
  const queue = queueOf(running(told))
  expect(queue).toMatchObject({ waiting: 1, making: 1, made: 1, handedOver: 1 })
  expect(queue.waitingSince).toBe(third?.at)
  expect(queueOf(running(given())).waitingSince).toBeNull()
  expect(running(told).openedAt).toBe(OPENED_AT)
})

test('[P1] a pan that was never loaded has no time of loading', () => {
  expect(pictureOf(openedService(), 'pan-rice').loadedAt).toBeNull()
  const loaded = later(cookedService(), load('pan-rice', 1000))
  expect(pictureOf(loaded, 'pan-rice').loadedAt).toBe(running(loaded).at)
})

describe('a count of a pan', () => {
  test('[P14] corrects it also by less than a portion', () => {
    const each = ofPortions('chicken', 1)
    const holding = (amount: number) =>
      later(given(), { type: 'correct', pan: 'pan-chicken', amount })
    const part = Math.floor(each * 0.4)
    const odd = holding(12 * each + part)
    expect(pictureOf(odd, 'pan-chicken').amount).toBe(12 * each + part)
    const amount = amountOf(running(odd), 'chicken', 12)
    const counted = later(odd, { type: 'correct', pan: 'pan-chicken', amount })
    const picture = pictureOf(counted, 'pan-chicken')
    expect(picture.amount).toBe(12 * each)
  })
})

describe('a reading far from what is counted on', () => {
  const weigh = (portions: number): Given => ({
    type: 'correct',
    pan: 'pan-chicken',
    amount: ofPortions('chicken', portions),
    kind: 'weighing',
  })
  const doubt = (told: Told) => doubtOf(running(told), pictureOf(told, 'pan-chicken'))

  test('[P38] is told at its pan until it is read again', () => {
    const counted = given({
      type: 'correct',
      pan: 'pan-chicken',
      amount: ofPortions('chicken', 22),
    })
    expect(doubt(counted)).toBeNull()
    const once = later(counted, weigh(10))
    expect(doubt(once)).toMatchObject({ kind: 'weighing', read: 10 })
    expect(doubt(once)?.counted).toBeGreaterThan(19)
    expect(doubt(later(once, weigh(10)))).toBeNull()
    expect(pansWords.doubted('weighing', 10, 22)).toBe(
      'Weighed as about 10, far from the 22 we count on: weigh it again; twice the same counts.',
    )
  })
})

describe('what went into a pan, and what stands behind it', () => {
  test('[P21] another scoop is told until the pan is changed', () => {
    const soiled = given({ type: 'soilPan', pan: 'pan-beans', by: 'tuna' })
    expect(pictureOf(soiled, 'pan-beans').soiledBy).toEqual(['tuna'])
    expect(pictureOf(soiled, 'pan-rice').soiledBy).toEqual([])
    const amount = ofPortions('beans', 5)
    const changed = later(soiled, changePan('pan-beans', amount))
    expect(pictureOf(changed, 'pan-beans').soiledBy).toEqual([])
  })

  test('[P21] a back-up pan that holds something is told, however it is kept', () => {
    expect(pictureOf(given(), 'pan-beans').backup).toEqual({ readySince: null })
    expect(pictureOf(given(), 'pan-pita').backup).toEqual({ readySince: null })
    const pita = given({
      type: 'setBackup',
      component: 'pita',
      backup: 'back-up-pita',
      ready: true,
      amount: ofPortions('pita', 24),
    })
    expect(pictureOf(pita, 'pan-pita').backup).toEqual({ readySince: running(pita).at })
    const told = given(backupReady('beans'))
    expect(pictureOf(told, 'pan-beans').backup).toEqual({ readySince: running(told).at })
  })
})
