import { expect, test } from 'vitest'
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { parFor } from '#lib/rooms/prep/facts/par-for.ts'
import { firstChoices } from '#lib/rooms/prep/views/loads.ts'
import { componentOf } from '#lib/station/find.ts'
import { TASTING_STATION } from '#tests/support/tasting.ts'

const tuna = componentOf(TASTING_STATION, 'tuna')
const yields = { tuna: { batches: 3, ratio: 0.88, range: { low: 0.845, high: 0.915 } } }
const par = (own: typeof yields | undefined) =>
  parFor(TASTING_STATION, {
    ahead: { on: '2026-12-04', expected: 80, firstBuilds: 60 },
    ...{ past: [], items: null, there: {}, yields: own ?? {} },
  })

const tunaOf = (choices: ReturnType<typeof firstChoices>) =>
  choices.find(({ component }) => component === 'tuna')

test('[RC54] a load of a plan is what own batches really made, in whole portions', () => {
  expect(loadSize(TASTING_STATION, tuna)).toBe(20)
  expect(loadSize(TASTING_STATION, tuna, yields)).toBe(17)
  expect(loadSize(TASTING_STATION, componentOf(TASTING_STATION, 'beans'), yields)).toBe(12)
})

test('[RC54] what is made is as many of these loads as cost the least', () => {
  const as = tunaOf(firstChoices(TASTING_STATION, par(undefined), {}, null))
  const by = tunaOf(firstChoices(TASTING_STATION, par(yields), {}, null, yields))
  expect(as).toMatchObject({ component: 'tuna', portions: (as?.loads ?? 0) * 20 })
  expect(by).toMatchObject({ component: 'tuna', portions: (by?.loads ?? 0) * 17 })
  expect(by?.loads).toBeGreaterThanOrEqual(as?.loads ?? 0)
})

test('[RC54] a pan that is only filled as usual has no card to correct', () => {
  const { remake: _, ...rest } = tuna
  const usual = loadSize(TASTING_STATION, { ...rest, remake: null })
  expect(loadSize(TASTING_STATION, { ...rest, remake: null }, yields)).toBe(usual)
})
