/** What tasks are worked out of, and what comes of it. Moments are epoch milliseconds, whole minutes. */

/** Somebody of the crew, from a moment to another; one person may be there more than once. */
export interface Here {
  /** As `c1`: no initials and no name. */
  readonly who: string
  /** A certified food protection manager (2-102.12). */
  readonly adult: boolean
  readonly from: number
  readonly to: number
}

export interface Period {
  readonly name: string
  readonly from: number
  readonly to: number
}

/** How long this kitchen needs from the start of a cooling at least, minutes. */
export interface CoolsIn {
  /** To 70 °F. */
  readonly first: number
  /** To 41 °F in all. */
  readonly total: number
}

export interface PrepFood {
  readonly component: string
  readonly loads: number
  readonly portions: number
  /** Until all its loads are made, as measured or said. */
  readonly minutes: number
  /** It is cooked here; else it is mixed, cut or opened. */
  readonly cooked: boolean
  readonly held: 'hot' | 'cold' | 'dry'
  /** Raw meat, fish, eggs, or nobody said: kept from ready-to-eat food (3-302.11). */
  readonly raw: boolean
  /** Hot food that is cooked and cooled before, and reheated. Food that is served cold after cooking always is. */
  readonly ahead: boolean
  /** It is mixed of cans or dry stores at room temperature, which are chilled the day before (3-501.14(B)). */
  readonly fromRoom: boolean
  /** It comes frozen, and thaws in the cooler from the day before (3-501.13(A), from memory). */
  readonly frozen: boolean
  /** null: nobody measured it, so that no time before the limit itself can be counted on. */
  readonly coolsIn: CoolsIn | null
  /** Items that aren't sold without it. */
  readonly needed: readonly string[]
}

export interface PrepPlan {
  readonly timeZone: string
  readonly doorsOpen: number
  readonly doorsClose: number
  /** Nothing is put before it. */
  readonly from: number
  readonly crew: readonly Here[]
  readonly periods: readonly Period[]
  readonly foods: readonly PrepFood[]
  /** Ids of what is on sale. */
  readonly items: readonly string[]
  /** Raw food has a table and a board of its own. */
  readonly ownTable: boolean
  /** What the limits of cooling are here, milliseconds from its start. */
  readonly cooling: { readonly first: number; readonly total: number; readonly fromRoom: number }
}

export type TaskKind =
  | 'thaw'
  | 'chill'
  | 'measure'
  | 'make'
  | 'cook'
  /** Wash, rinse, sanitize the table and its boards. */
  | 'sanitize'
  /** The first reading of its cooling, as its cooking ends: 135 °F or above. */
  | 'cool'
  | 'read-first'
  | 'read-cold'
  | 'reheat'
  | 'labels'
  | 'tools'
  | 'load'
  | 'serve'

/** One after the other where a task is passed on; together where somebody helps. */
export interface Hand {
  readonly who: string
  readonly from: number
  readonly to: number
}

export interface Task {
  /** As `cook.beans`: the same task has the same id, whatever else changes. */
  readonly id: string
  readonly kind: TaskKind
  readonly component: string | null
  /** Of what is made or loaded; null where it has no amount. */
  readonly amount: { readonly loads: number; readonly portions: number } | null
  readonly who: readonly Hand[]
  readonly from: number
  /** The same moment for a reading. */
  readonly to: number
  /** Ids of what has to be done before. */
  readonly after: readonly string[]
}

export type UnreadyWhy =
  | 'nobody-there'
  /** Students are there, and no certified adult. */
  | 'no-adult'
  /** Those who are there have their hands full, or the only table is taken. */
  | 'no-hands'
  /** It can't be over before the food is needed. */
  | 'too-late'

export type WayOut =
  /** Somebody has to be there at a moment from `from` to `to`: a reader, or hands. */
  | { readonly way: 'another-reader'; readonly from: number; readonly to: number }
  /** In ice and shallow pans it can be cold by then: so many minutes from the start, and read then. */
  | { readonly way: 'ice'; readonly readAt: number; readonly minutes: number }
  | { readonly way: 'cook-in-the-morning'; readonly from: number; readonly to: number }
  /** Left out: these items aren't sold then. */
  | { readonly way: 'smaller-menu'; readonly items: readonly string[] }
  | { readonly way: 'none' }

/** What falls to nobody, and why. */
export interface NotReady {
  /** Id of the task; null where it is the crew's time itself. */
  readonly task: string | null
  readonly component: string | null
  readonly at: number
  readonly why: UnreadyWhy
}

export interface Unready extends NotReady {
  /** Where it would be over; the same moment for a reading. */
  readonly to: number
  readonly waysOut: readonly WayOut[]
}

export interface Prepared {
  /** In the order of their start. */
  readonly tasks: readonly Task[]
  /** None: the plan is ready. */
  readonly unready: readonly Unready[]
  /** Students who have nothing to do in a period in which they are there. */
  readonly idle: readonly { readonly who: string; readonly from: number; readonly to: number }[]
}
