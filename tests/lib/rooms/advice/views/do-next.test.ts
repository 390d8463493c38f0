import { describe, expect, test } from 'vitest'
import type { StationForecast, Suggestion } from '#lib/estimate/station-forecast.ts'
import { notLastingOf, putOffOf } from '#lib/rooms/advice/views/calm.ts'
import { taskKey, tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { calmWords } from '#lib/rooms/advice/words/calm-en.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { roundTaskWords } from '#lib/rooms/advice/words/round-en.ts'
import { refillOf } from '#lib/rooms/pans/facts/refill.ts'
import {
  choose,
  type Given,
  given,
  happening,
  OPENED_AT,
  ofPortions,
  onward,
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
    underway: [],
    batch: null,
  } as unknown as NonNullable<StationForecast['components'][string]>
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
    expect(said(putOff)).toEqual([
      'Herb chicken: gone between 18:30 and 18:45; put off until 18:05.',
    ])
    expect(said([])).toEqual([
      'Herb chicken: gone between 18:30 and 18:45; it can’t be made again today.',
    ])
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
    expect(doNextWords.title({ ...reason, of: 'pan' }, here)).toBe('Read the herb chicken pan')
  })

  test('[P54] a sentence names the pan, the back-up pan or the batch that it means', () => {
    const out = {
      why: 'safety',
      what: 'out-of-limits',
      id: 'x',
      component: 'chicken',
      dueAt: null,
    } as const
    const said = (of: 'pan' | 'backup' | 'batch' | 'rest') =>
      doNextWords.title({ ...out, of }, here)
    expect(said('pan')).toBe('The herb chicken pan is out of its limits')
    expect(said('backup')).toBe('The herb chicken back-up pan is out of its limits')
    expect(said('batch')).toBe('The waiting herb chicken is out of its limits')
    const cooled = { ...out, of: 'batch', because: 'not-cooled' } as const
    expect(doNextWords.title(cooled, here)).toBe(
      'The waiting herb chicken isn’t shown to have cooled',
    )
    expect(doNextWords.why(cooled, here)[0]).toContain('A stage of its cooling wasn’t read in time')
    expect(doNextWords.shortly({ ...out, of: 'backup' }, here)).toBe(
      'The herb chicken back-up pan: out of limits, don’t serve',
    )
    expect(doNextWords.title({ ...out, what: 'throw-out', of: 'rest' }, here)).toBe(
      'Throw out the herb chicken that was taken off the line',
    )
  })

  test('[P55] why something is thrown out is the reason of that food', () => {
    const warm = given({
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: OPENED_AT,
      from: 'cold',
      rule: '6h',
      reading: { tenths: 380, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'AB',
    })
    const tooWarm: Given = {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-tuna',
      reading: {
        tenths: 750,
        scale: 'F',
        probe: '1',
        where: 'middle-stirred',
        scaleConfirmed: true,
      },
      initials: 'AB',
    }
    const [task] = tasksOf(running(onward(warm, tooWarm)), null, NOON)
    if (task?.kind !== 'advice') throw new Error('nothing is told')
    expect(doNextWords.title(task.advice.reason, here)).toBe('Throw out the tuna salad pan')
    expect(doNextWords.why(task.advice.reason, here)[0]).toMatch(
      /^It was read warmer than it may be on time alone\. It isn’t served/,
    )
    const whys = (['time', 'date', 'out-of-limits', 'taken-away', 'counted-empty'] as const).map(
      (because) => {
        const reason = { ...task.advice.reason, because } as typeof task.advice.reason
        return doNextWords.why(reason, here)[0]
      },
    )
    expect(new Set(whys).size).toBe(5)
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

describe('readings that are due', () => {
  const here = {
    name: (id: string) => id,
    time: (moment: number) => new Date(moment).toISOString().slice(11, 16),
    now: NOON,
    making: () => null,
  }
  const told = given({ type: 'signOn' })
  const by = (minutes: number) => ({ ...running(told), rushes: [], batches: {}, at: at(minutes) })

  test('[P57] are one thing to do, with their number and by when', () => {
    const state = by(-5)
    const [first, ...rest] = tasksOf(state, null, state.at)
    if (first?.kind !== 'round') throw new Error('no round is told')
    expect(taskKey(first)).toBe('round')
    expect(first.round.places.length).toBe(8)
    expect(rest.filter((one) => taskKey(one).includes('reading-due pan'))).toEqual([])
    expect(roundTaskWords.title(first.round, here)).toMatch(/^Take 8 readings by 18:0\d$/)
    expect(roundTaskWords.why(first.round, here)).toEqual(['Down the line, pan after pan.'])
  })

  test('[P57] and those that were missed are told with them, each by its name', () => {
    const state = by(5)
    const round = tasksOf(state, null, state.at).find((one) => one.kind === 'round')
    if (round?.kind !== 'round') throw new Error('no round is told')
    expect(roundTaskWords.title(round.round, here)).toBe('Take 8 readings now')
    expect(roundTaskWords.why(round.round, here)[0]).toMatch(
      / and \d others weren’t read: don’t serve/,
    )
  })

  test('[P57] a single one is told by itself, and none before it is asked for', () => {
    const state = by(-5)
    const { 'pan-rice': rice } = state.pans
    const one = { ...state, pans: rice ? { 'pan-rice': rice } : {} }
    expect(tasksOf(one, null, one.at).map(taskKey)).toContain('safety reading-due pan pan-rice')
    expect(tasksOf(one, null, one.at).map(taskKey)).not.toContain('round')
    expect(tasksOf(by(-60), null, at(-60)).map(taskKey)).not.toContain('round')
  })

  test('[P57][F82] come before a rush that is known', () => {
    const state = by(-60)
    const rushAhead = { from: at(-50), to: at(10) }
    const task = tasksOf(state, forecast({ rushAhead }), state.at).find(
      ({ kind }) => kind === 'round',
    )
    if (task?.kind !== 'round') throw new Error('no round is told')
    expect(roundTaskWords.why(task.round, here)[0]).toBe('Before the rush at 17:10.')
  })
})
