/**
 * What the set-up screens and the server say to each other, by JSON over HTTP under /menu, to a
 * device of the lead or of the person in charge. Every refusal is a code.
 */
import type { AccessRefusal } from '#lib/access/http.ts'
import type { Change } from '#lib/editor/change.ts'
import type { EntityKey, Json, Row, Rows } from '#lib/editor/draft.ts'
import type { MissingFor, Other, Problem, StepRefusal } from '#lib/editor/problem.ts'
import type { Step } from '#lib/editor/step.ts'

/** GET /menu/stations */
export interface MenuStations {
  readonly stations: readonly ListedStation[]
  /** What a station may begin from, beside those. */
  readonly sets: readonly { readonly from: string; readonly name: string }[]
}
export interface ListedStation {
  readonly station: string
  readonly name: string
  /** Newest revision; null: never published. */
  readonly published: number | null
  /** Whether the draft says other than the newest revision. */
  readonly changed: boolean
  /** A service is open on it. */
  readonly open: boolean
}

/** GET /menu/draft?station=; with `&after=saw` only what changed since: null where it was removed. */
export interface MenuDraft {
  readonly station: string
  /** Grows with each save of anybody; said with the next one. */
  readonly saw: number
  readonly rows: Rows | ChangedRows
  /** The house's, newest, by ingredient. */
  readonly labels: Labels
  /** Ids of ingredients that are gone and of which the house has a label: of nothing new. */
  readonly idsOfBefore: readonly string[]
  readonly problems: readonly Problem[]
  readonly missing: MissingFor
  readonly published: number | null
  readonly changed: boolean
  readonly open: boolean
  /** The station's, such as "2026-11-02": a tablet's clock is its own. */
  readonly today: string
}
export type ChangedRows = Readonly<Partial<Record<EntityKey, Row | null>>>
/** By ingredient, as in its part of a station document but for its id and names. */
export type Labels = Readonly<Record<string, Readonly<Record<string, Json>>>>

/** POST /menu/steps: all of them or none. */
export interface SaveSteps {
  readonly station: string
  readonly saw: number
  readonly steps: readonly Step[]
}
export interface Saved {
  readonly saw: number
  /** All that changed since what was seen, by oneself and by others: null where it was removed. */
  readonly rows: ChangedRows
  readonly problems: readonly Problem[]
  readonly missing: MissingFor
}

/** POST /menu/begin */
export interface BeginStation {
  /** 'nothing', 'demo', a set of the list, or the id of a station. */
  readonly from: string
  readonly name: string
  /** The browser's, a name of the IANA time zone database; one unknown here is as if unsaid. */
  readonly timeZone?: string | undefined
}

/** POST /menu/publish: with the passphrase of a lead or of somebody in charge; of the latter alone with `neverTouched`. */
export interface Publish {
  readonly station: string
  readonly saw: number
  readonly proof: string
  /**
   * What it no longer names as touching never touched in the service that is open either: there too it
   * counts as apart at once, and not only from the next one.
   */
  readonly neverTouched?: true
}
export interface Published {
  readonly revision: number
  readonly changes: readonly Change[]
}

/** GET /menu/revisions?station= : newest first. */
export interface MenuRevisions {
  readonly revisions: readonly {
    readonly revision: number
    /** Epoch milliseconds; null: before that was kept. */
    readonly at: number | null
  }[]
}

/** GET /menu/compare?station=&from=&to= : revisions by number, or `draft`. */
export interface Compared {
  readonly changes: readonly Change[]
}

/** POST /menu/back: the revision's rows become the draft; nothing is published by it. */
export interface BackTo {
  readonly station: string
  readonly saw: number
  readonly revision: number
}

export type MenuRefusal =
  | AccessRefusal
  | 'no-such-station'
  | 'no-such-revision'
  | 'no-such-set'
  /** Somebody changed the same row since. */
  | 'stale'
  /** A step can't be taken. */
  | 'step-refused'
  /** It isn't published while something is wrong with it. */
  | 'has-problems'

export type MenuAnswer<Done> =
  | ({ readonly code: 'done' } & Done)
  | {
      readonly code: Exclude<MenuRefusal, 'stale' | 'step-refused' | 'has-problems'>
      /** Milliseconds until the next try. */
      readonly again?: number
    }
  | StaleAnswer
  | {
      readonly code: 'step-refused'
      readonly step: number
      readonly why: StepRefusal
      readonly other?: Other
    }
  | { readonly code: 'has-problems'; readonly problems: readonly Problem[] }

export interface StaleAnswer {
  readonly code: 'stale'
  readonly saw: number
  /** As they are now: all that changed since what was seen. */
  readonly rows: ChangedRows
  /** Those of them that this save would have written over. */
  readonly changed: readonly EntityKey[]
}
