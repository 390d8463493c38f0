/** How often somebody may be wrong. */

/** Wrong tries of one address that isn't proved, or of one proved device. */
export const MOST_WRONG = 10
export const WRONG_WITHIN_S = 900

/** Codes that stand open at a time: an older one is void when there are more. */
export const MOST_CODES = 20

/** Adults of one house. */
export const MOST_ADULTS = 16

/** Devices of one house that are joined at a time. */
export const MOST_DEVICES = 200

/** Passphrases that wait to be compared: of strangers, and of proved devices, which go first. */
export const MOST_STRANGERS_WAITING = 8
export const MOST_PROVED_WAITING = 32

/** Whose wrong tries are counted together: a device that was proved has a count that no other fills. */
export const triesOf = (device: string | null, address: string): string =>
  device === null ? `address ${address}` : `device ${device}`
