/** How often somebody may be wrong. */

/** Wrong tries of one address that isn't proved, or of one proved device. */
export const MOST_WRONG = 10
export const WRONG_WITHIN_S = 900

/** In any day: who is still wrong after so many isn't looking for a lost letter. */
export const MOST_WRONG_A_DAY = 30

/** Of all proved devices together: a lead could let in one after the other, each with a new count. */
export const MOST_WRONG_OF_DEVICES_A_DAY = 50 * MOST_WRONG_A_DAY
const DAY_MS = 86_400_000

/** Of the times of wrong tries, those that still count, oldest first. */
export const withinDay = (times: readonly number[], now: number): readonly number[] =>
  times.filter((at) => now - at < DAY_MS)

/** When there is another try, after so many in the last day; null where there is one now. */
export const nextOfDay = (
  times: readonly number[],
  now: number,
  most = MOST_WRONG_A_DAY,
): number | null => {
  const counted = withinDay(times, now)
  const oldest = counted[counted.length - most]
  return oldest === undefined ? null : oldest + DAY_MS
}

/** Codes that stand open at a time: an older one is void when there are more. */
export const MOST_CODES = 20

/** Adults of one house. */
export const MOST_ADULTS = 16

/** Devices of one house that are joined at a time. */
export const MOST_DEVICES = 200

/** Passphrases that wait to be compared: of strangers, and of proved devices, which go first. */
export const MOST_STRANGERS_WAITING = 8
export const MOST_PROVED_WAITING = 64

/** Whose wrong tries are counted together: a device that was proved has a count that no other fills. */
export const triesOf = (device: string | null, address: string): string =>
  device === null ? `address ${address}` : `device ${device}`
