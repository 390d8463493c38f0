/** What a page and the server say to each other about what is kept of people, under /access. */

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
