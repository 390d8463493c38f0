/** Every message between a screen and the server. PROTOCOL.md tells how they follow each other. */

import type { WhichHouse } from '#lib/access/http.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { NotTaken, Refusal } from '#lib/service/refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import type { ServiceState } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'

export const PROTOCOL = 7

/** A command is answered as too large beyond this many bytes of JSON. */
export const MOST_COMMAND_BYTES = 16_384

/** A message beyond this many bytes closes the connection before it is read. */
export const MOST_MESSAGE_BYTES = 65_536

/** Messages a second from one connection: far above hands, below a flood. */
export const MOST_MESSAGES_A_SECOND = 500

/** How often the server says that it is there, in milliseconds. */
export const PULSE_EVERY_MS = 2_000

/** UTF-16 units of a passphrase in a message; what it may be is counted where it is set. */
export const MOST_PASSPHRASE_UNITS = 800

/**
 * Said by the screen when it connects. What it is proved for lies in a cookie that it can't read;
 * the role is the one that it asks to act as.
 */
export interface Hello {
  readonly protocol: number
  readonly role: Role
  /** From outside a browser, which has no cookie. */
  readonly token?: string
  /** Left away: the own house once it has a station, before that the demo. */
  readonly house?: WhichHouse
  /** For a lead's device, which may turn to any station of the house; of others their own counts. */
  readonly station?: string
}

export interface Welcome {
  readonly protocol: number
  /** Build id of the pages that this server serves; a page of another build reloads once. */
  readonly build: string
  readonly house: WhichHouse
  readonly station: { readonly id: string; readonly name: string } | null
  /** The station's newest service, open or closed; null where none was ever opened, or none for it. */
  readonly service: string | null
  /** Its id in the lead's list of devices; null where it walks through the demo without a proof. */
  readonly device: string | null
  /** Server's time, epoch milliseconds. */
  readonly at: number
}

export interface CommandMessage {
  readonly protocol: number
  readonly id: string
  readonly service: string
  readonly command: Command
  /** Proves the person in charge for this command alone. Never stored or logged, on either side. */
  readonly passphrase?: string
}

export type Answer =
  | { readonly id: string; readonly answer: 'accepted'; readonly position: number }
  | { readonly id: string; readonly answer: 'refused'; readonly refusal: Refusal }
  | { readonly id: string | null; readonly answer: 'not taken'; readonly because: NotTaken }

export interface Follow {
  readonly service: string
  /** Newest position that the screen has folded; 0 for none. */
  readonly position: number
}

export type Followed =
  | { readonly kind: 'events'; readonly events: readonly Recorded[] }
  | { readonly kind: 'snapshot'; readonly position: number; readonly state: ServiceState }
  | { readonly kind: 'picture'; readonly picture: PickUpPicture }
  | { readonly kind: 'no-such-service' }
  /** Too many messages: nothing is followed, ask again. */
  | { readonly kind: 'busy' }

export interface EventsMessage {
  readonly service: string
  readonly events: readonly Recorded[]
}

/** To pick-up screens only, in the place of events. */
export interface PictureMessage {
  readonly service: string
  readonly picture: PickUpPicture
}

export interface PulseMessage {
  readonly at: number
  readonly service: string | null
  readonly position: number
}

/** Names by the id of the command that sent the ticket. Never to the pick-up screen. */
export interface GuestsMessage {
  readonly service: string
  readonly names: Readonly<Record<string, string>>
}

/** The newest wins; to crew screens only, and to each when it follows. Never stored. */
export interface ForecastMessage {
  readonly service: string
  readonly forecast: StationForecast
}

export interface ServerMessages {
  welcome: (message: Welcome) => void
  events: (message: EventsMessage) => void
  picture: (message: PictureMessage) => void
  pulse: (message: PulseMessage) => void
  guests: (message: GuestsMessage) => void
  forecast: (message: ForecastMessage) => void
}

export interface ScreenMessages {
  follow: (message: Follow, reply: (followed: Followed) => void) => void
  command: (message: CommandMessage, reply: (answer: Answer) => void) => void
}
