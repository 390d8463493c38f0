import { describe, expect, test } from 'vitest'
import type { StationForecast, Suggestion } from '#lib/estimate/station-forecast.ts'
import { notLastingOf, putOffOf, taskKey, tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { calmWords } from '#lib/rooms/advice/words/calm-en.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import {
  choose,
  type Given,
  given,
  happening,
  ofPortions,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const NOON = Date.parse('2026-11-25T18:00:00Z')
const at = (minutes: number): number => NOON + minutes * 60_000

const startChicken: Suggestion = {
  key: 'start-batch chicken',
  kind: 'start-batch',
  saves: 900,
  reason: {
    why: 'start-batch',
    component: 'chicken',
    loads: 2,
    portions: 24,
    chance: 0.83,
    by: { early: at(31), likely: at(38), late: at(44) },
    readyAt: at(22),
    latestStart: at(3),
    gapIfNow: 0.18,
    gapIfLater: 0.42,
    leftWith: 5.6,
    leftWithout: 0.2,
  },
}

const soldOutTuna: Suggestion = {
  key: 'sold-out tuna',
  kind: 'sold-out',
  saves: 1,
  reason: { why: 'sold-out', component: 'tuna', items: ['harbor-tuna'], behind: 0, nextAt: null },
}

const forecast = (over: Partial<StationForecast> = {}): StationForecast => ({
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

const correct = (component: string, portions: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, portions),
})

const tooWarm: Given = {
  type: 'readTemperature',
  what: 'pan',
  id: 'pan-tuna',
  reading: { tenths: 500, scale: 'F', probe: '1', where: 'middle-stirred' },
  initials: 'AB',
}

const keys = (told: Told, of: StationForecast | null) =>
  tasksOf(running(told), of, running(told).at).map(taskKey)

describe('what to do next', () => {
  test('[P27] a clock comes first, then the duties of safety, what is short, what is advised', () => {
    const jumped = happening(
      given(send(choose('garden-chicken')), tooWarm, correct('chicken', 0)),
      [{ type: 'clockJumped', byMs: -60_000 }],
      null,
    )
    const told = keys(jumped, forecast({ doNext: [startChicken] }))
    expect(told).toEqual([
      'confirm-clock',
      'safety out-of-limits pan pan-tuna',
      'short pan-chicken',
      'start-batch chicken',
    ])
  })

  test('[P27] in a rush nothing but safety, and what is short or sold out, is told of the pans', () => {
    const told = given(correct('slaw', 3), correct('tuna', 0))
    expect(keys(told, null)).toEqual(['sold-out pan-tuna', 'nearly-empty pan-slaw'])
    const rush = forecast({ rushUntil: at(20), doNext: [soldOutTuna] })
    expect(keys(told, rush)).toEqual(['sold-out tuna'])
  })

  test('[P28] what a forecast says of a pan is told in the place of its level', () => {
    const told = given(correct('cheddar', 3))
    expect(keys(told, null)).toEqual(['nearly-empty pan-cheddar'])
    expect(keys(told, forecast())).toEqual([])
  })

  test('[P28] a pan that is nearly empty is still asked for while more stands ready behind', () => {
    expect(keys(given(correct('chicken', 3)), forecast())).toEqual(['nearly-empty pan-chicken'])
  })

  test('[P28] sold out is told once, and not again after it was answered', () => {
    const told = given(correct('tuna', 0))
    expect(keys(told, forecast({ doNext: [soldOutTuna] }))).toEqual(['sold-out tuna'])
    const { key, kind, saves, reason } = soldOutTuna
    const answered = happening(told, [
      { type: 'adviceTold', key, kind, saves, reason },
      { type: 'adviceAnswered', key, answer: 'declined' },
    ])
    expect(keys(answered, forecast())).toEqual([])
  })
})

describe('what was put off', () => {
  const answered = (answer: 'put-off' | 'declined' | 'done') => {
    const { key, kind, saves, reason } = startChicken
    return running(
      happening(given(), [
        { type: 'adviceTold', key, kind, saves, reason },
        { type: 'adviceAnswered', key, answer },
      ]),
    )
  }
  const chicken = {
    lasting: 'wont-last',
    chance: 0.8,
    by: { early: at(31), likely: at(38), late: at(44) },
  } as NonNullable<StationForecast['components'][string]>
  const of = forecast({ candidates: [startChicken], components: { chicken } })
  const here = {
    name: () => 'Herb chicken',
    time: (moment: number) => new Date(moment).toISOString().slice(11, 16),
    now: NOON,
    making: () => null,
  }

  test('[P28] what was put off stays in sight until it is told again, what was done doesn’t', () => {
    const state = answered('put-off')
    const [one] = putOffOf(state, of, state.at)
    expect(one).toMatchObject({ key: 'start-batch chicken' })
    expect(putOffOf(state, of, one?.until ?? 0)).toEqual([])
    expect(putOffOf(state, forecast(), state.at), 'not worth doing any more').toEqual([])
    const declined = answered('declined')
    expect(putOffOf(declined, of, declined.at)).toMatchObject([{ until: null }])
    const done = answered('done')
    expect(putOffOf(done, of, done.at)).toEqual([])
  })

  test('[P28] what won’t last is said while nothing is to be done, with its answer', () => {
    const reason = startChicken.reason
    const putOff = [{ key: startChicken.key, reason, until: at(5) }]
    const said = (given: typeof putOff) =>
      notLastingOf(of, given).map((one) => calmWords.notLasting(one, here))
    expect(said(putOff)).toEqual(['Herb chicken won’t last 18:30–18:45; put off until 18:05.'])
    expect(said([])).toEqual(['Herb chicken won’t last 18:30–18:45.'])
    expect(notLastingOf(forecast(), [])).toEqual([])
    expect(putOff.map((one) => calmWords.putOffSaid(one, here))).toEqual([
      'Put off until 18:05: Start 2 loads of herb chicken',
    ])
  })
})

describe('what is sold out', () => {
  const backup: Given = {
    type: 'setBackup',
    component: 'pita',
    backup: 'back-up-pita',
    ready: true,
    amount: ofPortions('pita', 24),
  }

  test('[P39] has the one act that is possible: change, load, start, or none', () => {
    const gone = running(given(correct('pita', 0), correct('chicken', 0), correct('tuna', 0)))
    expect(refillOf(running(given(correct('pita', 0), backup)), 'pita')).toBe('change')
    expect(refillOf(gone, 'tuna')).toBe('load')
    const made = (remake: boolean) => ({
      ...gone,
      batches: {},
      backupPans: {},
      station: {
        ...gone.station,
        components: gone.station.components.map((one) =>
          one.id === 'chicken' && !remake ? { ...one, remake: null } : one,
        ),
      },
    })
    expect(refillOf(made(true), 'chicken')).toBe('start')
    expect(refillOf(made(false), 'chicken')).toBeNull()
  })

  test('[P39] and can’t be helped comes after a pan with one left and a back-up ready', () => {
    const told = running(given(correct('chicken', 0), correct('pita', 1), backup))
    const { 'back-up-chicken': _, ...backupPans } = told.backupPans
    const components = told.station.components.map((one) =>
      one.id === 'chicken' ? { ...one, remake: null } : one,
    )
    const none = { ...told, backupPans, batches: {}, station: { ...told.station, components } }
    expect(tasksOf(none, null, none.at).map(taskKey)).toEqual([
      'nearly-empty pan-pita',
      'sold-out pan-chicken',
    ])
  })
})

describe('its words', () => {
  const here = {
    name: (id: string) => ({ chicken: 'Herb chicken', tuna: 'Tuna salad' })[id] ?? id,
    time: (moment: number) => new Date(moment).toISOString().slice(11, 16),
    now: NOON,
    making: () => ({ minutes: 22, where: 'prep kitchen', who: 'prep cook' }),
  }

  test('[P36] a batch is advised with its reason in numbers', () => {
    expect(doNextWords.title(startChicken.reason, here)).toBe('Start 2 loads of herb chicken')
    expect(doNextWords.why(startChicken.reason, here)).toEqual([
      'May run out 18:30–18:45: 8 chances in 10.',
      'The first load on the line 18:22, in 22 min.',
      'Start now: 2 in 10 runs out first. In 5 min: 4 in 10.',
      'At close: 6 left, 0 without it.',
    ])
    expect(doNextWords.button(startChicken.reason)).toBe('Start 2 loads')
  })

  test('[B28] a batch that waits is told as one, and how it is missed', () => {
    const reason = {
      why: 'safety',
      what: 'reading-due',
      of: 'batch',
      id: 'b1',
      component: 'chicken',
      dueAt: at(30),
    } as const
    expect(doNextWords.title(reason, here)).toBe('Read the waiting herb chicken')
    expect(doNextWords.why(reason, here)).toEqual([
      'By 18:30. A batch whose reading is missed isn’t loaded.',
    ])
    const missed = { ...reason, what: 'reading-missed', dueAt: null } as const
    expect(doNextWords.title(missed, here)).toBe('The waiting herb chicken wasn’t read')
    expect(doNextWords.title({ ...reason, of: 'pan' }, here)).toBe(
      'Read the temperature: Herb chicken',
    )
  })

  test('[P36] keeping says how many, for which items, and what stays free', () => {
    const reason = {
      why: 'keep',
      component: 'tuna',
      chance: 0.7,
      by: { early: at(30), likely: null, late: null },
      forItems: ['Harbor tuna'],
      withoutIt: [],
      keep: 4,
      free: 2,
    } as const
    expect(doNextWords.title(reason, here)).toBe('Save 4 tuna salad for Harbor tuna')
    expect(doNextWords.why(reason, here)).toEqual([
      'May run out from 18:30: 7 chances in 10. It can’t be made again today.',
      '2 stay free for all others.',
    ])
  })
})

describe('nothing to do', () => {
  const here = {
    name: (id: string) => id,
    time: (moment: number) => `${(moment - NOON) / 60_000}`,
    now: NOON,
    making: () => null,
  }
  const by = { early: null, likely: null, late: null }
  const lasting = (of: 'enough' | 'wont-last') => ({ lasting: of, by, chance: 0.9 }) as never
  const said = (over: Partial<StationForecast>) =>
    calmWords
      .calm(
        { rushUntil: over.rushUntil ?? null, notLasting: notLastingOf(forecast(over), []) },
        here,
      )
      .join(' ')

  test('[P37] in a rush says what won’t last, until when suggestions wait, and what still comes', () => {
    const words = said({
      rushUntil: at(15),
      components: { chicken: lasting('wont-last'), rice: lasting('enough') },
    })
    expect(words).toContain('chicken won’t last.')
    expect(words).toContain('suggestions wait until then')
    expect(words).toContain('Rush until 15')
    expect(words).toMatch(/sold out, to be read or to be thrown out still comes/)
    expect(words).not.toContain('rice')
    expect(said({ rushUntil: at(15) })).not.toContain('won’t last')
  })

  test('[P37] never says that all pans are well beside what won’t last', () => {
    const plain = said({})
    expect(plain).toContain('Every pan holds')
    expect(said({ components: { chicken: lasting('wont-last') } })).not.toContain(plain)
    expect(calmWords.calm({ rushUntil: null, notLasting: notLastingOf(null, []) }, here)).toEqual([
      plain,
    ])
  })
})
