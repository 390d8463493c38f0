import { describe, expect, it } from 'vitest'
import type { LarderCommand } from '#lib/larder/command.ts'
import { decideLarder, NO_LABELS } from '#lib/larder/decide.ts'
import { MOST_DELIVERIES } from '#lib/larder/deliveries.ts'
import type { ReceivingKnown, SaidDelivery } from '#lib/larder/delivery.ts'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { EMPTY_LARDER, type LarderState } from '#lib/larder/lot.ts'
import { deliveriesWithLot, unreadFrom } from '#lib/larder/recall.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { larderAfter } from '#tests/support/larder.ts'

const NOW = Date.parse('2026-11-29T15:00:00Z')
const known: ReceivingKnown = {
  food: {
    ...{ name: 'Whole milk', limits: MODEL_CODE, timeZone: 'America/Chicago', scale: 'F' },
    cold: 'itself',
  },
  labelVersion: 7,
}
const said = (over: Partial<SaidDelivery> = {}): SaidDelivery => ({
  ingredient: 'milk',
  same: 'same',
  comes: 'milk',
  reading: { tenths: 390, scale: 'F', probe: 'blue' },
  useBy: '2026-12-05',
  lot: 'M-114',
  packs: 2,
  ...over,
})
const receive = (over: Partial<SaidDelivery> = {}, initials = 'KT'): LarderCommand => ({
  type: 'receiveDelivery',
  delivery: said(over),
  initials,
})
const decided = (command: LarderCommand, state: LarderState = EMPTY_LARDER, about = known) =>
  decideLarder(state, command, NOW, NO_LABELS, about)
const refusal = (command: LarderCommand, state?: LarderState, about?: ReceivingKnown) => {
  const decision = decided(command, state, about)
  return 'refusal' in decision ? decision.refusal : null
}

describe('a delivery', () => {
  it('[DV6] of the same product is recorded, and no label changes', () => {
    expect(decided(receive())).toEqual({
      events: [
        {
          type: 'deliveryReceived',
          food: {
            ingredient: 'milk',
            name: 'Whole milk',
            same: 'same',
            comes: 'milk',
            read: { temperature: { tenths: 390, scale: 'F' }, probe: 'blue' },
            solid: null,
            useBy: '2026-12-05',
            lot: 'M-114',
            packs: 2,
          },
        },
      ],
    })
  })

  it.each(['other', 'not-sure'] as const)(
    '[DV6] of %s makes the label unread as of its version',
    (same) => {
      expect(decided(receive({ same }))).toMatchObject({ events: [{ labelVersion: 7 }] })
    },
  )

  it.each([
    ['50 °F milk', { reading: { tenths: 500, scale: 'F' as const, probe: 'blue' } }, 'too-warm'],
    ['a pack of yesterday', { useBy: '2026-11-28' }, 'past-date'],
    ['thawed food', { comes: 'frozen' as const, reading: undefined, solid: false }, 'thawed'],
    [
      'lukewarm soup',
      { comes: 'hot' as const, reading: { tenths: 1340, scale: 'F' as const, probe: 'blue' } },
      'not-hot',
    ],
  ])('[DV7] %s isn’t received, and goes back with its reason and reading', (_, over, code) => {
    expect(refusal(receive(over))).toMatchObject({
      code: 'delivery-turned-away',
      because: { code },
    })
    const back = decided({
      type: 'sendBackDelivery',
      delivery: said({ ...over, same: 'other' }),
      why: 'too-warm',
      initials: 'KT',
    })
    expect(back).toMatchObject({ events: [{ type: 'deliverySentBack', why: 'too-warm' }] })
    expect(JSON.stringify(back)).not.toContain('labelVersion')
  })

  it('[DV3] the day is the station’s: past midnight there, not at Greenwich', () => {
    // 03:00 on the 30th at Greenwich is 21:00 on the 29th in Chicago.
    const late = Date.parse('2026-11-30T03:00:00Z')
    expect(
      decideLarder(EMPTY_LARDER, receive({ useBy: '2026-11-29' }), late, NO_LABELS, known),
    ).toHaveProperty('events')
    const midnight = Date.parse('2026-11-30T06:00:00Z')
    expect(
      decideLarder(EMPTY_LARDER, receive({ useBy: '2026-11-29' }), midnight, NO_LABELS, known),
    ).toMatchObject({ refusal: { because: { code: 'past-date' } } })
  })

  it.each([
    ['without initials', receive({}, ' '), { code: 'needs-initials' }],
    ['unread', receive({ reading: undefined }), { code: 'delivery-not-read', lack: 'temperature' }],
    [
      'frozen, and nobody felt it',
      receive({ comes: 'frozen', reading: undefined }),
      { code: 'delivery-not-read', lack: 'solid' },
    ],
    [
      'read with no probe',
      receive({ reading: { tenths: 390, scale: 'F', probe: ' ' } }),
      { code: 'lot-reading-lacks', lack: 'no-probe' },
    ],
    ['compared by nobody', receive({ same: undefined }), { code: 'delivery-not-compared' }],
  ])('[DV4] %s isn’t received', (_, command, code) => {
    expect(refusal(command)).toEqual(code)
  })

  it('[DV20] food that a line holds hot or cold isn’t received as dry unless its label was looked at', () => {
    const dry = { comes: 'dry', reading: undefined } as const
    const inIt = { ...known, food: known.food && { ...known.food, cold: 'in-it' as const } }
    const unasked = { code: 'delivery-dry-unasked' }
    expect(refusal(receive(dry))).toEqual(unasked)
    expect(refusal(receive({ ...dry, needsNoCold: true }))).toBeNull()
    expect(refusal(receive(dry), EMPTY_LARDER, inIt)).toEqual(unasked)
    const notHeld = { ...known, food: known.food && { ...known.food, cold: null } }
    expect(refusal(receive(dry), EMPTY_LARDER, notHeld)).toBeNull()

    const first = decided(receive({ ...dry, needsNoCold: true }))
    if (!('events' in first)) throw new Error('not received')
    const came = larderAfter(first.events.map((event) => [NOW - 86_400_000, event] as const))
    // It was asked of this very product; of another one, and of what is itself held so, it is asked anew.
    expect(refusal(receive(dry), came, inIt)).toBeNull()
    expect(refusal(receive({ ...dry, same: 'not-sure' }), came, inIt)).toEqual(unasked)
    expect(refusal(receive(dry), came)).toEqual(unasked)
  })

  it('[DV8] a lot of 41 letters, a tag without lot, a date of another century, an unknown food', () => {
    expect(refusal(receive({ lot: 'x'.repeat(41) }))).toEqual({
      code: 'delivery-lot-too-long',
      most: 40,
    })
    expect(refusal(receive({ lot: 'x'.repeat(40) }))).toBeNull()
    expect(refusal(receive({ comes: 'shellfish', lot: ' ' }))).toEqual({ code: 'delivery-no-lot' })
    expect(refusal(receive({ useBy: '2036-11-29' }))).toBeNull()
    expect(refusal(receive({ useBy: '2062-12-05' }))).toMatchObject({ code: 'delivery-date-far' })
    expect(refusal(receive(), EMPTY_LARDER, { ...known, food: null })).toEqual({
      code: 'delivery-no-such-food',
    })
  })

  it('[DV8] while the clock is in doubt nothing is received, and what is bad goes back', () => {
    const unsure = larderAfter([[NOW, { type: 'larderClockJumped', byMs: 9_000_000 }]])
    expect(refusal(receive(), unsure)).toEqual({ code: 'larder-clock-unsure' })
    const back: LarderCommand = {
      type: 'sendBackDelivery',
      delivery: said({ useBy: null, lot: null }),
      why: 'damaged',
      initials: 'KT',
    }
    expect(refusal(back, unsure)).toBeNull()
  })

  it('[DV11] a figure that can’t be is refused, one that is unusual is taken once it is confirmed', () => {
    const at = (tenths: number, scaleConfirmed?: boolean) =>
      receive({ reading: { tenths, scale: 'F', probe: 'blue', scaleConfirmed } })
    expect(refusal(at(90_000))).toMatchObject({
      code: 'lot-reading-asked',
      question: { code: 'cannot-be' },
    })
    expect(refusal(at(40))).toMatchObject({ question: { code: 'did-you-mean' } })
    expect(refusal(at(40, true))).toBeNull()
  })
})

