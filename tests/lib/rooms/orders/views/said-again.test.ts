import { describe, expect, test } from 'vitest'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf, nextStep } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { markedSince } from '#lib/rooms/orders/views/reading.ts'
import { readBackText, sayReadBack } from '#lib/rooms/orders/words/read-back-en.ts'
import type { RunningState } from '#lib/service/state.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'
import {
  codeOf,
  demoStation,
  type Given,
  ofPortions,
  onward,
  ready,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'

const READY = ready()
const STATE = running(READY)

const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)

const need = (code: string): Act => ({ act: 'need', code })
const less = (code: string): Act => ({ act: 'handling', code })
const SAID: Act = { act: 'said-needs' }
const GARDEN: Act = { act: 'choose', item: 'garden-chicken' }
const TUNA: Act = { act: 'choose', item: 'harbor-tuna' }
const READ: Act = { act: 'read-again' }
const pan = (component: string): Act => ({ act: 'tap', component })

/** Nothing in it says anything of molluscs but free. */
const leavingOut = (item: Act = GARDEN): Ordering =>
  taps(IDLE, STATE, need('molluscs'), less('molluscs'), SAID, item)
const apart = taps(
  IDLE,
  STATE,
  need('milk'),
  SAID,
  GARDEN,
  { act: 'turn', index: 0 },
  {
    act: 'agree',
  },
)
const plain = taps(IDLE, STATE, { act: 'asked-none' }, GARDEN)

const label = (molluscs: 'may-contain' | 'free'): Given => ({
  type: 'changeLabel',
  ingredient: 'chicken-breast',
  label: {
    declarations: {
      ...demoStation.ingredients.find((one) => one.id === 'chicken-breast')?.declarations,
      molluscs,
    },
    traits: ['poultry'],
    claims: {},
    readOn: '2026-11-25',
    readBy: 'JB',
  },
  product: 'same',
})
const WARNED = onward(READY, label('may-contain'))

const isAgain = (ordering: Ordering, state: RunningState, index = 0): void => {
  expect(nextStep(ordering, state)).toEqual({ step: 'say-again', index })
  expect(commandOf(ordering, state)).toBeNull()
}

const goes = (ordering: Ordering, told: Told): void => {
  const command = commandOf(ordering, running(told))
  expect(command).not.toBeNull()
  expect(command && codeOf(when(told, command, { by: 'counter' }))).toBeNull()
}

const marks = (ordering: Ordering, state: RunningState): readonly string[] => {
  const reading = settleAll(ordering, state)[ordering.current]?.reading
  const said = ordering.drafts[ordering.current]?.said
  return markedSince(said?.statements ?? null, reading?.statements ?? [])
    .filter(({ mark }) => mark !== 'same')
    .map(
      ({ mark, statement }) =>
        `${mark}: ${readBackText(sayReadBack([statement], nameIn(demoStation), (cents) => `$${cents / 100}`, isPluralIn(demoStation)))}`,
    )
}

/** The price of a station is its document's. */
const dearer: RunningState = {
  ...STATE,
  station: {
    ...demoStation,
    items: demoStation.items.map((one) => ({ ...one, priceCents: one.priceCents + 50 })),
  },
}

