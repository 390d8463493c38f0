/**
 * What the label panel and the server say to each other under /menu, by JSON over HTTP but for the
 * pictures: to a device of the lead or of the person in charge. A label is the house's, not a station's.
 */
import type { AccessRefusal } from '#lib/access/http.ts'
import type { Allergens } from '#lib/station/codes/askable.ts'
import type { Label } from '#lib/station/label.ts'
import type { LabelProblem } from '#lib/station/label-problem.ts'

/** GET /menu/labels?station= : all ingredients of the station as it stands in its draft, or is published. */
export interface MenuLabels {
  readonly station: string
  /** What decides which allergens are asked: of the draft, or of the station as published. */
  readonly allergens: Allergens
  /** Civil date at the station by the server's time, as 2026-11-25: a label is read on it. */
  readonly today: string
  /** A label is read again after so many days at the latest. */
  readonly readAgainDays: number
  readonly ingredients: readonly LabelledIngredient[]
}

export interface LabelledIngredient {
  readonly ingredient: string
  readonly name: string
  readonly maker: string | null
  readonly pack: string | null
  /** Of the product in use. */
  readonly label: HouseLabel
  /** Substitutes, each read before it is used. */
  readonly products: readonly {
    readonly product: string
    readonly maker: string | null
    readonly pack: string | null
    readonly label: HouseLabel
  }[]
  /** Names of the components that it goes into here, also through recipes. */
  readonly goesInto: readonly string[]
  /** Names of the house's other stations that have it: their labels change with it. */
  readonly alsoAt: readonly string[]
}

export interface HouseLabel {
  /** 0: it was never read; grows with each change, and is said with the next one as `saw`. */
  readonly version: number
  /** null: nobody has read it, or it was said not to be the same product. */
  readonly label: Label | null
  /** Epoch milliseconds of the change; null: never, or before that was kept. */
  readonly at: number | null
  /** Name of the adult whose passphrase proved it; null where that isn't known any more. */
  readonly by: string | null
}

/** POST /menu/labels: with the passphrase of somebody in charge. It reaches every open service at once. */
export interface SaveLabel {
  readonly station: string
  readonly ingredient: string
  /** Id of the substitute; left away: the product in use. */
  readonly product?: string
  /** The version that was seen. */
  readonly saw: number
  /** As it was read; `readOn` becomes today and `readBy` null, whatever they say. */
  readonly label: Label
  /** Whether pans hold another product than this one, or it is the same, read again. Of no matter for substitutes. */
  readonly is: 'other' | 'same'
  readonly proof: { readonly passphrase: string }
}

export interface LabelSaved {
  readonly version: number
  /** Ids of the stations whose open service was told. */
  readonly told: readonly string[]
}

/** Why a label isn't taken; each is told at its field. */
export type LabelRefusal =
  | { readonly code: AccessRefusal; readonly again?: number }
  | { readonly code: 'no-such-station' | 'no-such-ingredient' | 'no-such-product' }
  /** Somebody changed it since: as it is now. */
  | { readonly code: 'stale'; readonly now: HouseLabel }
  /** Gluten, grains and sources that can't be so together. */
  | { readonly code: 'label-problem'; readonly problem: LabelProblem }
  /** An allergen that the station's set doesn't name. */
  | { readonly code: 'unknown-need'; readonly need: string }
  /** A group is declared free, or not listed, of which a kind is contained. */
  | { readonly code: 'free-and-contains'; readonly need: string; readonly kind: string }
  /** It contains an allergen, but its traits don't name what that comes of; or free of it with the trait. */
  | { readonly code: 'traits-contradict'; readonly need: string; readonly trait: string }
  /** Not listed, but neither the list nor that it is one plain food is told. */
  | { readonly code: 'not-listed-unread'; readonly need: string }
  /** The picture named isn't kept. */
  | { readonly code: 'no-such-photo' }

export type SaveLabelAnswer = ({ readonly code: 'done' } & LabelSaved) | LabelRefusal

/** Bytes of a picture as it is sent; what is larger is refused before it is read. */
export const MOST_PHOTO_BYTES = 12_000_000

/** What a picture may be sent as. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp', 'image/heic'] as const

/** POST /menu/photos, the bytes of one picture as the body. What is kept is made anew of its pixels. */
export interface PhotoKept {
  /** SHA-256 of what is kept, in hexadecimal: the label's `photo`, and GET /menu/photos?hash= */
  readonly hash: string
  readonly bytes: number
  readonly width: number
  readonly height: number
}

export type PhotoAnswer =
  | ({ readonly code: 'done' } & PhotoKept)
  | { readonly code: AccessRefusal; readonly again?: number }
  | {
      readonly code:
        | 'not-a-picture'
        /** More than is opened: a small file may hold pixels without end. */
        | 'too-many-pixels'
        /** A type that this computer can't open. */
        | 'cannot-open'
        /** What opens pictures doesn't run on this computer: labels are read without. */
        | 'no-pictures-here'
        | 'no-such-photo'
    }
