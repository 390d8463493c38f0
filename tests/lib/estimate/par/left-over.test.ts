import { expect, test } from 'vitest'
import { parOf } from '#lib/estimate/par/par.ts'
import { demoStation } from '#tests/support/service.ts'

test('[PR13] [PR9] one portion left over loses its cost, and a quarter of it where it may serve another service', () => {
  const left = (carriedFor: number) =>
    Object.values(
      parOf({
        ...{ station: demoStation, past: [], items: null },
        ahead: { on: '2026-12-04', expected: 40, firstBuilds: 40 },
        of: Object.fromEntries(
          demoStation.components.map(({ id }) => [
            id,
            { size: 12, there: 0, costCents: 80, carriedFor },
          ]),
        ),
      }),
    ).map(({ leftCents }) => leftCents)
  expect(new Set(left(0))).toEqual(new Set([80]))
  expect(new Set(left(2))).toEqual(new Set([20]))
})
