import { describe, expect, it } from 'vitest'
import type { Consequence } from '#lib/service/consequence.ts'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import { fallDue } from '#lib/spine/due.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { happen } from '#lib/spine/happen.ts'
import { read } from '#tests/support/food.ts'
import { newerLabels } from '#tests/support/newer-labels.ts'
import {
  at,
  backupReady,
  buildIn,
  changePan,
  choose,
  codeOf,
  demoStation,
  type Given,
  given,
  happening,
  needs,
  ofPortions,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const WITHOUT_MILK = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const
/** Slaw is beside the cheddar: for a guest who keeps milk apart it comes from its back-up pan. */
const milkApart = choose(
  'garden-chicken',
  WITHOUT_MILK,
  needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
)
const start = (build: string): Given => ({ type: 'start', ...at(build), read: true })
const finish = (build: string): Given => ({ type: 'finish', ...at(build) })
const madeOf = (build: string): Given[] => [start(build), finish(build)]
const handOver = (build: string): Given => ({ type: 'handOver', ...at(build) })
const answer = (build: string, foodInIt: boolean): Given => ({
  type: 'acknowledge',
  ...at(build),
  foodInIt,
})
const noBackup: Given = { type: 'setBackup', component: 'slaw', ready: false }
/** Nothing but so many portions of slaw behind the line. */
const withBehind = (portions: number, ...commands: Given[]): Told =>
  ready(noBackup, backupReady('slaw', portions), ...commands)
const scooped: Given = { type: 'soilPan', pan: 'pan-slaw', by: 'cheddar' }
const holdOf = (told: Told, build: string) => buildIn(told, build).hold?.reason ?? null

/** What the server notes itself, such as a jump of the clock. */
const noted = (told: Told, event: ServiceEvent): Told => {
  const { state, recorded } = happen(
    told.state,
    [event],
    { position: told.events.length, command: null },
    { now: told.state.at + 1, newestLabels: {} },
  )
  return { state, events: [...told.events, ...recorded] }
}

describe('a back-up pan that ran empty', () => {
  it('[S98] holds who counted on it, though it was emptied by food that was thrown out', () => {
    const making = withBehind(1, send(milkApart), scooped, start('1A'))
    const changed = onward(making, {
      type: 'change',
      ...at('1A'),
      to: {
        ...milkApart,
        parts: { ...milkApart.parts, peppers: { placement: 'no', portions: 0, because: 'asked' } },
      },
      readBack: true,
    })
    const gone = onward(changed, answer('1A', true))
    expect(gone.state.backups.slaw).toBeUndefined()
    expect(holdOf(gone, '1A')).toBe('contact')
    expect(codeOf(when(gone, start('1A')))).toBe('build-held')
  })

  it('[S98] holds the other one when a build that is made again took the last of it', () => {
    const two = withBehind(2, send(milkApart), scooped, start('1A'), finish('1A'), {
      type: 'remake',
      ...at('1A'),
    })
    const again = onward(two, start('1A'), { type: 'cancel', ...at('1A') }, answer('1A', true))
    expect(again.state.backupPans['back-up-slaw']?.amount).toBe(0)
    const other = withBehind(2, send(milkApart), send(milkApart), scooped, start('1A'))
    const waste = onward(
      other,
      finish('1A'),
      { type: 'remake', ...at('1A') },
      start('1A'),
      finish('1A'),
    )
    expect(waste.state.backupPans['back-up-slaw']?.amount).toBe(0)
    expect(holdOf(waste, '2A')).toBe('contact')
  })

  it('[S99] doesn’t hold the very build that took its last portion', () => {
    const made = withBehind(1, send(milkApart), scooped, start('1A'), finish('1A'))
    expect(made.state.backups.slaw).toBeUndefined()
    expect(holdOf(made, '1A')).toBeNull()
    expect(codeOf(when(made, handOver('1A')))).toBeNull()
  })

  it('[S99] takes nothing off the line for it, however it was counted', () => {
    const making = withBehind(2, send(milkApart), start('1A'))
    const half = Math.round(ofPortions('slaw', 1) / 2)
    const { 'back-up-slaw': behind } = running(making).backupPans
    if (!behind) throw new Error('no slaw stands behind the line')
    const backupPans = {
      ...running(making).backupPans,
      'back-up-slaw': { ...behind, amount: half },
    }
    const made = onward({ ...making, state: { ...making.state, backupPans } }, finish('1A'))
    const ofSlaw = buildIn(made, '1A').took.filter(({ pan }) => pan.endsWith('slaw'))
    expect(ofSlaw).toMatchObject([{ pan: 'back-up-slaw', amount: half }])
    expect(made.state.pans['pan-slaw']).toEqual(making.state.pans['pan-slaw'])
    expect(holdOf(made, '1A')).toBeNull()
  })
})

describe('a clock that jumped', () => {
  const jump = { type: 'clockJumped', byMs: 3_600_000 } as const

  it('[S98] holds who counts on a back-up pan that it leaves in doubt, until it is confirmed', () => {
    const sent = ready(send(milkApart), scooped)
    const jumped = noted(sent, jump)
    expect(jumped.state.backups).toEqual({})
    expect(holdOf(jumped, '1A')).toBe('contact')
    const confirmed = onward(jumped, { type: 'confirmClock' })
    expect(holdOf(confirmed, '1A')).toBeNull()
    expect(confirmed.events.at(-1)).toMatchObject({ type: 'holdLifted', ticket: 1, letter: 'A' })
    expect(codeOf(when(confirmed, start('1A')))).toBeNull()
  })

  it('[S98] leaves what is made as it was taken', () => {
    const made = noted(ready(send(milkApart), scooped, start('1A'), finish('1A')), jump)
    expect(holdOf(made, '1A')).toBeNull()
  })
})

describe('a hold whose cause is over', () => {
  it('[S100] is lifted before food was made, and by an event of its own', () => {
    const held = ready(send(milkApart), noBackup)
    expect(holdOf(held, '1A')).toBe('contact')
    const back = onward(held, backupReady('slaw'))
    expect(back.events.at(-1)?.type).toBe('holdLifted')
    expect(buildIn(back, '1A')).toMatchObject({ state: 'waiting', hold: null, stop: null })
  })

  it('[S100] stays for what is being made until somebody says whether food was in it', () => {
    const making = ready(send(milkApart), start('1A'), noBackup, backupReady('slaw'))
    expect(buildIn(making, '1A')).toMatchObject({ state: 'making', hold: { reason: 'contact' } })
    const answered = onward(making, answer('1A', true))
    expect(buildIn(answered, '1A')).toMatchObject({ state: 'waiting', hold: null, remakes: 1 })
  })

  it('[S100] stays for a need that was told, and where the labels are older than the newest', () => {
    const told: Given = {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [{ code: 'kelp', handling: 'leave-out', reason: null }],
    }
    const needed = ready(send(milkApart), {
      ...told,
      needs: [{ code: 'soy', handling: 'leave-out', reason: null }],
    })
    expect(holdOf(onward(needed, noBackup, backupReady('slaw')), '1A')).toBe('need')
    const held = ready(send(milkApart), noBackup)
    const stale = when(held, backupReady('slaw'), { newestLabels: newerLabels(held.state) })
    expect('events' in stale && stale.events.map(({ type }) => type)).toEqual(['backupSet'])
  })
})

describe('a foreign scoop told late', () => {
  const order = choose(
    'bean-and-pepper',
    WITHOUT_MILK,
    needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
  )
  const soil: Given = { type: 'soilPan', pan: 'pan-peppers', by: 'cheddar' }

  it('[S101] finds who was handed food of that pan since it was last surely clean', () => {
    const over = ready(send(order), start('1A'), finish('1A'), handOver('1A'))
    expect(Object.keys(onward(over, soil).state.toFind)).toEqual(['1A'])
    const changed = onward(over, changePan('pan-peppers', ofPortions('peppers', 9)), soil)
    expect(changed.state.toFind).toEqual({})
  })

  it('[S101] finds nobody who doesn’t keep it apart, and each once', () => {
    const plain = ready(send(choose('bean-and-pepper')), start('1A'), finish('1A'), handOver('1A'))
    expect(onward(plain, soil).state.toFind).toEqual({})
    const over = ready(send(order), start('1A'), finish('1A'), handOver('1A'), soil)
    const answered = onward(over, answer('1A', false))
    expect(answered.state.toFind).toEqual({})
    expect(
      onward(answered, { type: 'stopSelling', what: 'item', id: 'harbor-tuna' }).state.toFind,
    ).toEqual({})
  })
})

describe('an acceptance', () => {
  const order = choose(
    'garden-chicken',
    { slaw: 'no', cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
    { base: 'rice', ...needs({ code: 'sesame', handling: 'keep-apart', reason: 'allergy' }) },
  )
  const accepted = ready(
    { type: 'acceptCaution', build: order, reason: 'guest-accepts' },
    send({ ...order, caution: 1 }),
  )
  const pita = demoStation.ingredients.find((one) => one.id === 'pita')
  const saying = (sesame: 'may-contain' | 'contains'): Given => ({
    type: 'changeLabel',
    ingredient: 'pita',
    product: 'same',
    label: {
      declarations: { ...pita?.declarations, sesame },
      traits: pita?.traits ?? null,
      claims: pita?.claims ?? {},
      readOn: '2026-11-25',
      readBy: null,
    },
  })

  it('[N26] is void, and the build is held, once what it touches is declared worse', () => {
    const [caution] = Object.values(accepted.state.cautions)
    expect(caution?.findings.flatMap(({ reached }) => reached)).toContain('pita')
    expect(caution?.findings.map(({ states }) => states?.pita)).toContain('may-contain')
    expect(holdOf(onward(accepted, saying('may-contain')), '1A')).toBeNull()
    expect(holdOf(onward(accepted, saying('contains')), '1A')).toBe('label')
  })
})

describe('a change that waits for its stop to be answered', () => {
  const low: Given = {
    type: 'readTemperature',
    what: 'pan',
    id: 'pan-chicken',
    ...read(120),
  }
  const without = (code: string) => needs({ code, handling: 'leave-out', reason: null })
  const toBeans: Given = {
    type: 'change',
    ...at('1A'),
    to: choose('bean-and-pepper', WITHOUT_MILK, without('milk')),
    readBack: true,
  }

  it('[S154] is kept, with its needs, where the made food’s time passes meanwhile', () => {
    const made = given(send(choose('garden-chicken')), ...madeOf('1A'))
    const changed = onward(made, low, toBeans)
    expect(buildIn(changed, '1A')).toMatchObject({ state: 'made', hold: { reason: 'off-sale' } })
    const { state } = fallDue(changed.state, changed.state.at + 5 * 3_600_000, 0, {})
    const passed: Told = { ...changed, state }
    expect(state.toThrowOut['build/1A']).toBeDefined()
    expect(buildIn(passed, '1A').stop?.to?.choice.item).toBe('bean-and-pepper')
    const now = { now: state.at }
    const answered = when(passed, answer('1A', true), now)
    const after = happening(passed, 'events' in answered ? answered.events : [])
    expect(buildIn(after, '1A')).toMatchObject({
      state: 'waiting',
      choice: { item: 'bean-and-pepper', needs: [{ code: 'milk' }] },
    })
  })

  it('[S155] and is dropped by a hold is for its guest to hear of: nothing lifts that by itself', () => {
    const peanut = choose('bean-and-pepper', {}, without('peanut'))
    const label = demoStation.ingredients.find((one) => one.id === 'herb-rub')
    const read: Given = {
      type: 'changeLabel',
      ingredient: 'herb-rub',
      product: 'same',
      label: {
        declarations: { ...label?.declarations, peanut: 'contains' },
        traits: label?.traits ?? null,
        claims: label?.claims ?? {},
        readOn: '2026-11-25',
        readBy: null,
      },
    }
    const stopped = given(send(peanut), start('1A'), {
      type: 'change',
      ...at('1A'),
      to: choose('garden-chicken', {}, without('peanut')),
      readBack: true,
    })
    const held = onward(stopped, read)
    expect(buildIn(held, '1A')).toMatchObject({ hold: { reason: 'label', dropsChange: true } })
    const waits = onward(held, answer('1A', false))
    expect(buildIn(waits, '1A')).toMatchObject({ state: 'waiting', hold: { reason: 'label' } })
  })
})

describe('defence in depth', () => {
  /** As if a consequence had been forgotten: nobody knows what touches what, and nothing is held. */
  const unheld = (told: Told): Told => ({
    ...told,
    state: { ...told.state, station: { ...demoStation, contacts: null } },
  })

  it('[S102] refuses to start, finish and hand over what doesn’t fit, whatever the state says', () => {
    const code = { code: 'fits-no-more', build: '1A' }
    const sent = ready(send(milkApart))
    expect(refusalOf(when(unheld(sent), start('1A')))).toEqual(code)
    const making = onward(sent, start('1A'))
    expect(refusalOf(when(unheld(making), finish('1A')))).toEqual(code)
    const made = onward(making, finish('1A'))
    expect(refusalOf(when(unheld(made), handOver('1A')))).toEqual(code)
    const plain = given(send(choose('garden-chicken')))
    expect(codeOf(when(unheld(plain), start('1A')))).toBeNull()
  })
})

describe('consequences', () => {
  const soil: Given = { type: 'soilPan', pan: 'pan-peppers', by: 'cheddar' }

  it('[S103] have nothing more to add to what they left', () => {
    const sent = ready(send(milkApart), send(milkApart), start('1A'), soil, noBackup)
    const before = running(sent)
    for (const { name, follow } of CONSEQUENCES)
      expect([
        name,
        follow({
          before,
          after: before,
          events: [],
          known: { now: before.at, newestLabels: {} },
        }),
      ]).toEqual([name, []])
  })

  it('[S103] are told apart by name, in their order, and each is asked by slices of the state', () => {
    expect(CONSEQUENCES.map(({ name }) => name)).toEqual([
      ...['labelled-backups', 'never-good-pans', 'stops-of-gone', 'made-of-gone'],
      ...['off-sale-making', 'off-sale-made', 'shelf-made', 'shelf-gone'],
      ...['unsure-holds', 'remade-unread', 'unmade-holds', 'made-holds', 'guests-to-find'],
      ...['lifted-holds', 'handed-over-lists', 'shelf-lists'],
    ])
    for (const { name, reads } of CONSEQUENCES)
      expect([name, reads.length > 0]).toEqual([name, true])
  })

  it('[S104] lie in the log beside what led to them, and fold to the same state', () => {
    const sent = ready(send(milkApart))
    const { state, recorded } = happen(
      sent.state,
      [{ type: 'backupSet', component: 'slaw', ready: false, backup: 'back-up-slaw' }],
      { position: 40, command: 'c-9' },
      { now: sent.state.at + 5, newestLabels: {} },
    )
    const stamp = (one: Recorded) => [one.type, one.position, one.at, one.command]
    const now = sent.state.at + 5
    expect(recorded.map(stamp)).toEqual([
      ['backupSet', 41, now, 'c-9'],
      ['buildHeld', 42, now, 'c-9'],
    ])
    expect(stateHash(recorded.reduce(evolve, sent.state))).toBe(stateHash(state))
  })

  it('[S104] that never end are a fault, and nothing of it is left', () => {
    const sent = running(given(send(choose('garden-chicken'))))
    const endless: Consequence = {
      name: 'endless',
      reads: ['tickets'],
      follow: () => [{ type: 'ticketPaid', ticket: 1, paid: true }],
    }
    expect(() =>
      happen(
        sent,
        [{ type: 'ticketPaid', ticket: 1, paid: true }],
        { position: 1, command: null },
        { now: sent.at, newestLabels: {}, follows: [endless] },
      ),
    ).toThrow('no end of ticketPaid')
  })
})
