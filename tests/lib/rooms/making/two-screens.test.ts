import { describe, expect, it, test } from 'vitest'
import { assemblyView } from '#lib/rooms/making/views/assembly.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import {
  at,
  buildIn,
  change,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  needs,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const start = (name: string, screen?: string, more: object = {}): Given =>
  ({ type: 'start', ...at(name), ...(screen ? { screen } : {}), ...more }) as Given
const takeOver = (name: string, screen: string, more: object = {}): Given =>
  start(name, screen, { takeOver: true, ...more })
const finish = (name: string, screen?: string): Given =>
  ({ type: 'finish', ...at(name), ...(screen ? { screen } : {}) }) as Given

const plain = () => choose('garden-chicken')
const milk: Need = { code: 'milk', handling: 'keep-apart', reason: 'allergy' }
const withoutMilk = () =>
  choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' }, needs(milk))

const sent = given(send(plain()), send(plain()))
const atLeft = onward(sent, start('1A', 'left'))

const view = (told: Told, here: string, chosen: string | null = null) =>
  assemblyView(running(told), chosen, here)

describe('where a build is made', () => {
  it('[S185] is said as it is started, and by nothing where the screen has no name', () => {
    expect(eventsOf(when(sent, start('1A', 'left')))).toMatchObject([
      { type: 'buildStarted', screen: 'left' },
    ])
    expect(buildIn(atLeft, '1A').screen).toBe('left')
    const unnamed = onward(sent, start('1A'))
    expect(buildIn(unnamed, '1A')).not.toHaveProperty('screen')
    expect(eventsOf(when(sent, start('1A')))[0]).not.toHaveProperty('screen')
  })

  it('[S185] is forgotten once it waits again, for a remake and for a change', () => {
    const again = onward(atLeft, finish('1A', 'left'), { type: 'remake', ...at('1A') })
    expect(buildIn(again, '1A')).toMatchObject({ state: 'waiting' })
    expect(buildIn(again, '1A')).not.toHaveProperty('screen')
    const changed = onward(
      onward(atLeft, takeOver('1A', 'right')),
      change('1A', choose('garden-chicken', { slaw: 'no' })),
      { type: 'acknowledge', ...at('1A'), foodInIt: false },
    )
    expect(buildIn(changed, '1A')).toMatchObject({ state: 'waiting' })
    expect(buildIn(changed, '1A')).not.toHaveProperty('screen')
    expect(buildIn(changed, '1A')).not.toHaveProperty('tookFrom')
  })

  it('[S185] stays known once it is made, so that a mistake goes back to where it was made', () => {
    const back = onward(atLeft, finish('1A', 'left'), {
      type: 'takeBack',
      ...at('1A'),
      made: false,
    })
    expect(buildIn(back, '1A')).toMatchObject({ state: 'making', screen: 'left' })
  })
})

