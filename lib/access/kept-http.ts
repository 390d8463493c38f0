/** What a page and the server say to each other about what is kept of people, under /access. */
import type { KeptId, KeptRow } from '#lib/access/kept.ts'

/** POST /access/forget, by a lead's device or the person in charge. Needs' codes stay with the stream. */
export interface ForgetGuest {
  readonly service: string
  readonly ticket: number
}

/** POST /access/retention, with the passphrase of somebody in charge. */
export interface SetRetention {
  readonly days: number
  readonly passphrase: string
}

/** POST /access/reasons, with the passphrase of somebody in charge; of one ticket where it is named. */
export interface AskReasons {
  readonly service: string
  readonly passphrase: string
  readonly ticket?: number
}
export interface ReasonsTold {
  readonly reasons: readonly {
    readonly ticket: number
    readonly letter: string
    /** Code of the need. */
    readonly need: string
    readonly reason: 'allergy' | 'coeliac' | 'faith' | 'diet' | 'dislike'
  }[]
}

/** GET /access/privacy */
export interface PrivacyNow {
  /** Days after the close of a service for which its stream is kept. */
  readonly days: number
  readonly rows: readonly (KeptRow & {
    readonly id: KeptId
    /** What is there now; null where it lies in browsers. */
    readonly now: KeptNow | null
  })[]
  /** Epoch milliseconds: the first day on which a stream goes, if clocks go on as they do; null: none waits. */
  readonly nextGoesAt: number | null
  /** The clock tells a time that days have yet to agree on: nothing goes by it. */
  readonly clockInDoubt: boolean
}

export interface KeptNow {
  readonly count: number
  /** Epoch milliseconds of the opening of the oldest service in it, or of when it was put; null where it has none. */
  readonly oldest: number | null
}
