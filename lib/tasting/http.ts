/** What the tasting's screen, the recipe's and the server say to each other. */
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TastingRefusal } from '#lib/tasting/command.ts'
import type { Tasting, ToldByTaster } from '#lib/tasting/tasting.ts'
import type { MarkRefusal } from '#lib/tasting/yield-marks.ts'
import type { YieldSaved } from '#lib/tasting/yields.ts'

export interface TastingTold {
  readonly tasting: Tasting
  readonly told: ToldByTaster
}

/** GET /tasting/now */
export interface TastingsNow {
  readonly code: 'done'
  /** The server's time, epoch milliseconds. */
  readonly now: number
  readonly station: StationDocument
  /** The earliest first; those that are over last, the newest of them first. */
  readonly tastings: readonly TastingTold[]
}

export type TastingAnswer =
  | { readonly answer: 'accepted'; readonly tasting: string }
  | { readonly answer: 'refused'; readonly refusal: TastingRefusal }

/** POST /tasting/do */
export interface TastingDone {
  readonly code: 'done'
  readonly answer: TastingAnswer
}

/** GET /tasting/yields */
export interface YieldsNow {
  readonly code: 'done'
  readonly yields: readonly YieldSaved[]
  /** Of those that are taken out, by the command that did; those that went after retention aren't in it. */
  readonly initials: Readonly<Record<string, string>>
  /** The station's; null where none is published yet. */
  readonly timeZone: string | null
}

export type MarkAnswer =
  | { readonly answer: 'accepted' }
  | { readonly answer: 'refused'; readonly refusal: MarkRefusal }

/** POST /tasting/yield */
export interface YieldMarked {
  readonly code: 'done'
  readonly answer: MarkAnswer
}
