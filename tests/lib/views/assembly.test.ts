import { describe, expect, test } from 'vitest'
import { pansOf } from '#lib/menu/find.ts'
import { NEED_CODES, type Need } from '#lib/needs/codes.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import {
  type AssemblyView,
  assemblyView,
  type NowBuild,
  waitingRemakes,
  widePans,
} from '#lib/views/assembly.ts'
import { handCount, type PanForBuild, panForBuild } from '#lib/views/assembly-pan.ts'
import { differencesOf, stoppedBuilds } from '#lib/views/assembly-stop.ts'
import {
  at,
  choose,
  demoStation,
  given,
  needs,
  ofPortions,
  onward,
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

const plain = () => choose('garden-chicken')
const withoutMilk = (): BuildChoice =>
  choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no' }, needs(keepApart('milk')))

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

describe('the line for one build', () => {
  test('[A4] a pan is taken from, on the side, left out with why, or none of its business', () => {
    const told = given(send(choose('garden-chicken', { cheddar: 'no', 'yogurt-sauce': 'side' })))
    expect(panIn(told, 'pan-chicken')).toMatchObject({ kind: 'take', count: 1, onTheSide: false })
    expect(panIn(told, 'pan-yogurt-sauce')).toMatchObject({ kind: 'take', onTheSide: true })
    expect(panIn(told, 'pan-cheddar')).toMatchObject({ kind: 'no', because: 'asked' })
    expect(panIn(told, 'pan-rice')).toEqual({ kind: 'idle' })
    expect(panIn(told, 'pan-almonds')).toEqual({ kind: 'idle' })
    expect(widePans(nowOf(told))).toBe(6)
  })

  test('[A4] a leave-out tells which need it is for', () => {
    const egg: Need = { code: 'milk', handling: 'leave-out', reason: null }
    const choice = choose('garden-chicken', { cheddar: 'no', 'yogurt-sauce': 'no' }, needs(egg))
    const cheddar = { placement: 'no', portions: 0, because: 'need' } as const
    const told = given(send({ ...choice, parts: { ...choice.parts, cheddar } }))
    expect(panIn(told, 'pan-cheddar')).toEqual({
      kind: 'no',
      because: 'need',
      leaveOut: ['milk'],
    })
    expect(panIn(told, 'pan-tuna')).toEqual({ kind: 'idle' })
  })

  test('[A5] level scoops and pieces count their portions; tongs and cups are one a portion', () => {
    const told = given(send(choose('bean-and-pepper', { beans: 3, slaw: 2, 'yogurt-sauce': 2 })))
    expect(panIn(told, 'pan-rice')).toMatchObject({ count: 2 })
    expect(panIn(told, 'pan-beans')).toMatchObject({ count: 3 })
    expect(panIn(told, 'pan-slaw')).toMatchObject({ count: 2 })
    expect(panIn(told, 'pan-yogurt-sauce')).toMatchObject({ count: 2 })
    const scoop = { tool: 'scoop', number: 16, level: 2, gPerCup: 200, source: 'made up' } as const
    expect(handCount(scoop, 4)).toBe(8)
    expect(handCount({ tool: 'piece', pieces: 3 }, 2)).toBe(6)
  })

  test('[A6] beside a keep-apart build every pan that isn’t declared free stays shut', () => {
    const told = given(send(withoutMilk()))
    expect(panIn(told, 'pan-cheddar')).toEqual({
      kind: 'away',
      leftOut: true,
      hazards: [{ code: 'milk', declared: 'contains' }],
    })
    const sesame = given(
      send(choose('bean-and-pepper', { slaw: 'no' }, needs(keepApart('sesame')))),
    )
    expect(panIn(sesame, 'pan-pita')).toEqual({
      kind: 'away',
      leftOut: false,
      hazards: [{ code: 'sesame', declared: 'may-contain' }],
    })
    const soy = given(send(choose('garden-chicken', { slaw: 'no' }, needs(keepApart('soy')))))
    expect(panIn(soy, 'pan-tuna')).toMatchObject({
      kind: 'away',
      hazards: [{ code: 'soy', declared: 'unknown' }],
    })
  })

  test('[A6] for each need there is, no pan that isn’t declared free is drawn as harmless', () => {
    const state = running(given())
    for (const code of NEED_CODES)
      for (const pan of pansOf(demoStation)) {
        const choice = choose('harbor-tuna', {}, needs(keepApart(code)))
        const drawn = panForBuild(state, pan, choice, null)
        const isFree = declaredBy(demoStation, pan.component, code).state === 'free'
        const shown = drawn.kind === 'away' || (drawn.kind === 'take' && drawn.hazards.length > 0)
        expect(shown, `${pan.id} and ${code}`).toBe(!isFree)
      }
  })

  test('[A7] on a keep-apart build a purplish handle isn’t drawn', () => {
    expect(panIn(given(send(withoutMilk())), 'pan-beans')).toMatchObject({ plainHandle: true })
    expect(panIn(given(send(plain())), 'pan-chicken')).toMatchObject({ plainHandle: false })
  })

  test('[A8] of several pans of a component the first that holds some is taken from', () => {
    const state = running(given(send(plain())))
    const wells = state.station.line.wells.map((well) => ({
      ...well,
      pans: well.pans.flatMap((pan) =>
        pan.id === 'pan-chicken' ? [pan, { ...pan, id: 'pan-chicken-2' }] : [pan],
      ),
    }))
    const held = state.pans['pan-chicken']
    if (!held) throw new Error('no chicken pan')
    const lit = (first: number) => {
      const { now } = assemblyView(
        {
          ...state,
          station: { ...state.station, line: { wells } },
          pans: {
            ...state.pans,
            'pan-chicken': { ...held, amount: first },
            'pan-chicken-2': held,
          },
        },
        null,
      )
      return ['pan-chicken', 'pan-chicken-2'].filter((id) => now?.pans[id]?.kind === 'take')
    }
    expect(lit(ofPortions('chicken', 1))).toEqual(['pan-chicken'])
    expect(lit(0)).toEqual(['pan-chicken-2'])
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
    const told = given(send(withoutMilk()))
    const same = onward(told, send(plain()))
    expect(nowOf(same).reads).toBe(nowOf(told).reads)
    const changed = onward(told, {
      type: 'change',
      ...at('1A'),
      to: choose(
        'bean-and-pepper',
        { cheddar: 'no', 'yogurt-sauce': 'no', slaw: 'no' },
        needs(keepApart('milk')),
      ),
    })
    expect(nowOf(changed).reads).not.toBe(nowOf(told).reads)
    const back = onward(changed, { type: 'change', ...at('1A'), to: withoutMilk() })
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
    given(send(plain()), send(plain()), start('1A'), {
      type: 'change',
      ...at('1A'),
      to: choose(
        'garden-chicken',
        { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 2 },
        { base: 'rice', ...needs(keepApart('milk')) },
      ),
    })

  test('[A12] it shows before all else, with what differs: needs first, then base and parts', () => {
    const { stopped, now } = view(changed())
    expect(stopped).toMatchObject({ name: '1A' })
    expect(stopped?.differences).toEqual([
      { what: 'need', need: keepApart('milk'), is: 'new' },
      { what: 'base', from: 'pita', to: 'rice' },
      ...(
        [
          ['cheddar', 'in', 1, 'no', 0],
          ['almonds', 'no', 0, 'in', 2],
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
