import { describe, expect, it } from 'vitest'
import type { Checker, Finding } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import { keyOf, type StockKind } from '#lib/service/held-stock.ts'
import type { Build, HadBefore, RunningState } from '#lib/service/state.ts'
import { guestsToFind } from '#lib/spine/consequences/guests-to-find.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { asked, buildWith, stockWith, touched } from '#tests/support/happened.ts'
import {
  buildIn,
  choose,
  type Given,
  needs,
  at as of,
  ready,
  running,
  send,
} from '#tests/support/service.ts'

const MILK: Need = { code: 'milk', handling: 'keep-apart', reason: 'allergy' }
const EGG: Need = { code: 'egg', handling: 'leave-out', reason: null }
const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const WITHOUT_MILK = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const

/** 1A was handed over to a guest who keeps milk apart. */
const told = ready(
  send(choose('garden-chicken', WITHOUT_MILK, needs(MILK))),
  { type: 'start', ...of('1A'), read: true },
  on('1A', 'finish'),
  on('1A', 'handOver'),
)
const over = running(told)
const build = buildIn(told, '1A')
const { choice, took, takes, since: leftAt } = build
const without = (...list: Need[]): BuildChoice => ({ ...choice, needs: list })

const contains = (component = 'chicken'): Finding => ({
  component,
  need: 'milk',
  handling: 'keep-apart',
  why: 'contains',
  level: 'no',
  through: [],
  touches: null,
  reached: [],
  states: { [component]: 'contains' },
  contact: null,
})
const contact: Finding = {
  ...contains(),
  why: 'contact',
  touches: 'cheddar',
  reached: ['cheddar'],
  states: { chicken: 'free', cheddar: 'contains' },
  contact: 'scoop',
}
type Found = readonly Finding[] | null
/** A checker that finds this, and has no answer where that is null. */
const finding =
  (found: (...of: Parameters<Checker>) => Found): Checker =>
  (...of) => {
    const findings = found(...of)
    if (!findings) throw new Error('no answer')
    return { level: findings.length > 0 ? 'no' : 'ok', findings, fromBackup: [] }
  }

const relabelled = (state: RunningState): RunningState => ({
  ...state,
  station: { ...state.station },
})
const soiled = (state: RunningState, id = 'pan-slaw', what: StockKind = 'pan'): RunningState =>
  stockWith(state, id, { soiledBy: ['cheddar'] }, what)

/** After a label: what was found of food by the one before, and what is found of it by this one. */
const byLabel = (
  then: Found,
  found: (...of: Parameters<Checker>) => Found,
  state: RunningState = over,
) =>
  asked(guestsToFind, state, relabelled(state), [], {
    checker: finding((...of) => (of[0].station === state.station ? then : found(...of))),
  })
/** After a scoop went into a pan of the line. */
const byScoop = (found: (...of: Parameters<Checker>) => Found, state: RunningState = over) =>
  asked(guestsToFind, state, soiled(state), [], {
    checker: finding((...of) => (of[0].soiled.length === 0 ? [] : found(...of))),
  })
const held = (reason: string) => ({ type: 'buildHeld', ticket: 1, letter: 'A', reason })

describe('a guest who has food in whose way something stands', () => {
  it('[S80] is to be found where that didn’t stand there before', () => {
    const of = (then: Found, now: Found) => byLabel(then, () => now)
    const [one, other] = [contains(), contains('slaw')]
    expect(of([], [one])).toEqual([held('label')])
    expect(of([other], [one])).toEqual([held('label')])
    expect(of([one], [one, other])).toEqual([held('label')])
    expect(of([], [])).toEqual([])
    expect(of([one], [one])).toEqual([])
    expect(of([one, other], [one])).toEqual([])
    expect(of([one], [])).toEqual([])
  })

  it('[S80] is to be found where nobody knows, or knew and something does now', () => {
    const of = (then: Found, now: Found) => byLabel(then, () => now)
    expect(of([], null)).toEqual([held('label')])
    expect(of(null, null)).toEqual([held('label')])
    expect(of(null, [contains()])).toEqual([held('label')])
    expect(of(null, [])).toEqual([])
    // One thing, found by one of the ways in which it may have been taken.
    const one = buildWith(over, '1A', { took: [], behind: ['slaw'] })
    const ofLine = (...[, , , from]: Parameters<Checker>) =>
      from?.slaw === 'line' ? [contains('slaw')] : []
    expect(byLabel(null, ofLine, one)).toEqual([held('label')])
  })

  it('[S172] is to be found again once it is declared worse', () => {
    const warned: Finding = {
      ...contains(),
      why: 'may-contain',
      states: { chicken: 'may-contain' },
    }
    const worse: Finding = { ...warned, states: { chicken: 'contains' } }
    expect(byLabel([warned], () => [worse])).toEqual([held('label')])
    expect(byLabel([worse], () => [warned])).toEqual([])
  })

  it('[S88] is told a label, a need or what touched what', () => {
    expect(byScoop(() => [contact])).toEqual([held('contact')])
    expect(byScoop(() => [contact, contains('slaw')])).toEqual([held('label')])
    expect(byScoop(() => null)).toEqual([held('contact')])
    expect(byLabel([], () => [contact])).toEqual([held('label')])
    const late = buildWith(over, '1A', { told: true })
    expect(byScoop(() => [contact], late)).toEqual([held('need')])
  })

  it('[S80] is looked for once, and never without needs or before they have it', () => {
    const of = (over: Partial<Build>) =>
      byLabel([], () => [contains()], buildWith(running(told), '1A', over))
    const hold = { reason: 'need', at: 1, told: null } as const
    const stop = { reason: 'cancel', at: 1, to: null } as const
    expect(of({})).toHaveLength(1)
    for (const other of [
      { hold },
      { stop },
      { hold, stop },
      { state: 'made' },
      { choice: without() },
    ] as const)
      expect([other, of(other)]).toEqual([other, []])
  })
})

