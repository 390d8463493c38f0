/** Food that was found bad once builds of it were handed over, and what the person in charge says to that. */
/** What was found of food of which builds had been handed over. */
export type FoundBecause =
  | 'out-of-limits'
  | 'reading-missed'
  | 'monitoring-missed'
  | 'too-warm'
  | 'time'
  | 'date'
  | 'not-cooked'
  | 'not-cooled'
  | 'label'
  | 'contact'

/** Nobody found it bad: a reading is missing, so that nobody knows. */
export const isMissed = (why: string): why is 'reading-missed' | 'monitoring-missed' =>
  why === 'reading-missed' || why === 'monitoring-missed'

export interface HandedOverBuild {
  /** "21A" */
  readonly build: string
  /** When it was handed over, epoch milliseconds. */
  readonly at: number
}

/**
 * Whose food was found bad: a pan, a back-up pan or a batch; all that stood on the shelf of made food;
 * or what a guest had of a build that was made again since.
 */
export const HANDED_OVER_OF = ['pan', 'backup', 'batch', 'shelf', 'build'] as const
export type HandedOverOf = (typeof HANDED_OVER_OF)[number]

/**
 * All builds that were handed over with food of a place since it was last known to be good; of the
 * shelf, all that left it since.
 */
export interface HandedOverFound {
  readonly type: 'handedOverFound'
  readonly what: HandedOverOf
  readonly id: string
  readonly because: FoundBecause
  /** Its last reading in limits, or its load where there is none, epoch milliseconds. */
  readonly since: number
  readonly builds: readonly HandedOverBuild[]
}

export const HANDED_OVER_ANSWERS = ['told', 'nothing'] as const

/** The person in charge said what becomes of them, or a late reading made their food good. */
export interface HandedOverAnswered {
  readonly type: 'handedOverAnswered'
  readonly what: HandedOverOf
  readonly id: string
  readonly answer: (typeof HANDED_OVER_ANSWERS)[number] | 'good-again'
  readonly builds: readonly string[]
}

export type HandedOverEvent = HandedOverFound | HandedOverAnswered
