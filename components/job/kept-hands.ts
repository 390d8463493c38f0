/** Whose hands read, and with what: kept on the device from one job to the next. */
import { keep, readKept } from '#components/device/device-shelf.ts'

const INITIALS_KEY = 'initials'
const PROBE_KEY = 'probe'
const MIDDLE_KEY = 'probe-in-the-middle'

export interface Hands {
  readonly initials: string
  readonly probe: string
  /** The last reading was taken where this food is read: not at the surface. */
  readonly isMiddle: boolean
}

export const keptHands = (): Hands => ({
  initials: readKept(INITIALS_KEY) ?? '',
  probe: readKept(PROBE_KEY) ?? '',
  isMiddle: readKept(MIDDLE_KEY) !== null,
})

/** What isn't told stays as it was; what is told empty is forgotten. */
export const keepHands = (hands: Partial<Hands>): void => {
  if (hands.initials !== undefined) keep(INITIALS_KEY, hands.initials.trim() || null)
  if (hands.probe !== undefined) keep(PROBE_KEY, hands.probe.trim() || null)
  if (hands.isMiddle !== undefined) keep(MIDDLE_KEY, hands.isMiddle ? 'yes' : null)
}
