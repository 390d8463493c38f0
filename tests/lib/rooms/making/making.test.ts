import { describe, expect, it } from 'vitest'
import {
  accountOf,
  at,
  buildIn,
  changePan,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  inPan,
  needs,
  ofPortions,
  onward,
  ready,
  refusalOf,
  send,
  when,
} from '#tests/support/service.ts'

const start = (name: string): Given => ({ type: 'start', ...at(name) })
const finish = (name: string): Given => ({ type: 'finish', ...at(name) })
const handOver = (name: string): Given => ({ type: 'handOver', ...at(name) })
const remake = (name: string): Given => ({ type: 'remake', ...at(name) })
const takeBack = (name: string, made: boolean): Given => ({ type: 'takeBack', ...at(name), made })
const chicken = (count: number) => ofPortions('chicken', count)

const sent = given(send(choose('garden-chicken')))
const making = onward(sent, start('1A'))
const made = onward(making, finish('1A'))

describe('a waiting build', () => {
  it('[S41] is started; its portions stay on tickets and in the pans', () => {
    expect(buildIn(making, '1A').state).toBe('making')
    expect(buildIn(making, '1A').since).toBeGreaterThan(buildIn(sent, '1A').since)
    expect(accountOf(making, 'chicken').onTickets).toBe(chicken(1))
    expect(inPan(making, 'pan-chicken')).toBe(chicken(24))
  })

  it('[S42] that the pans can not fill is not started', () => {
    const short = onward(sent, { type: 'correct', pan: 'pan-chicken', amount: chicken(1) - 1 })
    expect(refusalOf(when(short, start('1A')))).toEqual({
      code: 'short',
      build: '1A',
      component: 'chicken',
    })
    const filled = onward(short, changePan('pan-chicken', chicken(3)))
    expect(codeOf(when(filled, start('1A')))).toBeNull()
  })

  it('[S64] that was changed since it was seen is not started, whatever the change was', () => {
    const saw = (name: string, seen: number): Given => ({ ...start(name), seen }) as Given
    const change = (to: ReturnType<typeof choose>): Given => ({
      type: 'change',
      readBack: true,
      ...at('1A'),
      to,
    })
    expect(buildIn(sent, '1A').version).toBe(0)
    expect(codeOf(when(sent, saw('1A', 0)))).toBeNull()
    const changed = onward(sent, change(choose('garden-chicken', { slaw: 'no' })))
    expect(buildIn(changed, '1A').version).toBe(1)
    expect(refusalOf(when(changed, saw('1A', 0)))).toEqual({ code: 'changed-since', build: '1A' })
    expect(codeOf(when(changed, saw('1A', 1)))).toBeNull()
    expect(codeOf(when(changed, start('1A')))).toBeNull()
    const back = onward(changed, change(choose('garden-chicken')))
    expect(codeOf(when(back, saw('1A', 0)))).toBe('changed-since')
    expect(buildIn(onward(back, start('1A'), finish('1A'), remake('1A')), '1A').version).toBe(2)
  })

  it('[S64] counts a change that assembly acknowledged, and no other stop', () => {
    const to = choose('garden-chicken', { slaw: 'no' })
    const stopped = onward(making, { type: 'change', readBack: true, ...at('1A'), to })
    expect(buildIn(stopped, '1A').version).toBe(0)
    const again = onward(stopped, { type: 'acknowledge', ...at('1A'), foodInIt: false })
    expect(buildIn(again, '1A').version).toBe(1)
    expect(codeOf(when(again, { ...start('1A'), seen: 0 } as Given))).toBe('changed-since')
    const cancelled = onward(
      making,
      { type: 'cancel', ...at('1A') },
      { type: 'acknowledge', ...at('1A'), foodInIt: false },
    )
    expect(buildIn(cancelled, '1A').version).toBe(0)
  })

  it('[S65] that is kept apart is started only once its handling order was read', () => {
    const of = (handling: 'keep-apart' | 'leave-out') =>
      choose(
        'bean-and-pepper',
        { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
        needs({ code: 'milk', handling, reason: null }),
      )
    const unread = { code: 'handling-not-read', build: '1A' }
    const starts = (read: boolean): Given => ({ ...start('1A'), read }) as Given
    const apart = ready(send(of('keep-apart')))
    expect(refusalOf(when(apart, start('1A')))).toEqual(unread)
    expect(refusalOf(when(apart, starts(false)))).toEqual(unread)
    expect(codeOf(when(apart, starts(true)))).toBeNull()
    const leftOut = ready(send(of('leave-out')))
    expect(codeOf(when(leftOut, start('1A')))).toBeNull()
    const became = onward(leftOut, {
      type: 'change',
      readBack: true,
      ...at('1A'),
      to: of('keep-apart'),
    })
    expect(refusalOf(when(became, start('1A')))).toEqual(unread)
  })
})

describe('a build in the making', () => {
  it('[S43] takes exactly its portions out of the pans when it is finished, and off the tickets', () => {
    expect(inPan(made, 'pan-chicken')).toBe(chicken(23))
    expect(accountOf(made, 'chicken')).toMatchObject({
      onTickets: 0,
      used: chicken(1),
      corrected: 0,
    })
    expect(buildIn(made, '1A')).toMatchObject({ state: 'made' })
    expect(buildIn(made, '1A').took).toContainEqual({
      pan: 'pan-chicken',
      load: 1,
      batches: ['opening-chicken'],
      counted: 0,
      amount: chicken(1),
    })
    expect(made.state.made).toBe(1)
  })

  it('[S44] is finished also where the count says that it can not be: the count was wrong', () => {
    const wrong = onward(making, { type: 'correct', pan: 'pan-chicken', amount: 1_000 })
    expect(eventsOf(when(wrong, finish('1A')))[0]).toMatchObject({
      uncounted: { chicken: chicken(1) - 1_000 },
    })
    const finished = onward(wrong, finish('1A'))
    expect(inPan(finished, 'pan-chicken')).toBe(0)
    expect(accountOf(finished, 'chicken').used).toBe(chicken(1))
  })
})

describe('a made build', () => {
  it('[S45] that was never made is made again: back to making, its portions back in the pans and on tickets', () => {
    const back = onward(made, takeBack('1A', false))
    expect(buildIn(back, '1A')).toMatchObject({ state: 'making', took: [], remakes: 0 })
    expect(back.state.pans).toEqual(making.state.pans)
    expect(back.state.accounts).toEqual(making.state.accounts)
    expect(back.state.made).toBe(0)
  })

  it('[S46] puts nothing into a pan that was changed since: that food went away with its pan', () => {
    const changed = onward(made, changePan('pan-chicken', chicken(10)))
    const back = onward(changed, takeBack('1A', false))
    expect(inPan(back, 'pan-chicken')).toBe(chicken(10))
    expect(accountOf(back, 'chicken')).toMatchObject({
      takenAway: chicken(24),
      used: 0,
      onTickets: chicken(1),
    })
    expect(inPan(back, 'pan-slaw')).toBe(ofPortions('slaw', 40))
  })

  it('[S47] puts nothing into a pan that was counted since: the count found that food in it', () => {
    const counted = onward(made, { type: 'correct', pan: 'pan-chicken', amount: chicken(24) })
    const back = onward(counted, takeBack('1A', false))
    expect(inPan(back, 'pan-chicken')).toBe(chicken(24))
    expect(accountOf(back, 'chicken')).toMatchObject({
      corrected: 0,
      used: 0,
      onTickets: chicken(1),
    })
  })

  it('[S45] takes back what it took beyond the count as uncounted again', () => {
    const wrong = onward(making, { type: 'correct', pan: 'pan-chicken', amount: 1_000 })
    const back = onward(wrong, finish('1A'), takeBack('1A', false))
    expect(inPan(back, 'pan-chicken')).toBe(1_000)
    expect(back.state.accounts).toEqual(wrong.state.accounts)
  })

  it.each([
    ['taken back after it was made', takeBack('1A', true)],
    ['remade', remake('1A')],
  ])(
    '[S48] that is %s is waste, and waits once more with its portions on tickets',
    (_, command) => {
      const remade = onward(made, command)
      expect(eventsOf(when(made, command))).toEqual([
        { type: 'buildRemade', ...at('1A'), from: 'made' },
      ])
      expect(buildIn(remade, '1A')).toMatchObject({ state: 'waiting', took: [], remakes: 1 })
      expect(accountOf(remade, 'chicken')).toMatchObject({
        used: 0,
        wasted: chicken(1),
        onTickets: chicken(1),
      })
      expect(inPan(remade, 'pan-chicken')).toBe(chicken(23))
    },
  )

  it('[S49] is remade also where the pans can not fill it any more, and is short then', () => {
    const empty = onward(made, { type: 'correct', pan: 'pan-chicken', amount: 0 }, remake('1A'))
    expect(codeOf(when(empty, start('1A')))).toBe('short')
  })

  it('[S50] is handed over by its number and letter; the ticket is past when its last build is', () => {
    const two = given(
      send(choose('garden-chicken'), choose('harbor-tuna')),
      start('1A'),
      finish('1A'),
      handOver('1A'),
    )
    expect(two.state.tickets.t1?.builds.map((build) => build.state)).toEqual([
      'handed-over',
      'waiting',
    ])
    const both = onward(two, start('1B'), finish('1B'), handOver('1B'))
    expect(both.state.tickets).toEqual({})
    expect(both.state.past[0]?.[1]?.builds).toHaveLength(2)
    expect(both.state).toMatchObject({ made: 2, handedOver: 2 })
  })
})

describe('a build that was handed over', () => {
  const handed = onward(made, handOver('1A'))

  it('[S51] is remade where the guest brings it back: the ticket is open again', () => {
    const remade = onward(handed, remake('1A'))
    expect(remade.state.tickets.t1?.builds[0]).toMatchObject({ state: 'waiting', remakes: 1 })
    expect(remade.state.past[0]).toEqual({})
    expect(remade.state).toMatchObject({ made: 0, handedOver: 0 })
    expect(accountOf(remade, 'chicken')).toMatchObject({
      wasted: chicken(1),
      used: 0,
      onTickets: chicken(1),
    })
  })
})