describe('a build that another screen makes', () => {
  it('[S186] is not started by a second one that does not say that it takes it over', () => {
    const elsewhere = { code: 'made-elsewhere', build: '1A', screen: 'left' }
    expect(refusalOf(when(atLeft, start('1A', 'right')))).toEqual(elsewhere)
    expect(refusalOf(when(atLeft, start('1A', 'right', { takeOver: false })))).toEqual(elsewhere)
    expect(codeOf(when(atLeft, takeOver('1A', 'right')))).toBeNull()
  })

  it('[S186] one without a name can be taken over; its own screen starts nothing twice', () => {
    const unnamed = onward(sent, start('1A'))
    expect(refusalOf(when(unnamed, start('1A', 'right')))).toEqual({
      code: 'made-elsewhere',
      build: '1A',
      screen: null,
    })
    expect(buildIn(onward(unnamed, takeOver('1A', 'right')), '1A')).toMatchObject({
      screen: 'right',
    })
    expect(codeOf(when(atLeft, takeOver('1A', 'left')))).toBe('wrong-state')
    expect(codeOf(when(atLeft, start('1A', undefined, { takeOver: true })))).toBe('wrong-state')
    expect(codeOf(when(onward(atLeft, finish('1A')), takeOver('1A', 'right')))).toBe('wrong-state')
  })

  it('[S186] kept apart, it is taken over only once the steps were read there too', () => {
    const apart = onward(ready(send(withoutMilk())), start('1A', 'left', { read: true }))
    expect(codeOf(when(apart, takeOver('1A', 'right')))).toBe('handling-not-read')
    expect(codeOf(when(apart, takeOver('1A', 'right', { read: true })))).toBeNull()
  })

  it('[S186] stopped, held or changed since it was seen, it is not taken over', () => {
    const stopped = onward(atLeft, change('1A', choose('garden-chicken', { slaw: 'no' })))
    expect(codeOf(when(stopped, takeOver('1A', 'right')))).toBe('build-stopped')
    const held = onward(atLeft, { type: 'tellNeed', ...at('1A'), asked: 'needs', needs: [milk] })
    expect(codeOf(when(held, takeOver('1A', 'right')))).toBe('build-held')
    expect(codeOf(when(atLeft, takeOver('1A', 'right', { seen: 1 })))).toBe('changed-since')
  })

  it('[S187] goes on as what it was: only the screen changes, and who made it is known', () => {
    const taken = onward(atLeft, takeOver('1A', 'right'))
    const before = buildIn(atLeft, '1A')
    expect(buildIn(taken, '1A')).toEqual({ ...before, screen: 'right', tookFrom: 'left' })
    expect(taken.state.pans).toEqual(atLeft.state.pans)
    expect(taken.state.accounts).toEqual(atLeft.state.accounts)
    const back = onward(taken, takeOver('1A', 'left'))
    expect(buildIn(back, '1A')).toEqual({ ...before, screen: 'left', tookFrom: 'right' })
  })

  it('[S187] begun before a wrong scoop went in, it is judged as begun then', () => {
    const apart = onward(ready(send(withoutMilk())), start('1A', 'left', { read: true }))
    const taken = onward(onward(apart, takeOver('1A', 'right', { read: true })), {
      type: 'soilPan',
      pan: 'pan-beans',
      by: 'cheddar',
    })
    expect(buildIn(taken, '1A')).toMatchObject({
      begunIn: buildIn(apart, '1A').begunIn,
      hold: { reason: 'contact' },
    })
  })

  it('[S188] is finished by the screen that makes it, or by one that says no name', () => {
    const elsewhere = { code: 'made-elsewhere', build: '1A', screen: 'left' }
    expect(refusalOf(when(atLeft, finish('1A', 'right')))).toEqual(elsewhere)
    expect(codeOf(when(atLeft, finish('1A', 'left')))).toBeNull()
    expect(codeOf(when(atLeft, finish('1A')))).toBeNull()
    const taken = onward(atLeft, takeOver('1A', 'right'))
    expect(refusalOf(when(taken, finish('1A', 'left')))).toMatchObject({ screen: 'right' })
  })

  it('[S188] is stopped, answered and taken back from anywhere: a tablet may have died', () => {
    const stopped = onward(atLeft, change('1A', choose('garden-chicken', { slaw: 'no' })))
    const answer = { type: 'acknowledge', ...at('1A'), foodInIt: true } as const
    expect(codeOf(when(stopped, answer))).toBeNull()
    const made = onward(atLeft, finish('1A', 'left'))
    expect(codeOf(when(made, { type: 'takeBack', ...at('1A'), made: false }))).toBeNull()
  })
})

