import type { AccessNow, WhichHouse } from '#lib/access/http.ts'
import { mayActAs } from '#lib/access/roles-granted.ts'
import type { Device } from '#server/access/house.ts'

/** Of which house a page is, and of which of its stations, as it says itself. */
export interface AskedPage {
  readonly house?: WhichHouse | undefined
  readonly station?: string | undefined
}

/** What of the house, and of the page that asks, is told with who is in. */
export type Here = Omit<AccessNow, 'house' | 'you' | 'mayWalkDemo'> & {
  /** A device that wasn't proved may walk through what is open on that page. */
  readonly isDemo: boolean
}

/** What is told of a page, to a device of that station or to one that isn't in. */
export type AskHere = (page: AskedPage, station: string | null) => Here

/** Who leads a house may turn to any of its stations; a tablet of the crew is where it was let in. */
export const pageOf = (device: Device | null, { house, station }: AskedPage): AskedPage =>
  device !== null && mayActAs(device.role, 'lead') ? { house, station } : { house }