describe('food that was handed over', () => {
  /** Only the back-up pans of the one state stand ready, by which this checker finds something. */
  const news = (before: RunningState, after: RunningState) =>
    asked(guestsToFind, before, { ...after, backups: {} }, [], {
      checker: finding(({ ready }) => (ready.length === 0 ? [contains()] : [])),
    }).length

  it('[S80] is the same whatever is done on the line', () => {
    for (const slice of ['pans', 'backupPans'] as const)
      expect([slice, news(over, touched(over, slice))]).toEqual([slice, 0])
    const so = soiled(soiled(over), 'back-up-slaw', 'backup')
    expect(news(so, touched(touched(so, 'pans'), 'backupPans'))).toBe(0)
    const { 'pan-tuna': _, ...pans } = over.pans
    expect(news({ ...over, pans }, over)).toBe(0)
    expect(news(over, { ...over, pans })).toBe(0)
  })

  it('[S81] is asked about once a foreign scoop is told of a pan, or of one behind', () => {
    expect(news(over, soiled(over))).toBe(1)
    expect(news(over, soiled(over, 'back-up-slaw', 'backup'))).toBe(1)
    const { 'pan-slaw': _, ...pans } = over.pans
    expect(news({ ...over, pans }, soiled(over))).toBe(1)
    const two = stockWith(over, 'pan-slaw', { soiledBy: ['cheddar', 'almonds'] })
    expect(news(soiled(over), two)).toBe(1)
    expect(news(over, relabelled(over))).toBe(1)
  })
})

