import type { PastTaught } from '#lib/estimate/demand-history.ts'
import { countBuild, noCounts } from '#lib/estimate/service-counts.ts'
import { forecastNow } from '#lib/rooms/advice/facts/forecast-now.ts'
import { isRunning, NOT_OPENED, type RunningState } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { portionsOf } from '#lib/station/portion.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { median } from '#tests/bench/median.ts'
import type { Verdict } from '#tests/bench/verdict.ts'

const MOST_RATIO = 2.2
const WARM_UP = 60
const RUNS = 300
const OPENS = 645
const CLOSES = 795
const NOW = 700
const OPENED_AT = Date.UTC(2026, 10, 25, 16, 45)
const MINUTE_MS = 60_000
const REMAKE = { minutes: 15, minutesPerLoad: 4, portionsPerLoad: 12, mostLoads: 3 }
const PAN = {
  size: 'third',
  depthIn: 4,
  tareMg: null,
  capacityFlOz: null,
  usualPortions: 42,
} as const

interface Case {
  readonly state: RunningState
  readonly taught: PastTaught
}

/** The demo station so many times over: as many hearts and bases for each pan as it has. */
const stationOf = (pans: number): StationDocument => {
  const remake = { ...REMAKE, where: 'the kitchen', by: 'a cook' }
  const times = Math.ceil(pans / demoStation.components.length)
  const copies = Array.from({ length: times }, (_, copy) => `-${copy}`)
  const components = copies
    .flatMap((copy) => demoStation.components.map((one) => ({ ...one, id: one.id + copy })))
    .slice(0, pans)
    .map((one, index) => ({ ...one, remake: index % 5 === 0 ? null : remake }))
  const line = {
    wells: components.map(({ id, held }) => ({
      id: `well-${id}`,
      held,
      pans: [{ ...PAN, id: `pan-${id}`, component: id }],
    })),
  }
  return {
    ...demoStation,
    line,
    backups: [],
    contacts: null,
    components,
    items: copies.flatMap((copy) =>
      demoStation.items.map((item) => ({
        ...item,
        id: item.id + copy,
        heart: item.heart + copy,
        base: item.base && {
          choices: item.base.choices.map((one) => one + copy),
          usual: item.base.usual + copy,
        },
        parts: item.parts.map((part) => ({ ...part, component: part.component + copy })),
      })),
    ),
  }
}

const stamp = (position: number, at: number) => ({ position, at, command: null })

/** A middling moment: some pans last, some are tight, some won't last, some have batches under way. */
const caseOf = (pans: number): Case => {
  const station = stationOf(pans)
  const portions = portionsOf(station)
  const ids = station.components.map(({ id }) => id)
  let counts = noCounts(OPENS, CLOSES, 125)
  for (let build = 0; build < 40; build += 1) {
    const wanted = Object.fromEntries(
      ids.filter((_, index) => (build + index) % 3 === 0).map((id) => [id, 1]),
    )
    const item = station.items[build % station.items.length]?.id ?? null
    counts = countBuild(counts, OPENS + build, { item, portions: wanted })
  }
  const opened = evolve(NOT_OPENED, {
    ...stamp(1, OPENED_AT),
    type: 'serviceOpened',
    service: 's-bench',
    kind: 'real',
    revision: 1,
    station,
    portions,
    closesItselfAt: null,
    minuteOfDay: OPENS,
    closesAt: OPENED_AT + (CLOSES - OPENS) * MINUTE_MS,
    guestsExpected: 125,
  })
  const loaded = ids.reduce(
    (state, id, index) =>
      evolve(state, {
        ...stamp(index + 2, OPENED_AT),
        type: 'panLoaded',
        pan: `pan-${id}`,
        amount: (6 + 9 * (index % 5)) * (portions[id]?.amount ?? 1),
        food: { heldBy: 'dry', clock: null, dateMark: null, finishedAt: 0, guarded: false },
      }),
    opened,
  )
  const state = ids.reduce(
    (so, id, index) =>
      index % 4 === 1
        ? evolve(so, {
            ...stamp(so.at + 1, OPENED_AT),
            type: 'batchStarted',
            batch: `b${index}`,
            component: id,
            loads: 1,
            startedAt: OPENED_AT,
          })
        : so,
    loaded,
  )
  if (!isRunning(state)) throw new Error('the service is not open')
  const model = {
    past: [],
    straying: { day: 0.12, wave: 0.2, keep: 0.6, slot: 0.25, late: 2, together: 1.6 },
    shares: Object.fromEntries(
      ids.map((id, index) => [
        id,
        { mean: 0.15 + 0.05 * (index % 12), strength: 40, memory: 80, perTaking: [0.95, 0.05] },
      ]),
    ),
  }
  return { state: { ...state, counts, nextTicket: 41 }, taught: model }
}

/** All that is forecast of a station and all that is suggested by it, once; milliseconds. */
const recompute = ({ state, taught }: Case): number => {
  const begun = performance.now()
  forecastNow(state, taught, {
    position: 1,
    now: OPENED_AT + (NOW - OPENS) * MINUTE_MS,
    firstBefore: null,
  })
  return performance.now() - begun
}

/** What recomputing all forecasts costs, and that twice the pans cost about twice as much. */
export const benchForecasts = (): Verdict => {
  const cases = { few: caseOf(24), many: caseOf(48) }
  const times = { few: [] as number[], many: [] as number[] }
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    // In turns, and each first as often as the other, so that both meet the same machine.
    const order = run % 2 === 0 ? (['few', 'many'] as const) : (['many', 'few'] as const)
    for (const name of order) {
      // As long a measurement of either, so that a busy machine breaks into both alike.
      const time =
        name === 'few' ? (recompute(cases.few) + recompute(cases.few)) / 2 : recompute(cases.many)
      if (run >= WARM_UP) times[name].push(time)
    }
  }
  const few = median(times.few)
  const many = median(times.many)
  const ratio = many / few
  return {
    title: `all forecasts of 48 pans cost ${ratio.toFixed(2)} times those of 24 (at most ${MOST_RATIO})`,
    figures: [
      `24 pans: ${few.toFixed(2)} ms; 48 pans: ${many.toFixed(2)} ms; medians of ${RUNS} runs each, in turns`,
      'each with the chance of running out, by when, the plan of a batch for four pans of five, and what it suggests',
    ],
    isWithin: ratio <= MOST_RATIO,
  }
}
