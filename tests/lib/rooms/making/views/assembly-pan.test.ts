import { describe, expect, test } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { judgeComponent } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { type AssemblyView, assemblyView } from '#lib/rooms/making/views/assembly.ts'
import { handCount, type PanForBuild, panForBuild } from '#lib/rooms/making/views/assembly-pan.ts'
import type { NowBuild } from '#lib/rooms/making/views/now-build.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { askableAllergens } from '#lib/station/codes/askable.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import { pansOf } from '#lib/station/find.ts'
import {
  changePan,
  choose,
  demoStation,
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

const panOf = (state: RunningState, id: string, choice: BuildChoice): PanForBuild => {
  const pan = pansOf(state.station).find((one) => one.id === id)
  if (!pan) throw new Error(`no pan ${id}`)
  return panForBuild(state, pan, choice, null)
}

const WITH = { placement: 'in', portions: 1, because: 'asked' } as const
const plain = () => choose('garden-chicken')
const withoutMilk = (): BuildChoice =>
  choose(
    'bean-and-pepper',
    { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' },
    needs(keepApart('milk')),
  )

describe('the line for one build', () => {
  test('[A4] a pan is taken from, on the side, left out with why, or none of its business', () => {
    const told = given(send(choose('garden-chicken', { cheddar: 'no', 'yogurt-sauce': 'side' })))
    expect(panIn(told, 'pan-chicken')).toMatchObject({ kind: 'take', count: 1, onTheSide: false })
    expect(panIn(told, 'pan-yogurt-sauce')).toMatchObject({ kind: 'take', onTheSide: true })
    expect(panIn(told, 'pan-cheddar')).toMatchObject({ kind: 'no', because: 'asked' })
    expect(panIn(told, 'pan-rice')).toEqual({ kind: 'idle' })
    expect(panIn(told, 'pan-almonds')).toEqual({ kind: 'idle' })
    const wide = Object.values(nowOf(told).pans).filter(({ kind }) => kind !== 'idle')
    expect(wide).toHaveLength(6)
  })

  test('[A4] what there was none of for it is sold out, or not selling where that is our choice', () => {
    const cheddar = { placement: 'no', portions: 0, because: 'gone' } as const
    const usual = choose('garden-chicken')
    const sent = send({ ...usual, parts: { ...usual.parts, cheddar } })
    expect(panIn(given(sent), 'pan-cheddar')).toMatchObject({ kind: 'no', because: 'gone' })
    const stop = { type: 'stopSelling', what: 'component', id: 'cheddar' } as const
    const stopped = panIn(given(sent, stop), 'pan-cheddar')
    expect(stopped).toMatchObject({ kind: 'no', because: 'not-selling' })
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
    const told = ready(send(withoutMilk()))
    expect(panIn(told, 'pan-cheddar')).toEqual({
      kind: 'away',
      leftOut: true,
      hazards: [{ code: 'milk', why: 'contains', touches: null }],
    })
    const state = running(told)
    const sesame = choose('garden-chicken', { slaw: 'no' }, needs(keepApart('sesame')))
    expect(panOf(state, 'pan-pita', { ...sesame, base: 'rice' })).toMatchObject({
      kind: 'away',
      leftOut: false,
      hazards: [{ code: 'sesame', why: 'may-contain', touches: null }],
    })
    const soy = choose('garden-chicken', { slaw: 'no' }, needs(keepApart('soy')))
    expect(panOf(state, 'pan-tuna', soy)).toMatchObject({
      kind: 'away',
      hazards: [{ code: 'soy', why: 'unknown' }],
    })
  })

  test('[A6] what only shares contact stays shut too, and says with what', () => {
    const told = ready(send(withoutMilk()))
    expect(panIn(told, 'pan-tuna')).toEqual({
      kind: 'away',
      leftOut: false,
      hazards: [{ code: 'milk', why: 'contact', touches: 'Cheddar' }],
    })
    expect(panIn(told, 'pan-chicken')).toEqual({ kind: 'idle' })
    const soiled = onward(told, { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })
    const chicken = panOf(running(soiled), 'pan-chicken', withoutMilk())
    expect(chicken).toMatchObject({
      kind: 'away',
      hazards: [
        { code: 'milk', why: 'soiled', touches: 'Cheddar' },
        { code: 'milk', why: 'contact', touches: 'Cheddar' },
      ],
    })
  })

  test('[A6] for each need there is, no pan that isn’t declared free is drawn as harmless', () => {
    const states = [running(given()), running(ready())]
    for (const state of states)
      for (const code of [...askableAllergens(demoStation), ...DIETS])
        for (const pan of pansOf(demoStation)) {
          const need = keepApart(code)
          const choice = choose('harbor-tuna', {}, needs(need))
          const drawn = panForBuild(state, pan, choice, null)
          const isFree = declaredBy(demoStation, pan.component, code).state === 'free'
          const touched = judgeComponent({ ...kitchenOf(state), ready: [] }, pan.component, [
            need,
          ]).level
          const shown =
            drawn.kind === 'away' ||
            (drawn.kind === 'take' && (drawn.hazards.length > 0 || drawn.fromBackup))
          expect(shown, `${pan.id} and ${code}`).toBe(!isFree || touched !== 'ok')
        }
  })

  test('[A14] what comes from its protected back-up pan says so, and is named in the order', () => {
    const told = ready(send(withoutMilk()))
    expect(nowOf(told).backups).toEqual(['Sesame slaw'])
    expect(panIn(told, 'pan-slaw')).toMatchObject({ kind: 'take', fromBackup: true, hazards: [] })
    expect(panIn(told, 'pan-beans')).toMatchObject({ kind: 'take', fromBackup: false })
    const steps = assemblyEn.stepsFor(nowOf(told).backups)
    expect(steps.findIndex((step) => /wash/i.test(step))).toBeGreaterThan(
      steps.findIndex((step) => /last touch/i.test(step)),
    )
    expect(steps).toContain('Back-up pan: Sesame slaw')
    expect(assemblyEn.stepsFor([]).join()).not.toMatch(/back-up/i)
  })

  test('[A14] a back-up that is no longer ready holds the build, and isn’t drawn as one', () => {
    const told = onward(ready(send(withoutMilk())), {
      type: 'setBackup',
      component: 'slaw',
      ready: false,
    })
    expect(view(told).stopped?.held).toEqual({ reason: 'contact', scoops: [] })
    expect(panOf(running(told), 'pan-slaw', withoutMilk())).toMatchObject({
      kind: 'take',
      fromBackup: false,
      hazards: [{ why: 'contact', touches: 'Cheddar' }],
    })
  })

  test('[A15] an accepted caution is shown on the pan and its reason on the build; no other is', () => {
    const choice = { ...withoutMilk(), parts: { ...withoutMilk().parts, almonds: WITH } }
    const accepted = ready({ type: 'acceptCaution', build: choice, reason: 'label-read' })
    const told = onward(accepted, send({ ...choice, caution: 1 }))
    expect(nowOf(told).accepted).toBe('label-read')
    expect(panIn(told, 'pan-almonds')).toMatchObject({
      kind: 'take',
      hazards: [],
      accepted: [{ code: 'milk', why: 'contact' }],
    })
    expect(panOf(running(told), 'pan-almonds', choice)).toMatchObject({
      hazards: [{ code: 'milk', why: 'contact' }],
      accepted: [],
    })
    expect(nowOf(ready(send(withoutMilk()))).accepted).toBeNull()
  })

  test('[A16] a soiled pan names what went in until it is changed', () => {
    const told = given(send(plain()), { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })
    expect(view(told).soiled).toEqual({
      'pan-chicken': ['Cheddar'],
      'pan-cheddar': ['Herb chicken'],
    })
    const changed = onward(told, changePan('pan-chicken', ofPortions('chicken', 10)))
    expect(view(changed).soiled).toEqual({ 'pan-cheddar': ['Herb chicken'] })
  })

  test('[A17] where needs can’t be checked every pan stays shut and it isn’t made', () => {
    const state = running(ready(send(withoutMilk()), send(plain())))
    const contacts = [{ id: 'x', kind: 'scoop' as const, components: ['slaw', 'nothing'] }]
    const damaged = { ...state, station: { ...state.station, contacts } }
    const { now } = assemblyView(damaged, null)
    expect(now?.checked).toBe(false)
    expect(new Set(Object.values(now?.pans ?? {}).map((pan) => pan.kind))).toEqual(
      new Set(['away']),
    )
    expect(assemblyView(damaged, '2A').now?.checked).toBe(true)
  })

  test('[A7] on a keep-apart build a purplish handle isn’t drawn', () => {
    expect(panIn(ready(send(withoutMilk())), 'pan-beans')).toMatchObject({ plainHandle: true })
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
