/**
 * What a page and the server say to each other about who may in, by JSON over HTTP under /access.
 * A device's token travels in a cookie that no script can read; scripts outside a browser say it as
 * `token` in the hello. Every refusal is a code; none says whether a code or a name exists.
 */
import type { Role } from '#lib/service/roles.ts'

/** The own stations, or the demo beside them: two houses, of which nothing reaches the other. */
export type WhichHouse = 'own' | 'demo'

/**
 * GET /access, with `?demo` for a page of the demo and `?station=` for one that turned to a station.
 */
export interface AccessNow {
  /** Whether somebody made the house: before that only its demo can be walked through. */
  readonly house: 'none' | 'made'
  /** What this device is proved for; null where it isn't. */
  readonly you: OwnDevice | null
  /** This device may walk through the demo without a proof, in any role. */
  readonly mayWalkDemo: boolean
  /** The line that it would join, as it is drawn bare; null where no station is set up. */
  readonly line: LineDrawn | null
  /** Which house the page is of, and whether the demo is open. */
  readonly page: WhichHouse
  readonly demoIsOpen: boolean
  /** The house's own, the one that was published first first. */
  readonly stations: readonly StationDrawn[]
  /** The one that the page is of; null in a house that has none. */
  readonly station: string | null
}

/** A station of the house to choose. */
export interface StationDrawn extends LineDrawn {
  readonly id: string
  /** Whether a service of it is open. */
  readonly isOpen: boolean
}

/** POST /access/station, by a lead's device: another device, or itself, is of that station from now on. */
export interface MoveDevice {
  readonly device: string
  readonly station: string
}

/** POST /access/demo, by a lead's device or from the laptop itself: it is opened beside, or closed. */
export interface SetDemo {
  readonly open: boolean
}

/** What of a line anybody sees who is in the room. */
export interface LineDrawn {
  readonly name: string
  /** How many pans each well has, left to right. */
  readonly wells: readonly number[]
}

export interface OwnDevice {
  readonly device: string
  readonly name: string
  readonly role: Role
  readonly station: string
  /** The adult who signed on here; null on a crew's device. */
  readonly adult: { readonly id: string; readonly name: string } | null
  /** Epoch milliseconds of the server's clock at which it has to join again, if unused until then. */
  readonly until: number
}

/** POST /access/make, with the one-time secret that the terminal shows. The caller becomes the lead's device. */
export interface MakeHouse {
  readonly secret: string
  readonly lead: NewAdult
  readonly inCharge: NewAdult
}
export interface NewAdult {
  readonly name: string
  readonly passphrase: string
}

/** POST /access/sign-on: an adult on a device of their own. */
export interface SignOnAdult {
  readonly name: string
  readonly passphrase: string
}

/** POST /access/join, with a code that a lead's screen shows. */
export interface JoinByCode {
  readonly code: string
  /** How the device is called in the lead's list: its role and place, or what its crew says. */
  readonly name: string
}

/** POST /access/codes, by a lead's device. */
export interface AskCode {
  readonly role: Role
  /** Left away: of the device that asks. */
  readonly station?: string | undefined
}
export interface GivenCode {
  /** As it is typed, in two groups. */
  readonly typed: string
  /** Addresses that open the join page with the code in their fragment, for the QR code. */
  readonly addresses: readonly string[]
  readonly until: number
}

/** GET /access/devices, by a lead's device. */
export interface DeviceList {
  readonly devices: readonly ListedDevice[]
  readonly adults: readonly {
    readonly id: string
    readonly name: string
    readonly role: 'lead' | 'in-charge'
  }[]
  /** Wrong codes and passphrases since the start, and from how many addresses. */
  readonly attempts: {
    readonly wrong: number
    readonly addresses: number
    readonly refused: number
  }
}
export interface ListedDevice {
  readonly device: string
  readonly name: string
  readonly role: Role
  /** Id of the station that it is of. */
  readonly station: string
  readonly joinedAt: number
  readonly seenAt: number
  readonly isHere: boolean
  readonly isYou: boolean
  /** Id of the adult who signed on there; null on a crew's device. */
  readonly adult: string | null
}

/** POST /access/remove, by a lead's device: its sockets close within a second. POST /access/sign-off takes no fields. */
export interface RemoveDevice {
  readonly device: string
}

/** POST /access/adults, by a lead's device, with the passphrase of somebody in charge. */
export interface AddAdult extends NewAdult {
  readonly role: 'lead' | 'in-charge'
  readonly proof: string
}

/**
 * POST /access/passphrase, by any device that was proved: an adult changes their own. Every other
 * device of theirs is signed off, and codes that stand open are void.
 */
export interface ChangePassphrase {
  readonly name: string
  /** The one until now. */
  readonly before: string
  readonly passphrase: string
}

/** POST /access/adults/remove, by a lead's device: their devices are removed with them. */
export interface RemoveAdult {
  /** Id, as in the list. */
  readonly adult: string
  /** The passphrase of somebody in charge. */
  readonly proof: string
}

/** Why it was refused; the same words whether a code never was, ran out or was used. */
export type AccessRefusal =
  | 'not-it'
  | 'made-already'
  | 'no-house'
  | 'too-short'
  | 'too-long'
  | 'too-common'
  | 'same-passphrase'
  | 'name-taken'
  | 'no-name'
  | 'too-many-tries'
  /** As many devices or adults as a house keeps: one has to go first. */
  | 'too-many'
  /** Nobody else leads, or is in charge. */
  | 'last-one'
  | 'not-yours'
  | 'not-joined'
  | 'other-origin'
  | 'not-as-asked'
  | 'too-large'
  | 'failed'

export type AccessAnswer<Done> =
  | ({ readonly code: 'done' } & Done)
  | { readonly code: AccessRefusal; readonly again?: number }

/** Why a connection isn't let in (the message of socket.io's connect error). */
export type ConnectRefusal =
  | 'not-the-protocol'
  | 'not-joined'
  /** Joined once, then unused for too long: what waits is sent once it has joined again. */
  | 'expired'
  | 'removed'
  | 'role-not-yours'
  /** The page is of the demo, which isn't open. */
  | 'demo-closed'
  | 'busy'
