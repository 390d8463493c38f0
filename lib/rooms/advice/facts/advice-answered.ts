/** Which advice an answer is for, and the log with it. */

interface Entry {
  readonly key: string
  readonly answer: string
  /** Minutes of the civil day; null while it is open. */
  readonly answeredAt: number | null
}

/** For so long after it lapsed an answer still counts: what was done may be why it lapsed. */
const AFTER_LAPSE_MIN = 1

/** Place in the log of what an answer at `now` (minutes of the civil day) is for; -1 where nothing is. */
export const answeredPlace = (log: readonly Entry[], key: string, now: number): number => {
  const place = log.findLastIndex((one) => one.key === key)
  const last = log[place]
  if (!last) return -1
  if (last.answer === 'open') return place
  const ago = now - (last.answeredAt ?? 0)
  return last.answer === 'lapsed' && ago >= 0 && ago <= AFTER_LAPSE_MIN ? place : -1
}