describe('what a guest had of a build that was made again', () => {
  const had = (over: Partial<HadBefore> = {}): HadBefore => ({
    took,
    takes,
    since: leftAt,
    ...over,
  })
  /** 1A is being made again, out of a back-up pan as far as anybody noted it. */
  const again = (over: Partial<Build>, ...all: HadBefore[]): RunningState =>
    buildWith(running(told), '1A', { state: 'making', took: [], had: all, ...over })
  const found = (over: Partial<HandedOverFound> = {}) => ({
    type: 'handedOverFound',
    what: 'build',
    id: '1A',
    because: 'label',
    since: leftAt,
    builds: [{ build: '1A', at: leftAt }],
    ...over,
  })
  const any = () => [contains()]

  it('[S176] is on a list of its own, whatever became of the build', () => {
    for (const state of ['waiting', 'making', 'made', 'cancelled'] as const)
      expect([state, byLabel([], any, again({ state }, had()))]).toEqual([state, [found()]])
    expect(byLabel([], () => null, again({}, had()))).toEqual([found()])
    expect(byLabel([], () => [], again({}, had()))).toEqual([])
    expect(byLabel([contains()], any, again({}, had()))).toEqual([])
    expect(byLabel([], any, again({}))).toEqual([])
  })

  it('[S176] is found beside what they have now, and where nothing is found of that', () => {
    const both = again({ state: 'handed-over' }, had({ choice: without(EGG) }))
    expect(byLabel([], any, both)).toEqual([held('label'), found()])
    const ofEgg: Checker = finding((...[, , asked]) =>
      asked.some(({ code }) => code === 'egg') ? [contains()] : [],
    )
    const checker: Checker = (...of) =>
      of[0].station === both.station ? finding(() => [])(...of) : ofEgg(...of)
    expect(asked(guestsToFind, both, relabelled(both), [], { checker })).toEqual([found()])
  })

  it('[S176] is judged by the pans that it came from, not by those of the build', () => {
    const load = over.backupPans['back-up-slaw']?.load ?? 0
    const behind = took
      .filter(({ pan }) => pan === 'pan-slaw')
      .map((taking) => ({ ...taking, pan: 'back-up-slaw', load }))
    const slaw =
      (from: 'line' | 'backup') =>
      (...of: Parameters<Checker>) =>
        of[3]?.slaw === from ? [contains('slaw')] : []
    const line = took.map((one) => (one.pan === 'back-up-slaw' ? { ...one, pan: 'pan-slaw' } : one))
    const ofLine = again({ took: behind, behind: ['slaw'] }, had({ took: line }))
    expect(byLabel([], slaw('line'), ofLine)).toEqual([found()])
    expect(byLabel([], slaw('backup'), ofLine)).toEqual([])
    const ofBackup = again({ took: line }, had({ took }))
    expect(byLabel([], slaw('backup'), ofBackup)).toEqual([found()])
    expect(byLabel([], slaw('line'), ofBackup)).toEqual([])
  })

  it('[S177] is judged by all that is known of them by now', () => {
    const ofMilk = (over: Partial<Build>, was: BuildChoice = without()) =>
      byLabel(
        [],
        (_, __, asked) => (asked.some(({ code }) => code === 'milk') ? any() : []),
        again(over, had({ choice: was })),
      )
    const stop = (to: BuildChoice) =>
      ({ reason: 'change', at: 1, to: { ...build, choice: to } }) as const
    expect(ofMilk({})).toEqual([found()])
    expect(ofMilk({ choice: without() })).toEqual([])
    expect(ofMilk({ choice: without() }, choice)).toEqual([found()])
    expect(ofMilk({ choice: without(EGG) }, choice)).toEqual([found()])
    expect(ofMilk({ stop: stop(without()) })).toEqual([found()])
    expect(ofMilk({ choice: without(), stop: stop(choice) })).toEqual([found()])
    const hold = { reason: 'need', at: 1, told: { asked: 'needs', needs: [MILK] } } as const
    expect(ofMilk({ choice: without(), hold })).toEqual([found()])
    expect(byLabel([], any, again({}, had()))).toEqual([found()])
  })

  const EARLIER = leftAt - 50
  const earlier = had({ since: EARLIER, choice: without(EGG) })
  const ofEgg = (asked: readonly Need[]): boolean => asked.some(({ code }) => code === 'egg')
  const one = { build: '1A', at: leftAt }
  const before = { build: '1A', at: EARLIER }

  it('[S178] says the label where any of it is found by that', () => {
    for (const all of [
      [earlier, had()],
      [had(), earlier],
    ] as const) {
      const builds = all.map(({ since }) => ({ build: '1A', at: since }))
      const scooped = (found: (asked: readonly Need[]) => readonly Finding[]) =>
        byScoop((_, __, asked) => found(asked), again({}, ...all))
      const list = { since: EARLIER, builds }
      expect(scooped((asked) => [ofEgg(asked) ? contains() : contact])).toEqual([found(list)])
      expect(scooped(() => [contact])).toEqual([found({ ...list, because: 'contact' })])
    }
  })

  const listed = (state: RunningState, over: Partial<HandedOverFound>): RunningState => {
    const { type: _, ...entry } = found(over)
    return { ...state, toTell: { [keyOf('build', '1A')]: entry as HandedOverFound } }
  }

  it('[S178] stays listed, and worse is said of it once', () => {
    const touch = { because: 'contact' } as const
    const state = again({}, had())
    expect(byScoop(() => [contact], listed(state, touch))).toEqual([])
    expect(byScoop(any, listed(state, touch))).toEqual([found()])
    expect(byScoop(any, listed(state, {}))).toEqual([])
    expect(byScoop(() => [contact], listed(state, {}))).toEqual([])
    expect(byScoop(() => [], listed(state, touch))).toEqual([])
  })

  it('[S178] is listed beside what was, since the earlier of both', () => {
    const state = again({}, had(), earlier)
    const touch = () => [contact]
    const next = (over: Partial<HandedOverFound>) => byScoop(touch, listed(state, over))
    expect(next({ because: 'contact' })).toEqual([
      found({ because: 'contact', since: EARLIER, builds: [one, before] }),
    ])
    expect(next({ since: EARLIER, builds: [before] })).toEqual([
      found({ since: EARLIER, builds: [before, one] }),
    ])
    expect(next({ builds: [one, before] })).toEqual([])
  })
})
