import { describe, expect, it } from 'vitest'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import { labelOf } from '#lib/station/label.ts'
import { newerLabels } from '#tests/support/newer-labels.ts'
import {
  at,
  buildIn,
  change,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  needs,
  onward,
  ready,
  refusalOf,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const milk = (handling: 'keep-apart' | 'leave-out') =>
  needs({ code: 'milk', handling, reason: 'allergy' })
const plain = (over: Partial<BuildChoice> = {}): BuildChoice =>
  choose(
    'garden-chicken',
    { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
    {
      base: 'rice',
      ...over,
    },
  )
const suits = plain(milk('keep-apart'))
const weaker = plain(milk('leave-out'))
const none = plain()
const of1A = (...types: ('start' | 'finish' | 'handOver')[]): Given[] =>
  types.map((type) => ({ type, ...at('1A'), ...(type === 'start' ? { read: true } : {}) }))
const tell = (code: string, handling: 'keep-apart' | 'leave-out' = 'keep-apart'): Given => ({
  type: 'tellNeed',
  ...at('1A'),
  asked: 'needs',
  needs: [{ code, handling, reason: null }],
})
const notSure: Given = { type: 'tellNeed', ...at('1A'), asked: 'not-sure', needs: [] }
const answer = (foodInIt: boolean): Given => ({ type: 'acknowledge', ...at('1A'), foodInIt })
const remake: Given = { type: 'remake', ...at('1A') }
const dropped = { code: 'need-dropped', build: '1A', need: 'milk' }

describe('a change', () => {
  const sent = ready(send(suits))

  it('[S83] that drops or weakens a need is the person in charge’s', () => {
    for (const by of ['counter', 'lead'] as const) {
      expect(refusalOf(when(sent, change('1A', none), { by }))).toEqual(dropped)
      expect(refusalOf(when(sent, change('1A', weaker), { by }))).toEqual(dropped)
      const making = onward(sent, ...of1A('start'))
      expect(refusalOf(when(making, change('1A', none), { by }))).toEqual(dropped)
      const two = {
        ...suits,
        parts: {
          ...suits.parts,
          slaw: { placement: 'no', portions: 0, because: 'asked' } as const,
        },
      }
      expect(codeOf(when(sent, change('1A', two), { by }))).toBeNull()
    }
    for (const to of [none, weaker])
      expect(codeOf(when(sent, change('1A', to), { by: 'in-charge' }))).toBeNull()
  })

  it('[S83] that makes a need stricter is anybody’s', () => {
    const told = ready(send(weaker))
    expect(codeOf(when(told, change('1A', suits), { by: 'counter' }))).toBeNull()
  })

  it('[S83] of what was told late keeps it too, or is the person in charge’s', () => {
    const held = onward(ready(send(none)), tell('milk'))
    expect(refusalOf(when(held, change('1A', weaker), { by: 'counter' }))).toEqual(dropped)
    expect(codeOf(when(held, change('1A', suits), { by: 'counter' }))).toBeNull()
    expect(codeOf(when(held, change('1A', weaker), { by: 'in-charge' }))).toBeNull()
  })

  it('[S83] for a guest who isn’t sure is the person in charge’s, even after they were told', () => {
    const slaw = plain({ base: 'pita' })
    for (const after of [[notSure], [notSure, tell('milk')]]) {
      const held = onward(ready(send(none)), ...after)
      for (const to of [slaw, suits])
        expect(codeOf(when(held, change('1A', to), { by: 'counter' }))).toBe('not-sure')
      expect(codeOf(when(held, change('1A', suits), { by: 'in-charge' }))).toBeNull()
    }
    const eaten = onward(ready(send(none)), ...of1A('start', 'finish', 'handOver'), notSure)
    const again = onward(eaten, answer(false), remake)
    expect(buildIn(again, '1A')).toMatchObject({ state: 'waiting', hold: { reason: 'need' } })
    const answered = onward(again, answer(false))
    expect(codeOf(when(answered, change('1A', slaw), { by: 'counter' }))).toBe('not-sure')
  })
})

describe('a need told late', () => {
  it('[S84] is known only where what the build goes on as has it, and stays through the answer', () => {
    const making = onward(ready(send(suits)), ...of1A('start'))
    expect(codeOf(when(making, tell('milk')))).toBe('already-so')
    const taken = onward(making, change('1A', none))
    const told = onward(taken, tell('milk'))
    const after = onward(told, answer(false))
    expect(buildIn(after, '1A').hold?.told?.needs).toMatchObject([
      { code: 'milk', handling: 'keep-apart' },
    ])
    expect(codeOf(when(after, { type: 'start', ...at('1A'), read: true }))).toBe('build-held')
  })

  it('[S84] is known where a change that is still to be answered has it', () => {
    const pending = onward(ready(send(none)), ...of1A('start'), change('1A', suits))
    expect(codeOf(when(pending, tell('milk')))).toBe('already-so')
  })

  it('[S74] leaves the needs of a change that it stops told as well', () => {
    const pending = onward(ready(send(none)), ...of1A('start'), change('1A', suits))
    const told = onward(pending, tell('fish', 'leave-out'), answer(false))
    expect(buildIn(told, '1A').hold?.told?.needs.map((one) => one.code)).toEqual(['milk', 'fish'])
    expect(refusalOf(when(told, change('1A', none), { by: 'counter' }))).toMatchObject({
      code: 'need-dropped',
    })
    const labelled = onward(pending, { type: 'notSameProduct', ingredient: 'chicken-breast' })
    expect(buildIn(labelled, '1A').hold).toMatchObject({
      reason: 'label',
      told: { asked: 'needs', needs: [{ code: 'milk' }] },
    })
  })
})

describe('an acceptance', () => {
  it('[S71] that no build has used is gone when the person in charge signs off', () => {
    const order = choose(
      'harbor-tuna',
      { slaw: 'no' },
      needs({ code: 'soy', handling: 'leave-out', reason: null }),
    )
    const accept: Given = { type: 'acceptCaution', build: order, reason: 'guest-accepts' }
    const told = ready(accept, send({ ...order, caution: 1 }), accept)
    expect(Object.keys(told.state.cautions)).toEqual(['c1', 'c2'])
    const off = onward(told, { type: 'signOff' }, { type: 'signOn' })
    expect(Object.keys(off.state.cautions)).toEqual(['c1'])
    expect(codeOf(when(off, send({ ...order, caution: 2 })))).toBe('unknown caution')
    expect(onward(off, accept).state.nextCaution).toBe(4)
  })
})

describe('food made again', () => {
  const made = ready(send(suits), ...of1A('start', 'finish'))
  const noBackup: Given = { type: 'setBackup', component: 'slaw', ready: false }
  const reasonAfter = (told: Told, command: Given = remake, newestLabels?: LabelVersions) => {
    const events = eventsOf(when(told, command, newestLabels === undefined ? {} : { newestLabels }))
    const last = events.at(-1)
    return last?.type === 'buildHeld' ? last.reason : (last?.type ?? null)
  }

  it('[S88] is held for contact where no label changed and no need was told', () => {
    const contact = onward(made, noBackup)
    expect(reasonAfter(contact)).toBe('contact')
    expect(reasonAfter(contact, { type: 'takeBack', ...at('1A'), made: true })).toBe('contact')
    expect(reasonAfter(made)).toBe('buildRemade')
  })

  it('[S88] is held for what it doesn’t fit by, whatever else changed in this service', () => {
    const lemon = demoStation.ingredients.find((one) => one.id === 'lemon-juice')
    if (!lemon) throw new Error('the station has no lemon juice')
    const { id } = lemon
    const label = labelOf(lemon)
    const told = onward(made, noBackup, { type: 'changeLabel', ingredient: id, label })
    expect(reasonAfter(told)).toBe('contact')
    expect(reasonAfter(made, remake, newerLabels(made.state))).toBe('label')
  })

  it('[S88] is held for the need where one was told, until it becomes something else', () => {
    const over = onward(
      ready(send(choose('garden-chicken'))),
      ...of1A('start', 'finish', 'handOver'),
    )
    const told = onward(over, tell('milk'), answer(false))
    expect(reasonAfter(told)).toBe('need')
    expect(buildIn(onward(told, remake), '1A').hold?.told).toMatchObject({
      asked: 'needs',
      needs: [{ code: 'milk' }],
    })
    const fits = onward(
      told,
      remake,
      answer(false),
      change('1A', suits),
      ...of1A('start', 'finish'),
    )
    expect(reasonAfter(onward(fits, noBackup))).toBe('contact')
  })

  it('[S89] is held where its labels aren’t the newest, and nothing without needs is', () => {
    expect(reasonAfter(made, remake, newerLabels(made.state))).toBe('label')
    expect(eventsOf(when(made, remake, { newestLabels: null }))).toHaveLength(2)
    const free = ready(send(none), ...of1A('start', 'finish'))
    expect(eventsOf(when(free, remake, { newestLabels: null }))).toHaveLength(1)
  })
})

describe('a service', () => {
  it('[S93] isn’t closed while a guest is to be found', () => {
    const over = ready(send(none), ...of1A('start', 'finish', 'handOver'), tell('milk'))
    expect(refusalOf(when(over, { type: 'close' }))).toEqual({ code: 'guests-to-find', count: 1 })
    expect(codeOf(when(onward(over, answer(false)), { type: 'close' }))).toBeNull()
  })
})
