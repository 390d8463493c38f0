import { describe, expect, it } from 'vitest'
import { CONSEQUENCES } from '#lib/spine/consequences/consequences.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'
import { unreached, watchHistories } from '#tests/support/watched-histories.ts'

const SEED = 1
const HISTORIES = 80
/** Where a rule that doesn’t follow was missed first: lived before the others. */
const SHOWING = [1, 2, 3, 6, 8, 14, 29]
const EIGHTY = Array.from({ length: 80 }, (_, index) => SEED + index)
const MINUTE = 60_000

/** The proof of `npm run prove -- histories`, small enough for every day. */
describe('whatever happens in a whole service', () => {
  it('[S151] what goes on fits, every hold has a cause, and what was handed over is listed', {
    timeout: 2 * MINUTE,
  }, () => {
    const { counts, broken } = watchHistories({ seed: SEED, histories: stretched(HISTORIES) })
    expect(broken).toEqual([])
    if (isShort) return
    expect(unreached(counts)).toEqual([])
    const { restarts, jumps, lifted, found, listed } = counts
    expect(Math.min(restarts, jumps, lifted, found, listed)).toBeGreaterThan(5)
  })

  it.each(isShort ? [] : CONSEQUENCES.map(({ name }) => name))(
    '[S152] shows it where %s doesn’t follow',
    { timeout: 2 * MINUTE },
    (name) => {
      const follows = CONSEQUENCES.filter((one) => one.name !== name)
      const isBroken = (seed: number): boolean =>
        watchHistories({ seed, histories: 1, follows, shrinks: false }).broken.length > 0
      expect([...SHOWING, ...EIGHTY].some(isBroken)).toBe(true)
    },
  )
})
