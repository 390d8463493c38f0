/** When a service is taken to close. */
import type { ServiceState } from '#lib/service/state.ts'

/** Where nobody said when it closes, a service is taken to last so long. Common practice, no source. */
export const USUAL_LENGTH_MS = 150 * 60_000
/** Past that it is taken to go on for so long yet. */
const YET_MS = 10 * 60_000

/** Epoch milliseconds: as it was said, else an assumption that lies ahead. */
export const closesAt = (
  { openedAt, closesAt: said }: Pick<ServiceState, 'openedAt' | 'closesAt'>,
  now: number,
): number => said ?? Math.max(openedAt + USUAL_LENGTH_MS, now + YET_MS)
