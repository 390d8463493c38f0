import fc from 'fast-check'
import { expect, test } from 'vitest'
import { MOST_STEP, MOST_STEPS, stepsProblem, typedSteps } from '#lib/recipes/sheet/typed-steps.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { demoStation } from '#tests/support/service.ts'

test('[PA49] a method is a step a line, without the numbers that somebody typed before them', () => {
  expect(
    typedSteps('1. Drain the tuna.\n\n2) Fold in the relish.\n- Chill.\n  10 minutes more. '),
  ).toEqual(['Drain the tuna.', 'Fold in the relish.', 'Chill.', '10 minutes more.'])
  expect(typedSteps(' \n')).toEqual([])
})

test('[PA49] what is typed and shown is typed again the same; no word of a step is lost', () => {
  const step = fc.constantFrom('Drain the tuna.', '2 minutes more.', 'Fold in 1/3 cup.', '– rest')
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      expect(typedSteps(steps.join('\n'))).toEqual(steps)
    }),
  )
})

test('[PA49] too many steps or one that is too long is told, and is what a document refuses', () => {
  const withSteps = (steps: readonly string[]) =>
    stationSchema.safeParse({
      ...demoStation,
      recipes: demoStation.recipes.map((one, at) => (at === 0 ? { ...one, steps } : one)),
    }).success
  const cases: readonly (readonly string[])[] = [
    ['Chill.'],
    ['a'.repeat(MOST_STEP)],
    ['Chill.', 'a'.repeat(MOST_STEP + 1)],
    Array.from({ length: MOST_STEPS }, () => 'Stir.'),
    Array.from({ length: MOST_STEPS + 1 }, () => 'Stir.'),
  ]
  expect(cases.map(stepsProblem)).toEqual([
    null,
    null,
    { code: 'too-long', nth: 2, most: MOST_STEP },
    null,
    { code: 'too-many', most: MOST_STEPS },
  ])
  for (const steps of cases) expect(withSteps(steps)).toBe(stepsProblem(steps) === null)
})
