/** What an append to the larder is guarded by: each lot's amount changes once at each of its versions. */
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { goneIn, type LarderState, lotIn } from '#lib/larder/lot.ts'

export interface LotGuard {
  readonly key: string
  readonly expected: number
}

const versionOf = (state: LarderState, id: string): number =>
  lotIn(state, id)?.version ?? goneIn(state, id)?.version ?? 0

/**
 * @param before the larder without the entries
 * @throws as folding them does
 */
export const lotGuards = (
  before: LarderState,
  entries: readonly LarderRecorded[],
): readonly LotGuard[] => {
  const guards: LotGuard[] = []
  let state = before
  for (const entry of entries) {
    const after = evolveLarder(state, entry)
    if ('lot' in entry) {
      const expected = versionOf(state, entry.lot)
      if (versionOf(after, entry.lot) > expected) guards.push({ key: `lot:${entry.lot}`, expected })
    }
    state = after
  }
  return guards
}
