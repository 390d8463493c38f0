import { describe, expect, it } from 'vitest'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { serviceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { inventedSolution } from '#lib/rooms/food/facts/sanitizer.ts'
import { SANITIZERS, sanitizerProblem } from '#lib/safety/sanitizer.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, minute, whenAt } from '#tests/support/food.ts'
import {
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  given,
  happening,
  openedService,
  refusalOf,
  running,
  type Told,
} from '#tests/support/service.ts'

type Asked = NonNullable<StationDocument['safety']['sanitizer']>

const HOUR = 60
const chlorine: Asked = { kind: 'chlorine', everyMin: 60, label: null }
const asking = (sanitizer?: Asked): StationDocument => {
  const { sanitizer: _, ...safety } = demoStation.safety
  return { ...demoStation, safety: { ...safety, ...(sanitizer ? { sanitizer } : {}) } }
}
/** Opened, with no rush, and nothing read. */
const on = (station: StationDocument): Told => {
  const told = openedService()
  return { ...told, state: { ...running(told), station, rushes: [] } }
}
const strip = (over: Partial<Extract<Given, { type: 'readSanitizer' }>> = {}): Given => ({
  type: 'readSanitizer',
  mgPerL: 100,
  water: { tenths: 750, scale: 'F' },
  ph: null,
  initials: 'KT',
  ...over,
})
const unread = on(asking(chlorine))
const seen = (told: Told) => running(told).sanitizer
const duties = (told: Told, minutes: number) =>
  safetyDue(running(told), minute(minutes)).flatMap(({ reason }) =>
    reason.why === 'safety' && reason.of === 'sanitizer' ? [[reason.what, reason.dueAt]] : [],
  )

describe('the sanitizer', () => {
  it('[F75] is written down with what was read, and what is wrong with it', () => {
    expect(eventsOf(whenAt(unread, 5, strip()))).toEqual([
      {
        type: 'sanitizerRead',
        kind: 'chlorine',
        mgPerL: 100,
        water: { tenths: 750, scale: 'F' },
        ph: null,
        problem: null,
      },
    ])
    expect(seen(at(unread, 5, strip()))).toMatchObject({
      mgPerL: 100,
      problem: null,
      at: minute(5),
    })
    expect(seen(at(unread, 5, strip({ water: null })))?.problem).toBe('water-not-read')
    expect(seen(at(unread, 5, strip({ mgPerL: 50 })))?.problem).toBe('water-too-cold')
    expect(seen(at(unread, 5, strip({ mgPerL: 50, ph: 8 })))?.problem).toBeNull()
    expect(seen(at(unread, 5, strip({ mgPerL: 10 })))?.problem).toBe('too-weak')
  })

  it('[F75] is judged by its label, and quaternary ammonium by nothing else', () => {
    const quaternary: Asked = { ...chlorine, kind: 'quaternary-ammonium' }
    const unlabelled = on(asking(quaternary))
    expect(seen(at(unlabelled, 5, strip({ mgPerL: 200 })))?.problem).toBe('label-not-read')
    const label = { leastMgPerL: 150, mostMgPerL: 400, mostPh: null }
    const labelled = on(asking({ ...quaternary, label }))
    expect(seen(at(labelled, 5, strip({ mgPerL: 200 })))?.problem).toBeNull()
  })

  it('[F75] isn’t read where the document doesn’t ask, nor without initials', () => {
    expect(codeOf(whenAt(on(asking()), 5, strip()))).toBe('not-read-here')
    const { initials: _, ...nobody } = strip() as Extract<Given, { type: 'readSanitizer' }>
    expect(codeOf(whenAt(unread, 5, nobody))).toBe('not-initialled')
  })

  it.each([
    [750, 'C', 'did-you-mean'],
    [240, 'F', 'did-you-mean'],
    [601, 'C', 'did-you-mean'],
    [1_401, 'F', 'cannot-be'],
    [-10, 'C', 'cannot-be'],
    [99_999, 'F', 'cannot-be'],
  ] as const)('[F75] in water of %s tenths °%s is asked about: %s', (tenths, scale, code) => {
    expect(refusalOf(whenAt(unread, 5, strip({ water: { tenths, scale } })))).toMatchObject({
      code: 'reading-asked',
      question: { code },
    })
  })

  it.each([
    [320, 'F'],
    [1_400, 'F'],
    [0, 'C'],
    [600, 'C'],
  ] as const)('[F75] in water of %s tenths °%s is taken', (tenths, scale) => {
    expect(codeOf(whenAt(unread, 5, strip({ water: { tenths, scale } })))).toBeNull()
  })

  it('[F76] is due from the opening on, and so often as the document says', () => {
    expect(duties(on(asking()), 5)).toEqual([])
    expect(duties(unread, 0)).toEqual([['reading-due', running(unread).openedAt]])
    const good = at(unread, 5, strip())
    expect(duties(good, 6)).toEqual([])
    expect(duties(good, 5 + HOUR - 11)).toEqual([])
    expect(duties(good, 5 + HOUR - 10)).toEqual([['reading-due', minute(5 + HOUR)]])
    expect(duties(good, 5 + 3 * HOUR)).toEqual([['reading-due', minute(5 + HOUR)]])
  })

  it('[F76] ahead of a rush', () => {
    const good = at(unread, 5, strip())
    const rushes = [{ from: minute(HOUR), to: minute(HOUR + 20) }]
    const rushed = { ...good, state: { ...running(good), rushes } }
    expect(duties(rushed, HOUR - 10)).toEqual([['reading-due', minute(HOUR)]])
  })

  it('[F76] out of its limit is due at once, until it was made anew, and takes nothing off sale', () => {
    const bad = at(unread, 5, strip({ mgPerL: 10 }))
    expect(duties(bad, 5)).toEqual([['out-of-limits', null]])
    expect(bad.events.slice(unread.events.length).map(({ type }) => type)).toEqual([
      'sanitizerRead',
    ])
    expect(duties(at(bad, 9, strip()), 9)).toEqual([])
  })

  it('[F76] comes behind food that is off sale', () => {
    const bad = at(given(), 20, strip({ mgPerL: 10 }), {
      type: 'readTemperature',
      id: 'pan-rice',
      reading: {
        tenths: 1200,
        scale: 'F',
        probe: 'p1',
        where: 'middle-stirred',
      },
      initials: 'KT',
    })
    const all = [...safetyDue(running(bad), minute(20))].sort((a, b) => b.saves - a.saves)
    const of = all.map(({ key }) => key)
    expect(of.indexOf('safety out-of-limits pan pan-rice')).toBe(0)
    expect(of.indexOf('safety out-of-limits sanitizer @sanitizer')).toBe(1)
  })

  it('[F76] isn’t good for longer where the clock was set back', () => {
    const good = at(unread, 5, strip())
    const jumped = happening(good, [{ type: 'clockJumped', byMs: -HOUR * 60_000 }], null)
    const back = happening(jumped, [{ type: 'clockConfirmed' }], null)
    expect(seen(back)?.at).toBe(minute(5 - HOUR))
    expect(duties(back, 5)).toEqual([['reading-due', minute(5)]])
  })

  it('[F77] is in the service record: how often it was read, and was out of its limit', () => {
    const record = ({ state, events }: Told) =>
      serviceRecord(running({ state, events }), events).sanitizer
    expect(record(unread)).toEqual({ read: 0, out: 0 })
    const read = at(at(unread, 5, strip({ mgPerL: 10 })), 9, strip())
    expect(record(read)).toEqual({ read: 2, out: 1 })
    expect(record(on(asking()))).toBeUndefined()
  })

  it('is invented for the demo as one that passes, where anything does', () => {
    const labels = [null, { leastMgPerL: 50, mostMgPerL: 150, mostPh: 5 }]
    for (const kind of SANITIZERS)
      for (const label of labels) {
        const solution = inventedSolution(asking({ ...chlorine, kind, label }))
        if (!solution) throw new Error('nobody asks')
        const isTooStrong = kind === 'iodine' && label !== null
        expect(isTooStrong || sanitizerProblem({ kind, ...solution }, label)).toBe(
          isTooStrong || (kind === 'quaternary-ammonium' && !label ? 'label-not-read' : null),
        )
      }
    expect(inventedSolution(asking())).toBeNull()
  })
})
