/** One pan of the set-up sheet: what was said of it, what goes in, and what it waits for. */

import type { PutSource } from '#lib/rooms/pans/views/put-sources.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { DateProblem, ToldDates } from '#lib/safety/told-dates.ts'
import type { GivenReading } from '#lib/service/commands/food-fields.ts'

/** A reading in full, with the moment at which it was typed: it is sent later. */
export type ReadInSheet = GivenReading & { readonly at: number }

/** Of a second pack that nobody has said the day of: it is never taken from the first. */
export const NOT_SAID = ''

/** What was said of one pan; what wasn't is as usual. */
export interface SetUpEntry {
  /** Key of the source that was chosen; null: the one that is proposed. */
  readonly source: string | null
  /** null: its usual ones. */
  readonly portions: number | null
  /** It stays empty for now. */
  readonly isLeft: boolean
  /** Key of the source that its reading and its days were said of; null where none of them was. */
  readonly saidOf: string | null
  readonly reading: ReadInSheet | null
  /** Of who took that reading; '' where nobody did. */
  readonly initials: string
  readonly dates: ToldDates | null
  /** When a second pack that goes into the same pan was opened: `NOT_SAID` until that is; null where there is none. */
  readonly alsoOpened: CivilDate | null
  /** Of two packs: a new label with the earliest day was made. */
  readonly isLabelled: boolean
  readonly washed: boolean
}

export const AS_USUAL: SetUpEntry = {
  source: null,
  portions: null,
  isLeft: false,
  saidOf: null,
  reading: null,
  initials: '',
  dates: null,
  alsoOpened: null,
  isLabelled: false,
  washed: false,
}

/** What was read and dated of other food says nothing of what goes in now. */
export const ofSource = (entry: SetUpEntry, source: string | null): SetUpEntry =>
  entry.saidOf === source
    ? entry
    : { ...entry, reading: null, dates: null, alsoOpened: null, isLabelled: false }

export type SetUpWait =
  /** Somebody left it empty for now. */
  | { readonly why: 'left' }
  /** What is in it, or came out of it, waits for somebody's initials. */
  | { readonly why: 'throw-out' }
  | { readonly why: 'no-batch'; readonly isMaking: boolean }
  | { readonly why: 'barred'; readonly problem: LoadProblem }
  | { readonly why: 'washed' }
  | { readonly why: 'opened-on' }
  | { readonly why: 'date'; readonly problem: DateProblem }
  | { readonly why: 'past-date'; readonly lastDay: CivilDate }
  /** Packs of two days are in it, and its label isn't made anew. */
  | { readonly why: 'label' }
  | { readonly why: 'reading' }
  /** Read too long ago for a load, or before its batch was finished. */
  | { readonly why: 'read-again'; readonly at: number }
  | { readonly why: 'out-of-limits' }

const ASKED: ReadonlySet<SetUpWait['why']> = new Set([
  'washed',
  'opened-on',
  'date',
  'label',
  'reading',
  'read-again',
])

/** Whether whoever stands at the line can say it now. */
export const isAsked = ({ why }: SetUpWait): boolean => ASKED.has(why)

/** A load as a command carries it. */
export interface SetUpLoad extends ToldDates {
  readonly type: 'load'
  readonly pan: string
  readonly amount?: number
  readonly batch?: string
  readonly from?: string
  readonly bought?: true
  readonly heldBy?: 'time'
  readonly notFirst?: true
  readonly reading?: GivenReading
  readonly initials?: string
  readonly washed?: true
}

export interface SetUpRow {
  readonly pan: string
  readonly component: string
  /** Portions that are in it already; null while it is empty. */
  readonly holds: number | null
  readonly sources: readonly PutSource[]
  readonly source: PutSource | null
  /** When batches of it that aren't finished were started, epoch milliseconds. */
  readonly making: readonly number[]
  readonly heldBy: HeldBy
  /** A back-up pan goes in as it is. */
  readonly isAll: boolean
  readonly usual: number
  /** That go in, at most `most`. */
  readonly portions: number
  readonly most: number
  /** Portions at which the pan is full; null where that isn't known. */
  readonly capacity: number | null
  readonly needsReading: boolean
  /** Straight from a pack that is kept cold. */
  readonly isPack: boolean
  readonly asksDates: boolean
  readonly asksWashed: boolean
  /** Day 1 of what goes in, as it was said: of two packs the earlier; null while it isn't. */
  readonly openedOn: CivilDate | null
  /** How the pot was read last; null where it wasn't. */
  readonly pot: Reading | null
  /** Why it isn't loaded with the others; null where it is, or holds something. */
  readonly wait: SetUpWait | null
  /** Its load with a reading out of limits, which is refused and recorded; null where there is none. */
  readonly toTell: SetUpLoad | null
  readonly load: SetUpLoad | null
}

/** Day 1 of what packs of one or two days come to: the earlier. */
export const earliestOpened = ({ dates, alsoOpened }: SetUpEntry): ToldDates => {
  const days = [dates?.preparedOn ?? NOT_SAID, alsoOpened ?? NOT_SAID].filter(
    (one) => one !== NOT_SAID,
  )
  const [first] = days.sort()
  return dates?.preparedOn === undefined || first === undefined ? {} : { preparedOn: first }
}
