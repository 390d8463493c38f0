/** What changes what pans are to a guest: a label, a foreign scoop, a back-up pan. */

import type { LoadedFood } from '#lib/service/events/food-event.ts'
import type { Probed } from '#lib/service/events/probed.ts'
import type { Label } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Versions of the house's labels, by ingredient; what isn't named is as it came, version 0. */
export type LabelVersions = Readonly<Record<string, number>>

export interface LabelChanged {
  readonly type: 'labelChanged'
  readonly ingredient: string
  /** null: not the same product as last time, and nobody has read its label yet. */
  readonly label: Label | null
  /** Pans that hold the product of before: it counts with this one until they are changed or washed. */
  readonly pans: readonly string[]
  /** Of the station's document; in a log of before it is the one that this made. */
  readonly revision: number
  /** Of the label in the house; left away where no house keeps any. */
  readonly version?: number
  /** The same product as before, read again, so that no pan holds another; left away where it isn't. */
  readonly same?: true
}
/** What touches what on the service's own line, as a later revision of its station says it. */
export interface ContactsChanged {
  readonly type: 'contactsChanged'
  /** All that counts from now on; null: nobody has confirmed it. */
  readonly contacts: StationDocument['contacts']
  /** Of the station's document that said so. */
  readonly revision: number
}
/**
 * A scoop of another component went into a pan: each of both may contain the other, until it is
 * emptied and washed.
 */
export interface PanSoiled {
  readonly type: 'panSoiled'
  readonly pan: string
  /** The component whose scoop it was. */
  readonly by: string
}
/** A protected back-up pan (lidded, own scoop, not reached over) stands ready, or no longer does. */
export interface BackupSet extends LoadedFood, Probed {
  readonly type: 'backupSet'
  readonly component: string
  readonly ready: boolean
  /** Its id; an older log knew it by its component only. */
  readonly backup?: string
  /** What was put into it, in its component's unit. */
  readonly amount?: number
  /** What a probe had brought into its batch: it isn’t protected; left away where none had. */
  readonly carries?: readonly string[]
  /** What of it went away, where it was put away. */
  readonly takenAway?: number
  /** The component whose scoop went into it. */
  readonly soiledBy?: string
}

export type LineEvent = LabelChanged | ContactsChanged | PanSoiled | BackupSet
