import { expect, test } from 'vitest'
import { proveEnded } from '#tests/prove/ended.ts'
import { proveGuessing } from '#tests/prove/guessing.ts'
import { proveKilled } from '#tests/prove/killed.ts'
import { proveKilledLarder } from '#tests/prove/killed-larder.ts'
import { proveManyScreens } from '#tests/prove/many-screens.ts'
import { proveSyncs, tracer } from '#tests/prove/syncs.ts'

/** The proofs of `npm run prove`, small enough for every day. */
const LONG_MS = 120_000

test(
  '[R4][R3] killed in the middle of 30 orders, nothing answered is lost and nothing is done twice',
  async () => {
    expect((await proveKilled(30)).failures).toEqual([])
  },
  LONG_MS,
)

test(
  '[LA52] a whole server killed twice while two services set aside and take: they and the larder agree',
  async () => {
    const { figures, failures } = await proveKilledLarder(2, 60)
    console.log(figures.join('\n'))
    expect(failures).toEqual([])
  },
  LONG_MS,
)

test(
  '[X10] ten crew screens end with the state that the log folds to',
  async () => {
    expect((await proveManyScreens(10, 10, 4, false)).failures).toEqual([])
  },
  LONG_MS,
)

test(
  '[X12] ended during sends, all that was answered is in the log',
  async () => {
    expect((await proveEnded(60)).failures).toEqual([])
  },
  LONG_MS,
)

test(
  '[R3] ten single sends are at least ten syncs of the log',
  async (context) => {
    if (tracer === undefined) context.skip('syncs are counted with strace, which is not here')
    expect((await proveSyncs(10)).failures).toEqual([])
  },
  LONG_MS,
)

test(
  '[EG10] guessed for six hours by 50 addresses and 40 tablets, nothing is found and nobody honest kept out',
  async () => {
    const { figures, failures } = await proveGuessing(360)
    console.log(figures.join('\n'))
    expect(failures).toEqual([])
  },
  LONG_MS,
)
