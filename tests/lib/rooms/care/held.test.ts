import { describe, expect, it } from 'vitest'
import { ROLES } from '#lib/service/roles.ts'
import { COMMAND_TYPES, MAY, mayDo } from '#lib/spine/registry.ts'
import {
  accountOf,
  at,
  backupReady,
  buildIn,
  change,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  load,
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
const apart = (code: string) => needs({ code, handling: 'keep-apart', reason: 'allergy' })
const soy = needs({ code: 'soy', handling: 'leave-out', reason: null })
const tell = (code: string, handling: 'keep-apart' | 'leave-out' = 'keep-apart'): Given => ({
  type: 'tellNeed',
  ...at('1A'),
  asked: 'needs',
  needs: [{ code, handling, reason: null }],
})
const of1A = (...types: ('start' | 'finish' | 'handOver' | 'cancel')[]): Given[] =>
  types.map((type) => ({ type, ...at('1A'), ...(type === 'start' ? { read: true } : {}) }))
const answer = (foodInIt: boolean): Given => ({ type: 'acknowledge', ...at('1A'), foodInIt })
const accept = (build: ReturnType<typeof choose>): Given => ({
  type: 'acceptCaution',
  build,
  reason: 'guest-accepts',
})

const stages: Readonly<Record<string, Told>> = {
  waiting: ready(send(choose('garden-chicken'))),
  making: ready(send(choose('garden-chicken')), ...of1A('start')),
  made: ready(send(choose('garden-chicken')), ...of1A('start', 'finish')),
  'handed-over': ready(send(choose('garden-chicken')), ...of1A('start', 'finish', 'handOver')),
}
const stage = (name: string): Told => stages[name] ?? ready()
const suits = choose('garden-chicken', WITHOUT_MILK, { base: 'rice', ...apart('milk') })

describe('an order', () => {
  it('[S68] is accepted only once it was read back, and so is a change', () => {
    const builds = [choose('harbor-tuna')]
    expect(codeOf(when(given(), { type: 'send', builds }))).toBe('not-read-back')
    const to = choose('harbor-tuna')
    expect(codeOf(when(stage('waiting'), { type: 'change', ...at('1A'), to }))).toBe(
      'not-read-back',
    )
  })

  it('[S69] that keeps apart is agreed to, with the person in charge signed on', () => {
    expect(codeOf(when(ready(), send(suits)))).toBeNull()
    expect(refusalOf(when(ready(), send({ ...suits, agreed: false })))).toEqual({
      code: 'not-agreed',
      letter: 'A',
    })
    const alone = ready({ type: 'signOff' })
    expect(codeOf(when(alone, send(suits)))).toBe('no-one-in-charge')
    expect(codeOf(when(alone, send(choose('garden-chicken'))))).toBeNull()
  })

  it('[S72] with a need that the labels can’t speak of is refused', () => {
    const kelp = needs({ code: 'kelp', handling: 'leave-out', reason: null })
    expect(refusalOf(when(ready(), send(choose('harbor-tuna', {}, kelp))))).toEqual({
      code: 'unknown',
      what: 'need',
      id: 'kelp',
    })
  })
})

describe('a caution', () => {
  const order = choose('harbor-tuna', { slaw: 'no' }, soy)

  it('[S70] is accepted by nobody else, in whatever state, whoever asks', () => {
    const orders = [order, suits]
    for (const told of [given(), ...Object.values(stages)])
      for (const by of ROLES.filter((role) => role !== 'in-charge'))
        for (const one of orders) {
          expect(codeOf(when(told, accept(one), { by }))).toBe('not-in-charge')
          expect(mayDo(by, 'acceptCaution')).toBe(false)
        }
  })

  it('[S70] leaves every command to the roles that may give it, at every stage', () => {
    const mine = { signOn: {}, acceptCaution: accept(order), changeLabel: {} }
    for (const role of ROLES)
      for (const type of COMMAND_TYPES)
        expect(mayDo(role, type)).toBe(
          role !== 'pick-up' &&
            (role === 'in-charge' || (MAY[role].includes(type) && !(type in mine))),
        )
    for (const told of Object.values(stages))
      for (const by of ROLES.filter((role) => role !== 'in-charge'))
        expect(codeOf(when(told, { type: 'signOn' }, { by }))).toBe('not-in-charge')
  })

  it('[S70] is nothing where it is ruled out or fits', () => {
    const by = 'in-charge' as const
    expect(codeOf(when(ready(), accept(suits), { by }))).toBe('nothing-to-accept')
    const milk = choose('garden-chicken', {}, apart('milk'))
    expect(codeOf(when(ready(), accept(milk), { by }))).toBe('contains')
    expect(codeOf(when(given(), accept(order), { by }))).toBe('no-one-in-charge')
  })

  it('[S71] that was accepted counts for one build of the same food and needs', () => {
    const told = ready(accept(order))
    const under = { ...order, caution: 1 }
    expect(codeOf(when(told, send(order)))).toBe('caution')
    expect(codeOf(when(told, send(under)))).toBeNull()
    expect(codeOf(when(told, send(under, under)))).toBe('caution')
    const used = onward(told, send(under))
    expect(used.state.cautions.c1?.build).toBe('1A')
    expect(codeOf(when(used, send(under)))).toBe('caution')
    expect(codeOf(when(used, change('1A', { ...under, agreed: false })))).toBeNull()
    expect(codeOf(when(used, change('1A', { ...under, base: 'rice' })))).toBe('caution')
    for (const other of [{ tuna: 2 }, { cheddar: 'no' }, { cheddar: 2 }] as const) {
      const changed = { ...choose('harbor-tuna', { slaw: 'no', ...other }, soy), caution: 1 }
      expect(codeOf(when(told, send(changed)))).toBe('caution')
    }
    const stricter = { ...under, ...needs(...soy.needs, ...apart('peanut').needs) }
    expect(codeOf(when(told, send(stricter)))).toBe('caution')
    expect(codeOf(when(told, send({ ...under, caution: 2 })))).toBe('unknown caution')
  })
})

describe('a need told late', () => {
  it.each(Object.keys(stages))('[S73] holds a build that is %s', (name) => {
    const held = onward(stage(name), tell('milk'))
    expect(buildIn(held, '1A')).toMatchObject({
      state: name,
      hold: { reason: 'need', told: { asked: 'needs' } },
      stop: { reason: 'need', to: null },
    })
    expect(Object.keys(held.state.toFind)).toEqual(name === 'handed-over' ? ['1A'] : [])
  })

  it('[S73] is refused of a cancelled build, and of what is known already', () => {
    const cancelled = onward(stage('waiting'), ...of1A('cancel'))
    expect(codeOf(when(cancelled, tell('milk')))).toBe('wrong-state')
    const held = onward(stage('waiting'), tell('milk'))
    expect(codeOf(when(held, tell('milk', 'leave-out')))).toBe('already-so')
  })

  it('[S74] adds to what was told before, and a change that forgets any is refused', () => {
    const held = onward(stage('waiting'), tell('milk', 'leave-out'), tell('peanut'), tell('milk'))
    expect(buildIn(held, '1A').hold?.told?.needs.map((one) => [one.code, one.handling])).toEqual([
      ['peanut', 'keep-apart'],
      ['milk', 'keep-apart'],
    ])
    expect(refusalOf(when(held, change('1A', suits)))).toEqual({
      code: 'need-dropped',
      build: '1A',
      need: 'peanut',
    })
    const both = { ...suits, ...needs(...apart('milk').needs, ...apart('peanut').needs) }
    expect(codeOf(when(held, change('1A', both)))).toBeNull()
  })

  it.each([
    ['waiting', 'start'],
    ['making', 'finish'],
    ['made', 'handOver'],
    ['made', 'remake'],
    ['handed-over', 'remake'],
  ] as const)('[S75] leaves a build that was %s without a %s', (name, type) => {
    const held = onward(stage(name), tell('milk'))
    expect(refusalOf(when(held, { type, ...at('1A') }))).toEqual({
      code: 'build-held',
      build: '1A',
      reason: 'need',
    })
  })

  it('[S76] leaves food to be waste, and made food always is', () => {
    const made = onward(stage('made'), tell('milk'))
    expect(codeOf(when(made, answer(false)))).toBe('made-food-is-waste')
    const waste = onward(made, answer(true))
    expect(buildIn(waste, '1A')).toMatchObject({ state: 'waiting', stop: null, took: [] })
    expect(buildIn(waste, '1A').hold).not.toBeNull()
    const { used, wasted, onTickets } = accountOf(waste, 'chicken')
    expect([used, wasted]).toEqual([0, onTickets])
    expect(codeOf(when(waste, { type: 'start', ...at('1A') }))).toBe('build-held')
    const clean = onward(stage('making'), tell('milk'), answer(false))
    expect(buildIn(clean, '1A')).toMatchObject({ state: 'waiting', stop: null })
    expect(accountOf(clean, 'chicken').wasted).toBe(0)
  })

  it('[S77] of a handed-over build is answered by food taken back, or a guest told', () => {
    const over = onward(stage('handed-over'), tell('milk'))
    const back = onward(over, answer(true))
    expect(buildIn(back, '1A')).toMatchObject({ state: 'waiting', hold: { reason: 'need' } })
    expect([back.state.handedOver, back.state.made, back.state.toFind]).toEqual([0, 0, {}])
    const told = onward(over, answer(false))
    expect(buildIn(told, '1A')).toMatchObject({ state: 'handed-over', hold: null, stop: null })
    expect(told.state.toFind).toEqual({})
    // What the guest told stays: made again as it was, it is held at once.
    const again = eventsOf(when(told, { type: 'remake', ...at('1A') }))
    expect(again.map((event) => event.type)).toEqual(['buildRemade', 'buildHeld'])
  })

  it('[S78] is lifted by a change that fits: at once when it was answered, else with the answer', () => {
    const answered = onward(stage('making'), tell('milk'), answer(true), change('1A', suits))
    expect(buildIn(answered, '1A')).toMatchObject({ state: 'waiting', hold: null, stop: null })
    for (const name of Object.keys(stages)) {
      const stopped = onward(stage(name), tell('milk'), change('1A', suits))
      expect(buildIn(stopped, '1A').hold).not.toBeNull()
      const after = onward(stopped, answer(name !== 'waiting'))
      expect(buildIn(after, '1A')).toMatchObject({
        state: 'waiting',
        hold: null,
        stop: null,
        choice: { base: 'rice' },
      })
    }
  })
})

describe('a label', () => {
  const order = choose('bean-and-pepper', WITHOUT_MILK, apart('milk'))
  const cheddarless = ready(send(order), send(choose('garden-chicken')))

  it('[S79] of another product is unread, until it was read', () => {
    const told = ready({ type: 'notSameProduct', ingredient: 'black-beans' })
    const ingredient = () =>
      running(told).station.ingredients.find((one) => one.id === 'black-beans')
    expect(ingredient()).toMatchObject({ declarations: {}, traits: null, readOn: null })
    expect(told.state.revision).toBe(3)
    expect(codeOf(when(told, send(order)))).toBe('unknown-declaration')
    const label = { declarations: { milk: 'free' as const }, traits: [], claims: {} }
    const read = onward(told, {
      type: 'changeLabel',
      ingredient: 'black-beans',
      label: { ...label, readOn: '2026-11-25', readBy: 'AB' },
    })
    expect(read.state.labelChanges.map((one) => one.read)).toEqual([false, true])
    expect(codeOf(when(read, send(order)))).toBeNull()
  })

  it('[S79] leaves the station’s document at its revision, and has a version in the house', () => {
    const command: Given = { type: 'notSameProduct', ingredient: 'pita' }
    const [event] = eventsOf(when(ready(), command, { nextLabel: 9 }))
    expect(event).toMatchObject({ type: 'labelChanged', revision: 3, version: 9 })
    expect(eventsOf(when(ready(), command))[0]).not.toHaveProperty('version')
  })

  it('[S80] that changed holds what it makes unfit, made or handed over as well', () => {
    const over = onward(cheddarless, ...of1A('start', 'finish', 'handOver'), send(order))
    const after = onward(over, { type: 'notSameProduct', ingredient: 'black-beans' })
    expect(buildIn(after, '1A')).toMatchObject({ hold: { reason: 'label' } })
    expect(buildIn(after, '3A')).toMatchObject({ hold: { reason: 'label' } })
    expect(buildIn(after, '2A').hold).toBeNull()
    expect(Object.keys(after.state.toFind)).toEqual(['1A'])
  })

  it('[S80][S101] is one thing, a scoop or a missing back-up another: it finds those who had of that pan', () => {
    const soiled = onward(cheddarless, { type: 'setBackup', component: 'beans', ready: false })
    expect(buildIn(soiled, '1A').hold).toBeNull()
    const both = onward(soiled, { type: 'soilPan', pan: 'pan-beans', by: 'cheddar' })
    expect(buildIn(both, '1A')).toMatchObject({ hold: { reason: 'contact' } })
    const over = onward(soiled, ...of1A('start', 'finish', 'handOver'))
    const found = onward(over, { type: 'soilPan', pan: 'pan-beans', by: 'cheddar' })
    expect(Object.keys(found.state.toFind)).toEqual(['1A'])
    const changed = onward(over, changePan('pan-beans', ofPortions('beans', 9)))
    const since = onward(changed, { type: 'soilPan', pan: 'pan-beans', by: 'cheddar' })
    expect(since.state.toFind).toEqual({})
  })

  it('[S81] of a soiled pan counts until it is changed, or washed and loaded', () => {
    const soiled = given({ type: 'soilPan', pan: 'pan-pita', by: 'cheddar' })
    const empty = onward(soiled, { type: 'correct', pan: 'pan-pita', amount: 0 })
    expect(empty.state.pans['pan-pita']?.soiledBy).toEqual(['cheddar'])
    expect(codeOf(when(empty, load('pan-pita', 9)))).toBe('pan-soiled')
    const washed = onward(empty, load('pan-pita', 9, true))
    expect(washed.state.pans['pan-pita']?.soiledBy).toEqual([])
    const changed = onward(soiled, changePan('pan-pita', 9))
    expect(changed.state.pans['pan-pita']?.soiledBy).toEqual([])
  })

  it('[S82] has no say in which back-ups there are: only protected ones stand ready', () => {
    expect(refusalOf(when(given(), backupReady('pita')))).toEqual({
      code: 'unknown',
      what: 'protected-backup',
      id: 'pita',
    })
    const told = given(backupReady('rice'))
    expect(Object.keys(told.state.backups)).toEqual(['rice'])
  })
})