describe('what was read back', () => {
  test('[C70] a label that changes what is said of a need left out asks to read it again', () => {
    const order = leavingOut()
    goes(order, READY)
    isAgain(order, running(WARNED))
    const read = taps(order, running(WARNED), READ)
    expect(nextStep(read, running(WARNED))).toEqual({ step: 'send' })
    goes(read, WARNED)
    const back = onward(WARNED, label('free'))
    isAgain(read, running(back))
  })

  test('[C70] so does a label that is no longer known, another scoop, and a price', () => {
    const notSame = onward(READY, { type: 'notSameProduct', ingredient: 'chicken-breast' })
    const stuck = nextStep(leavingOut(), running(notSame))
    expect(stuck.step).toBe('say-again')
    const milkOut = taps(IDLE, STATE, need('milk'), less('milk'), SAID, GARDEN, pan('slaw'))
    goes(milkOut, READY)
    const soiled = onward(READY, { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })
    isAgain(milkOut, running(soiled))
    isAgain(leavingOut(), dearer)
    isAgain(plain, dearer)
  })

  test('[C70] so does a need that is added, and one that is kept apart instead of left out', () => {
    const order = leavingOut()
    const more = taps(order, STATE, { act: 'ask-again' }, need('milk'), less('milk'), SAID)
    isAgain(more, STATE)
    goes(taps(more, STATE, READ), READY)
    const strict = taps(order, STATE, { act: 'ask-again' }, less('molluscs'), SAID)
    isAgain(strict, STATE)
    expect(nextStep(taps(strict, STATE, READ), STATE)).toMatchObject({ step: 'turn' })
    const none = taps(plain, STATE, { act: 'ask-again' }, need('molluscs'), less('molluscs'), SAID)
    isAgain(none, STATE)
    const same = taps(order, STATE, { act: 'ask-again' }, SAID)
    expect(nextStep(same, STATE)).toEqual({ step: 'send' })
  })

  test('[C70] so does a back-up pan that no longer stands ready', () => {
    goes(apart, READY)
    const backups = ['rice', 'chicken', 'beans', 'peppers', 'slaw', 'cheddar']
    const gone = onward(
      READY,
      ...backups.map((component): Given => ({ type: 'setBackup', component, ready: false })),
    )
    const sesame = taps(IDLE, STATE, need('sesame'), SAID, GARDEN)
    isAgain(sesame, running(gone))
  })

  test('[C70] why a part is left out is said again too, though the food stays the same', () => {
    const out = (code: Given) => running(onward(READY, code))
    const cheddar: Given = { type: 'correct', pan: 'pan-cheddar', amount: 0 }
    const gone = out(cheddar)
    const order = taps(plain, gone, READ)
    expect(nextStep(order, gone)).toEqual({ step: 'send' })
    const stopped = running(
      onward(
        READY,
        { type: 'correct', pan: 'pan-cheddar', amount: ofPortions('cheddar', 5) },
        { type: 'stopSelling', what: 'component', id: 'cheddar' },
      ),
    )
    isAgain(order, stopped)
  })

  test('[C71] nothing but reading it again takes a change as read: no other tap, no way back', () => {
    const state = running(WARNED)
    const asides: Act[][] = [
      [pan('peppers')],
      [{ act: 'more', component: 'peppers' }],
      [{ act: 'turn', index: 0 }, { act: 'back' }],
      [{ act: 'in-charge' }, { act: 'back' }],
      [{ act: 'go-to', index: 0 }],
      [{ act: 'ask-again' }, SAID],
      [{ act: 'tickets' }, { act: 'back' }],
      [{ act: 'paid' }],
      [{ act: 'name', name: 'Kim' }],
      [{ act: 'another' }, { act: 'drop' }],
    ]
    for (const aside of asides) {
      const after = taps(leavingOut(), state, ...aside)
      expect(nextStep(after, state).step, JSON.stringify(aside)).toBe('say-again')
      expect(commandOf(after, state), JSON.stringify(aside)).toBeNull()
    }
  })

  test('[C71] the guest’s agreement to what stands there now doesn’t stand for reading it', () => {
    const state = running(onward(READY, { type: 'correct', pan: 'pan-peppers', amount: 0 }))
    const agreed = taps(apart, state, { act: 'turn', index: 0 }, { act: 'agree' })
    isAgain(agreed, state)
    expect(nextStep(taps(agreed, state, READ), state)).toEqual({ step: 'send' })
  })

  test('[C71] another build of the ticket is gone to and read, each by itself', () => {
    const two = taps(leavingOut(), STATE, { act: 'another' }, { act: 'asked-none' }, TUNA)
    goes(two, READY)
    const state = running(WARNED)
    isAgain(two, state)
    const there = taps(two, state, { act: 'go-to', index: 0 })
    isAgain(there, state)
    goes(taps(there, state, READ), WARNED)
  })

  test('[C71] an order that came back is read again where something changed meanwhile', () => {
    const note = { kind: 'refused', refusal: { code: 'said-changed', letter: 'A' } } as const
    const parked = taps(leavingOut(), STATE, { act: 'send', id: 'c-1' }, { act: 'next-guest' })
    const back = taps(parked, running(WARNED), { act: 'refused', id: 'c-1', note })
    const opened = taps(back, running(WARNED), { act: 'open-returned', id: 'c-1' })
    isAgain(opened, running(WARNED))
    goes(taps(opened, running(WARNED), READ), WARNED)
  })

  test('[C72] what changed is marked: what is new, and what was said and holds no more', () => {
    expect(marks(leavingOut(), STATE)).toEqual([])
    expect(marks(leavingOut(), running(WARNED))).toEqual([
      'new: Left out, not kept apart: a little clams, oysters, squid can get in.',
    ])
    const gone = running(onward(READY, { type: 'correct', pan: 'pan-cheddar', amount: 0 }))
    expect(marks(plain, gone)).toEqual([
      'gone: One garden chicken with pita, as it comes.',
      'new: One garden chicken with pita.',
      'new: We’re out of cheddar today.',
    ])
    expect(marks(plain, dearer)).toEqual(['gone: That’s $6.5.', 'new: That’s $7.'])
    expect(marks(taps(plain, gone, READ), gone)).toEqual([])
  })

  test('[C73] what was said of each need goes with the order, and the server compares it', () => {
    const order = leavingOut()
    const command = commandOf(order, STATE)
    if (command?.type !== 'send') throw new Error('nothing can be sent')
    expect(command.said).toEqual([[]])
    expect(codeOf(when(READY, command))).toBeNull()
    expect(codeOf(when(WARNED, command))).toBe('said-changed')
    const read = commandOf(taps(order, running(WARNED), READ), running(WARNED))
    expect(read).toMatchObject({ said: [['note molluscs']] })
  })
})
