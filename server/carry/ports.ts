import type { CarriedPicture } from '#lib/carry/carried-schema.ts'
import type { Label } from '#lib/station/label.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { Drafts } from '#server/drafts/drafts.ts'
import type { Menu } from '#server/drafts/menu.ts'

export interface KeptPicture {
  readonly type: CarriedPicture['type']
  readonly bytes: Uint8Array
}

/** What carrying asks of a house. */
export interface CarryPorts {
  readonly menu: Pick<Menu, 'list' | 'draft' | 'save'>
  readonly drafts: Pick<Drafts, 'now' | 'replace'>
  /** The newest revision with the house's labels; null where the station was never published. */
  readonly published: (station: string) => StationDocument | null
  /** The house's newest label of an ingredient, listed or not; null where it has none. */
  readonly label: (ingredient: string) => Label | null
  /** Keeps what labels of a document say where the house has none of them. */
  readonly keepLabels: (document: Pick<StationDocument, 'ingredients'>) => void
  readonly pictures: {
    readonly find: (sha256: string) => KeptPicture | null
    /** @returns false where it is no picture that can be kept */
    readonly keep: (sha256: string, picture: KeptPicture) => boolean
  }
  /** A service is open on it. */
  readonly isOpen: (station: string) => boolean
}
