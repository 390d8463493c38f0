import { describe, expect, it } from 'vitest'
import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { declaredIn } from '#lib/needs/declared.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { compareAll } from '#tests/lib/needs/oracle/comparison.ts'
import { engine } from '#tests/lib/needs/oracle/engine.ts'
import { type Found, totalOf } from '#tests/lib/needs/oracle/found.ts'
import { generatedStation } from '#tests/lib/needs/oracle/generated-stations.ts'
import { askedCodes } from '#tests/lib/needs/oracle/laws.ts'
import { wordOfIngredient } from '#tests/lib/needs/oracle/oracle.ts'
import { WRONG_CHECKERS } from '#tests/lib/needs/oracle/wrong-checkers.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'

const MINUTE = 60_000

const FORTY = Array.from({ length: 40 }, (_, index) => index + 1)
/** Where wrong checkers were found first: tried before the others, which costs a third. */
const SHOWING = [1, 2, 3, 5, 6, 7, 21, 37]

const generated = (...seeds: readonly number[]) =>
  [...new Set(seeds)].map((seed) => [generatedStation(seed), seed] as const)

const demoStation = [stationSchema.parse(demo), 0] as const

const expectAgreed = (found: Found): void => {
  expect(found.told).toEqual([])
  expect(totalOf(found)).toBe(0)
}

/** What a label declares of a code's group, kinds and traits, where the two words for it differ. */
const wordsApart = (seed: number): readonly string[] => {
  const station = generatedStation(seed)
  return station.ingredients.flatMap((one) =>
    askedCodes(station).flatMap((code) => {
      const [engines, oracles] = [
        declaredIn(station, one, code),
        wordOfIngredient(station, one, code),
      ]
      return engines === oracles
        ? []
        : [`${station.id} ${one.id} ${code}: ${engines}, the oracle ${oracles}`]
    }),
  )
}

describe('needs against the oracle', () => {
  it('[N8] [N9] [N12] every ingredient of two hundred stations declares what the oracle reads', {
    timeout: MINUTE,
  }, () => {
    const apart = Array.from({ length: stretched(200) }, (_, index) => wordsApart(index + 1)).flat()
    expect(apart.slice(0, 20)).toEqual([])
  })

  it('[N21] the demo station: every build of every item, for every need and for pairs', {
    timeout: 2 * MINUTE,
  }, () => {
    const found = compareAll([demoStation], engine, {
      pairedNeeds: stretched(8),
      states: 'all',
      first: false,
    })
    expectAgreed(found)
    expect(found.counts).toMatchObject({ items: 3, places: 3 })
    expect(found.counts.builds).toBeGreaterThan(100)
    expect(found.counts.fromBackup).toBeGreaterThan(0)
  })

  it('[N21] forty generated stations: every build of every item, for every need and for pairs', {
    timeout: 4 * MINUTE,
  }, () => {
    const found = compareAll(generated(...FORTY.slice(0, stretched(40))), engine, {
      pairedNeeds: 6,
      states: 'one',
      first: false,
    })
    expectAgreed(found)
    const { no, caution, ask, fine, fromBackup } = found.counts
    if (!isShort) expect(Math.min(no, caution, ask, fine, fromBackup)).toBeGreaterThan(1000)
  })
})

describe('the comparison', () => {
  it.each(isShort ? [] : Object.entries(WRONG_CHECKERS))(
    'finds a wrong checker, that %s',
    { timeout: MINUTE },
    (_, wrong) => {
      const found = compareAll(generated(...SHOWING, ...FORTY), wrong(engine), {
        pairedNeeds: 3,
        states: 'one',
        first: true,
      })
      expect(found.told).not.toEqual([])
    },
  )
})