describe('a stop that two screens show', () => {
  const noSlaw = () => choose('garden-chicken', { slaw: 'no' })
  const answer = (foodInIt: boolean, stopped?: number): Given =>
    ({
      type: 'acknowledge',
      ...at('1A'),
      foodInIt,
      ...(stopped === undefined ? {} : { stopped }),
    }) as Given
  const stopAt = (told: Told) => buildIn(told, '1A').stop?.at ?? -1

  it('[S190] is answered once: of a second answer nothing is thrown out, released or made again', () => {
    const stopped = onward(atLeft, change('1A', noSlaw()))
    const once = onward(stopped, answer(true, stopAt(stopped)))
    expect(codeOf(when(once, answer(false, stopAt(stopped))))).toBe('nothing-to-acknowledge')
    expect(buildIn(once, '1A')).toMatchObject({ remakes: 1, version: 1 })
  })

  it('[S190] an answer to it that comes late is none to the next one', () => {
    const first = onward(atLeft, change('1A', noSlaw()))
    const again = onward(first, answer(false, stopAt(first)), start('1A', 'left'), {
      type: 'cancel',
      ...at('1A'),
    })
    expect(stopAt(again)).toBeGreaterThan(stopAt(first))
    expect(refusalOf(when(again, answer(false, stopAt(first))))).toEqual({
      code: 'changed-since',
      build: '1A',
    })
    expect(buildIn(onward(again, answer(true, stopAt(again))), '1A').state).toBe('cancelled')
    expect(codeOf(when(again, answer(true)))).toBeNull()
  })
})

describe('what a screen is offered', () => {
  test('[S189] what it makes itself, else the next that waits; the other is in the queue', () => {
    expect(view(atLeft, 'left').now).toMatchObject({ name: '1A', elsewhere: null })
    const right = view(atLeft, 'right')
    expect(right.now).toMatchObject({ name: '2A', state: 'waiting' })
    expect(right.queue).toMatchObject([{ name: '1A', state: 'making', elsewhere: 'left' }])
    expect(right.next).toBeNull()
    const both = onward(atLeft, start('2A', 'right'))
    expect(view(both, 'right').now).toMatchObject({ name: '2A', state: 'making' })
    expect(view(both, 'left').now).toMatchObject({ name: '1A' })
  })

  test('[S189] nothing where all is made elsewhere, until one of those is looked at', () => {
    const both = onward(atLeft, start('2A', 'left'))
    expect(view(both, 'right').now).toBeNull()
    expect(view(both, 'right').queue.map(({ name }) => name)).toEqual(['1A', '2A'])
    expect(view(both, 'right', '2A').now).toMatchObject({ name: '2A', elsewhere: 'left' })
  })

  test('[S189] one without a name is everybody’s, and so is a screen without one', () => {
    expect(view(onward(sent, start('1A')), 'right').now).toMatchObject({ name: '1A' })
    expect(assemblyView(running(atLeft), null).now).toMatchObject({ name: '1A', elsewhere: null })
  })

  test('[S189] a take-over is told on both screens, and no longer than it is made', () => {
    const taken = onward(atLeft, takeOver('1A', 'right'))
    expect(view(taken, 'left').takenAway).toEqual([{ name: '1A', screen: 'right' }])
    expect(view(taken, 'left').now).toMatchObject({ name: '2A' })
    expect(view(taken, 'right').takenAway).toEqual([])
    expect(view(taken, 'right').now).toMatchObject({ name: '1A', tookFrom: 'left' })
    const made = onward(taken, finish('1A', 'right'))
    expect(view(made, 'left').takenAway).toEqual([])
  })

  test('[S189] a stop stands at the screen that makes it, is told at the other, and answered there if asked', () => {
    const stopped = onward(atLeft, change('1A', choose('garden-chicken', { slaw: 'no' })))
    expect(view(stopped, 'left').stopped).toMatchObject({ name: '1A' })
    expect(view(stopped, 'left').stoppedElsewhere).toEqual([])
    expect(view(stopped, 'right')).toMatchObject({
      stopped: null,
      stoppedElsewhere: [{ name: '1A', screen: 'left' }],
      now: { name: '2A' },
    })
    expect(view(stopped, 'right', '1A')).toMatchObject({
      stopped: { name: '1A', elsewhere: 'left' },
      stoppedElsewhere: [],
    })
  })

  test('[S189] of what was made its own comes first, whatever came later', () => {
    const made = onward(atLeft, start('2A', 'right'), finish('1A', 'left'), finish('2A', 'right'))
    const of = (here: string) => view(made, here).lastMade.map(({ name }) => name)
    expect(of('left')).toEqual(['1A', '2A'])
    expect(of('right')).toEqual(['2A', '1A'])
    expect(view(made, 'left').lastMade[1]).toMatchObject({ elsewhere: 'right' })
  })
})
