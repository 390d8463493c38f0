import { describe, expect, test } from 'vitest'
import { type AssemblyView, assemblyView } from '#lib/rooms/making/views/assembly.ts'
import type { PanForBuild } from '#lib/rooms/making/views/assembly-pan.ts'
import { differencesOf, stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { waitingRemakes } from '#lib/rooms/making/views/waiting-remakes.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import {
  at,
  change,
  choose,
  given,
  needs,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const keepApart = (code: Need['code']): Need => ({
  code,
  handling: 'keep-apart',
  reason: 'allergy',
})
const start = (name: string) => ({ type: 'start', ...at(name) }) as const
const finish = (name: string) => ({ type: 'finish', ...at(name) }) as const

const view = (told: Told, chosen: string | null = null): AssemblyView =>
  assemblyView(running(told), chosen)

const nowOf = (told: Told, chosen: string | null = null): NowBuild => {
  const { now } = view(told, chosen)
  if (!now) throw new Error('nothing to make')
  return now
}

const panIn = (told: Told, pan: string): PanForBuild => {
  const found = nowOf(told).pans[pan]
  if (!found) throw new Error(`no pan ${pan}`)
  return found
}

const milkOut = (over: Partial<Need> = {}) =>
  given(
    send({
      ...withoutMilk(),
      ...needs({ code: 'milk', handling: 'leave-out', reason: 'coeliac', ...over }),
    }),
  )

const plain = () => choose('garden-chicken')
const withoutMilk = (): BuildChoice =>
  choose(
    'bean-and-pepper',
    { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
    needs(keepApart('milk')),
  )

describe('why a guest has a need', () => {
  test('[V6] is no matter at assembly, which is told codes and handling', () => {
    const [said, other] = [nowOf(milkOut()), nowOf(milkOut({ reason: null }))]
    expect(said).toMatchObject({ leaveOut: ['milk'], keepFrom: [] })
    expect(said).toEqual(other)
  })
})

describe('which build is made now', () => {
  test('[A1] the oldest being made, else the oldest that waits; none when nothing is open', () => {
    expect(view(given()).now).toBeNull()
    const waiting = given(send(plain(), plain()), send(plain()))
    expect(nowOf(waiting).name).toBe('1A')
    expect(nowOf(onward(waiting, start('2A'))).name).toBe('2A')
    expect(nowOf(onward(waiting, start('2A'), start('1B'))).name).toBe('1B')
    expect(nowOf(onward(waiting, start('1A'), finish('1A'))).name).toBe('1B')
  })

  test('[A1] one that was chosen is shown while it is open, and no longer', () => {
    const waiting = given(send(plain()), send(plain()))
    expect(nowOf(waiting, '2A').name).toBe('2A')
    expect(nowOf(onward(waiting, start('2A'), finish('2A')), '2A').name).toBe('1A')
    expect(nowOf(waiting, '9A').name).toBe('1A')
  })

  test('[A2] it is the how-manieth of its ticket, cancelled builds not counted', () => {
    const told = given(send(plain(), plain(), plain()), { type: 'cancel', ...at('1A') })
    expect(nowOf(told)).toMatchObject({ name: '1B', index: 1, of: 2 })
  })

  test('[A3] the others follow in order, and what is made is listed newest first', () => {
    const told = given(send(plain(), plain()), send(plain()), start('1A'), finish('1A'))
    const both = onward(told, start('2A'), finish('2A'))
    expect(view(told).queue.map((one) => one.name)).toEqual(['2A'])
    expect(view(both).lastMade.map((one) => one.name)).toEqual(['2A', '1A'])
    const handed = onward(both, { type: 'handOver', ...at('2A') })
    expect(view(handed).lastMade.map((one) => one.name)).toEqual(['1A'])
    expect(view(handed).made).toBe(2)
  })
})

describe('what stands in the way, and what comes', () => {
  test('[A9] a short build says which pan lacks what, and the next that can be made is named', () => {
    const told = given(send(choose('harbor-tuna'), choose('harbor-tuna')), send(plain()), {
      type: 'correct',
      pan: 'pan-tuna',
      amount: ofPortions('tuna', 1) - 1,
    })
    expect(nowOf(told)).toMatchObject({ name: '1A', short: true, lacks: 'Tuna salad' })
    expect(panIn(told, 'pan-tuna')).toMatchObject({ lacking: true })
    expect(panIn(told, 'pan-slaw')).toMatchObject({ lacking: false })
    expect(view(told).next).toBe('2A')
    expect(view(told).queue.map((one) => one.short)).toEqual([true, false])
    const making = onward(given(send(choose('harbor-tuna')), start('1A')), {
      type: 'correct',
      pan: 'pan-tuna',
      amount: 0,
    })
    expect(nowOf(making)).toMatchObject({ short: false, lacks: null })
  })

  test('[A10] what to warm next is for the builds that follow, at most three of them', () => {
    const rice = choose('garden-chicken', {}, { base: 'rice' })
    const told = given(send(plain(), rice, plain()), send(plain(), plain()))
    expect(view(told).warmNext).toEqual([
      { component: 'Pita', seconds: 15, on: 'griddle', builds: ['1C', '2A'] },
    ])
    expect(view(given(send(plain()))).warmNext).toEqual([])
  })

  test('[A11] what was read aloud holds for that choice only', () => {
    const told = ready(send(withoutMilk()))
    const same = onward(told, send(plain()))
    expect(nowOf(same).reads).toBe(nowOf(told).reads)
    const { parts } = withoutMilk()
    const slaw = { placement: 'no', portions: 0, because: 'asked' } as const
    const without = { ...withoutMilk(), parts: { ...parts, slaw } }
    const changed = onward(told, change('1A', without))
    expect(nowOf(changed).reads).not.toBe(nowOf(told).reads)
    const back = onward(changed, change('1A', withoutMilk()))
    expect(nowOf(back).reads).not.toBe(nowOf(told).reads)
    expect([told, changed, back].map((one) => nowOf(one).version)).toEqual([0, 1, 2])
    expect(nowOf(told)).toMatchObject({ keptApart: true, keepFrom: ['milk'], leaveOut: [] })
  })

  test('[A13] a remake that waits again is named anew each time, and no longer once it is started', () => {
    const handOver = (name: string) => ({ type: 'handOver', ...at(name) }) as const
    const remake = (name: string) => ({ type: 'remake', ...at(name) }) as const
    const remakes = (told: Told) => waitingRemakes(running(told))
    const handed = given(send(plain(), plain()), start('1A'), finish('1A'), handOver('1A'))
    expect(remakes(handed)).toEqual([])
    const again = onward(handed, remake('1A'))
    expect(remakes(again)).toEqual(['1A/1'])
    const started = onward(again, start('1A'))
    expect(remakes(started)).toEqual([])
    expect(remakes(onward(started, finish('1A'), remake('1A')))).toEqual(['1A/2'])
  })
})

describe('a build that is stopped', () => {
  const changed = () =>
    ready(
      send(plain()),
      send(plain()),
      start('1A'),
      change(
        '1A',
        choose(
          'garden-chicken',
          { cheddar: 'no', 'yogurt-sauce': 'no', peppers: 2 },
          { base: 'rice', ...needs(keepApart('milk')) },
        ),
      ),
    )

  test('[A12] it shows before all else, with what differs: needs first, then base and parts', () => {
    const { stopped, now } = view(changed())
    expect(stopped).toMatchObject({ name: '1A' })
    expect(stopped?.differences).toEqual([
      { what: 'need', need: keepApart('milk'), is: 'new' },
      { what: 'base', from: 'pita', to: 'rice' },
      ...(
        [
          ['peppers', 'in', 1, 'in', 2],
          ['cheddar', 'in', 1, 'no', 0],
          ['yogurt-sauce', 'in', 1, 'no', 0],
        ] as const
      ).map(([component, from, few, to, many]) => ({
        what: 'part',
        component,
        from: expect.objectContaining({ placement: from, portions: few }),
        to: expect.objectContaining({ placement: to, portions: many }),
      })),
    ])
    expect(now?.name).toBe('2A')
  })

  test('[A12] another item, and a need that is gone, are differences too', () => {
    const milk = withoutMilk()
    const found = differencesOf(milk, choose('garden-chicken'))
    expect(found).toContainEqual({ what: 'need', need: keepApart('milk'), is: 'gone' })
    expect(found).toContainEqual({ what: 'item', from: 'bean-and-pepper', to: 'garden-chicken' })
    expect(differencesOf(milk, milk)).toEqual([])
  })

  test('[A12] a cancelled one has no differences, and is gone once it is answered', () => {
    const told = given(send(plain()), start('1A'), { type: 'cancel', ...at('1A') })
    expect(stoppedBuilds(running(told))).toMatchObject([{ name: '1A', differences: null }])
    const answered = onward(told, { type: 'acknowledge', ...at('1A'), foodInIt: true })
    expect(view(answered)).toMatchObject({ stopped: null, now: null })
  })

  test('[A12] the oldest stop comes first', () => {
    const told = given(send(plain()), send(plain()), start('1A'), start('2A'))
    const both = onward(told, { type: 'cancel', ...at('2A') }, { type: 'cancel', ...at('1A') })
    expect(stoppedBuilds(running(both)).map((one) => one.name)).toEqual(['2A', '1A'])
    expect(view(both).now).toBeNull()
  })
})