const entry = (position: number, lot: string | null, over: object = {}): LarderRecorded => ({
  type: 'deliveryReceived',
  food: {
    ingredient: 'milk',
    name: 'Whole milk',
    same: 'same',
    comes: 'milk',
    read: null,
    solid: null,
    useBy: null,
    lot,
    packs: null,
  },
  position,
  at: position * 1_000,
  command: `c${position}`,
  ...over,
})

describe('what came before', () => {
  it('[DV9] the newest 24 of an ingredient are at hand, the newest last', () => {
    const state = larderAfter(
      Array.from({ length: 30 }, (_, index) => [index, entry(index, `M-${index}`)] as const),
    )
    const lots = state.deliveries.milk?.map(({ lot }) => lot)
    expect(lots?.length).toBe(MOST_DELIVERIES)
    expect([lots?.[0], lots?.at(-1)]).toEqual(['M-6', 'M-29'])
  })

  it('[DV9] a lot is found however it is written, of every food, as far back as the log goes', () => {
    const entries = [
      entry(1, 'AB 12-7'),
      entry(2, 'AB128'),
      entry(3, 'ab12/7', { type: 'deliverySentBack', why: 'damaged' }),
      entry(4, null),
    ]
    const found = deliveriesWithLot(entries, ' ab-127')
    expect(found.map(({ at, sentBack }) => [at, sentBack])).toEqual([
      [3_000, 'damaged'],
      [1_000, null],
    ])
    // Letters tell lots apart too.
    expect(deliveriesWithLot(entries, 'XY-127')).toEqual([])
    expect(deliveriesWithLot(entries, ' ')).toEqual([])
    expect(deliveriesWithLot([entry(1, '???')], '???')).toHaveLength(1)
    expect(deliveriesWithLot([entry(1, '???')], '!!!')).toHaveLength(0)
  })

  it('[DV6] what deliveries made unread is worked out of the log alone', () => {
    const entries = [entry(1, 'A'), entry(2, 'B', { labelVersion: 4 })]
    expect(unreadFrom(entries)).toEqual([{ ingredient: 'milk', version: 4, at: 2_000 }])
  })
})
