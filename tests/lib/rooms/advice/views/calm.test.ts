import { describe, expect, test } from 'vitest'
import type { BatchVerdict } from '#lib/estimate/batch-timing.ts'
import type { ComponentForecast, StationForecast } from '#lib/estimate/station-forecast.ts'
import { calmOfLead } from '#lib/rooms/advice/views/calm.ts'
import { calmWords } from '#lib/rooms/advice/words/calm-en.ts'
import { given, happening, running, type Told } from '#tests/support/service.ts'

const NOON = Date.parse('2026-11-25T18:00:00Z')
const at = (minutes: number): number => NOON + minutes * 60_000

const here = {
  name: (id: string) => (id === 'chicken' ? 'Herb chicken' : id),
  time: (moment: number) => `${(moment - NOON) / 60_000}`,
  now: NOON,
  making: () => null,
}

const component = (
  lasting: ComponentForecast['lasting'],
  over: Partial<ComponentForecast> = {},
): ComponentForecast => ({
  lasting,
  chance: lasting === 'enough' ? 0.01 : 0.9,
  beforeNextBatch: null,
  by: { early: null, likely: null, late: null },
  left: { mean: 4, sd: 1 },
  wanted: { mean: 9, sd: 3 },
  underway: [],
  batch: null,
  keep: null,
  bias: null,
  ...over,
})

const planned = (verdict: BatchVerdict): Partial<ComponentForecast> => ({
  batch: {
    verdict,
    loads: 0,
    portions: 0,
    readyAt: at(24),
    latestStart: null,
    gapIfNow: 0.6,
    gapIfLater: 0.7,
    leftWith: 3,
    leftWithout: 0,
    saves: 0,
    where: 'prep kitchen',
    who: 'prep cook',
    minutes: 24,
  },
})

const forecast = (over: Partial<StationForecast>): StationForecast => ({
  service: 's-lunch',
  position: 1,
  at: NOON,
  closesAt: at(60),
  closesSaid: true,
  rushUntil: null,
  components: {},
  wait: null,
  candidates: [],
  doNext: [],
  ...over,
})

const said = (over: Partial<StationForecast> | null, told: Told = given()) => {
  const calm = calmOfLead(running(told), over && forecast(over), NOON)
  return { title: calmWords.title(calm, here), why: calmWords.calm(calm, here).join(' ') }
}

const NOTHING = 'Nothing to do'

describe('nothing to do', () => {
  test('[P37] in a rush says what won’t last, until when suggestions wait, and what still comes', () => {
    const { title, why } = said({
      rushUntil: at(15),
      components: { chicken: component('wont-last'), rice: component('enough') },
    })
    expect(title).toBe('Herb chicken won’t last')
    expect(why).toContain('Herb chicken: won’t last; it can’t be made again today.')
    expect(why).toContain('Rush until 15: suggestions wait until then')
    expect(why).toMatch(/sold out, to be read or to be thrown out still comes/)
    expect(why).not.toContain('rice')
    const quiet = said({ rushUntil: at(15) })
    expect(quiet.why).not.toContain('won’t last')
    expect(quiet.title).not.toContain(NOTHING)
  })

  test('[P37][P56] is said only where nothing is open', () => {
    expect(said(null)).toEqual({
      title: NOTHING,
      why: 'Every pan holds a quarter or more, and the pans fill every build.',
    })
    const well = said({ components: { chicken: component('enough') } })
    expect(well).toEqual({
      title: NOTHING,
      why: 'The pans fill every build, and each lasts until close.',
    })
    const three = said({
      components: {
        chicken: component('wont-last'),
        rice: component('tight'),
        beans: component('wont-last'),
        slaw: component('enough'),
      },
    })
    expect(three.title).toBe('3 may not last')
    expect(three.why).not.toMatch(/Every pan|each lasts|slaw/)
  })

  test('[P56] is not said beside what is gone, though nothing can be done about it', () => {
    const gone = given({ type: 'correct', pan: 'pan-almonds', amount: 0 })
    const { title, why } = said({ components: { chicken: component('enough') } }, gone)
    expect(title).not.toBe(NOTHING)
    expect(why).toBe('Sold out: almonds.')
    const ours = given(
      { type: 'correct', pan: 'pan-almonds', amount: 0 },
      { type: 'stopSelling', what: 'component', id: 'almonds' },
    )
    expect(said({ components: { chicken: component('enough') } }, ours).title).toBe(NOTHING)
  })

  test('[P56][Z39] tells what can be done: too late to start is told from the first minute', () => {
    const of = (over: Partial<ComponentForecast>) =>
      said({ components: { chicken: component('wont-last', over) } }).why
    expect(of(planned('too-late'))).toBe('Herb chicken: won’t last; too late to start more.')
    expect(of(planned('only-waste'))).toContain('would mostly be left over')
    expect(of(planned('wait'))).toContain('not yet time to start more')
    expect(of(planned('start'))).toContain('a load could be started now')
    const loads = { ...planned('wait'), underway: [{ at: at(12), portions: 12 }] }
    expect(of(loads)).toBe('Herb chicken: won’t last; more at 12.')
  })

  test('[P56] names what was put off', () => {
    const suggestion = {
      key: 'start-batch chicken',
      kind: 'start-batch',
      saves: 100,
      reason: {
        why: 'start-batch',
        component: 'chicken',
        loads: 1,
        portions: 12,
        chance: 0.5,
        by: { early: null, likely: null, late: null },
        readyAt: at(22),
        latestStart: null,
        gapIfNow: 0.1,
        gapIfLater: 0.2,
        leftWith: 1,
        leftWithout: 0,
      },
    } as const
    const { key, kind, saves, reason } = suggestion
    const told = happening(given(), [
      { type: 'adviceTold', key, kind, saves, reason },
      { type: 'adviceAnswered', key, answer: 'declined' },
    ])
    const lasting = said(
      { components: { chicken: component('wont-last') }, candidates: [suggestion] },
      told,
    )
    expect(lasting.why).toBe('Herb chicken: won’t last; you said no.')
    const enough = said(
      { components: { chicken: component('enough') }, candidates: [suggestion] },
      told,
    )
    expect(enough).toEqual({
      title: 'The rest was put off',
      why: 'You said no: Start 1 load of herb chicken.',
    })
  })
})
