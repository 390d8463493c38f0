import { describe, expect, it } from 'vitest'
import { CONSEQUENCES } from '#lib/service/consequences/consequences.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'
import { unreached, watchHistories } from '#tests/support/watched-histories.ts'

const SEED = 1
const HISTORIES = 70
const MOST_WITHOUT = 80
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
      const asked = { seed: SEED, histories: MOST_WITHOUT, follows, most: 1, shrinks: false }
      expect(watchHistories(asked).broken).toHaveLength(1)
    },
  )
})
