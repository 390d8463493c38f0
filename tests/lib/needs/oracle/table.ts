/** The oracle's opinions of one place on every component and need, as numbers to compare with. */
import type { Need } from '#lib/station/codes/codes.ts'
import { CLASSES, type Class, createOracle, type Place } from '#tests/lib/needs/oracle/oracle.ts'

export const WHYS = [
  'contains',
  'unknown',
  'may-contain',
  'not-listed',
  'soiled',
  'contact',
  'contact-unknown',
] as const

/** Place of a class from the worst, 0, to `ok`, 4. */
export const rankOf = (one: Class): number => CLASSES.indexOf(one)
export const FINE = rankOf('note')

const bitsOf = (whys: readonly string[]): number =>
  WHYS.reduce((sum, why, index) => (whys.includes(why) ? sum | (1 << index) : sum), 0)

export interface Cell {
  readonly rank: number
  /** One bit for each of WHYS that has to be named. */
  readonly named: number
  /** Bits that may be told beside them. */
  readonly noted: number
  readonly fromBackup: boolean
}

export type Table = Readonly<Record<string, readonly Cell[]>>

/** By component, then in the order of the needs. */
export const tableOf = (place: Place, needs: readonly Need[]): Table => {
  const opinion = createOracle(place)
  return Object.fromEntries(
    place.station.components.map(({ id }) => [
      id,
      needs.map((need): Cell => {
        const { class: one, named, noted, fromBackup } = opinion(id, need)
        return { rank: rankOf(one), named: bitsOf(named), noted: bitsOf(noted), fromBackup }
      }),
    ]),
  )
}

export const bitOf = (why: string): number => bitsOf([why])
