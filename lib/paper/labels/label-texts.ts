/** What a label says, in words, as it is laid out: its parts in the order in which they are read. */
import type { Weight } from '#lib/paper/page/letter-widths.ts'

/** What a hand writes in a blank. */
export type Fill = 'moment' | 'hour' | 'degrees' | 'initials' | 'words'

/** A word with what belongs to it: printed, or a blank to write it in; or both, a day and its hour. */
export interface Cell {
  readonly label: string
  /** '' where nothing is printed. */
  readonly value: string
  readonly blank: Fill | null
  readonly isLoud: boolean
}

/** Parts that stand on one line while there is room. */
export interface Row {
  readonly kind: 'row'
  readonly cells: readonly Cell[]
}

/** A list that may go on on another label: there it begins with `again`. */
export interface Said {
  readonly kind: 'said'
  readonly lead: string
  readonly again: string
  readonly items: readonly string[]
  readonly weight: Weight
  /** Points, where there is room. */
  readonly pt: number
}

export type Part = Row | Said

/** The line, small: each well's pans, and which are black. */
export interface Drawn {
  readonly wells: readonly (readonly boolean[])[]
  /** "pan 3 of 10", and what it is taken with. */
  readonly beside: readonly string[]
}

export interface LabelTexts {
  readonly id: string
  readonly name: string
  /** What it is: a station, a café, a load; may be ''. */
  readonly about: string
  readonly drawn: Drawn | null
  readonly parts: readonly Part[]
  /** At the foot of the first label: made, discarded, by whom. */
  readonly foot: readonly Row[]
  /** At the foot of the others; '' where no time is printed. */
  readonly footAgain: string
  /** "1 of 2" */
  readonly part: (nth: number, of: number) => string
}
