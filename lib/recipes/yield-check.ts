/** What a recipe makes against what its portions take. */

import { SCOOP_HANDLES } from '#lib/measure/scoops.ts'
import { type Amount, type Density, timesIn } from '#lib/recipes/amount.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import {
  compared,
  dividedBy,
  floorOf,
  minus,
  ONE,
  type Rational,
  ratio,
  times,
  toNumber,
} from '#lib/recipes/rational.ts'
import { scoopMl } from '#lib/recipes/units.ts'

/** Off by more than this is told. */
const NOTED = ratio(1, 10)

export interface ScoopInstead {
  readonly number: number
  /** Whole portions that the batch gives with it. */
  readonly portions: number
}

export type YieldCheck =
  | {
      readonly ok: true
      /** Portion × count. */
      readonly takes: Amount
      /** Whole portions that are made. */
      readonly gives: number
      /** 0.65: so much more is made than taken; below 0, so much less. */
      readonly over: number
      /** Off by more than a tenth. */
      readonly noted: boolean
      /** Of the recipe: this makes what is taken, exactly. */
      readonly factor: Rational
      /** A level scoop that gives the wanted portions nearest; null where none does within a tenth. */
      readonly scoop: ScoopInstead | null
    }
  | { readonly ok: false; readonly code: 'weight-and-volume' }

/** The scoop of so many level measures that comes nearest, and isn't too large. */
const scoopFor = (
  made: Amount,
  portions: Rational,
  level: number,
  density: Density | null,
): ScoopInstead | null => {
  for (const { number } of SCOOP_HANDLES) {
    const portion: Amount = {
      kind: 'volume',
      size: times(scoopMl(number), ratio(level)),
      written: 'us',
    }
    const gives = timesIn(made, portion, density)
    if (gives === null) return null
    if (compared(gives, portions) < 0) continue
    const over = minus(dividedBy(gives, portions), ONE)
    return compared(over, NOTED) > 0 ? null : { number, portions: Number(floorOf(gives)) }
  }
  return null
}

/**
 * What is made against portions × their size. `portion`: one, as its tool gives it; `portions`
 * wanted, above 0; `level`: how many level scoops one is, for another scoop's sake; null where it
 * isn't scooped. Weight against volume by a density alone.
 */
export const yieldCheck = (
  made: Amount,
  portion: Amount,
  portions: Rational,
  density: Density | null,
  level: number | null,
): YieldCheck => {
  const gives = timesIn(made, portion, density)
  if (gives === null) return { ok: false, code: 'weight-and-volume' }
  const off = minus(dividedBy(gives, portions), ONE)
  const noted = compared(off, NOTED) > 0 || compared(off, { ...NOTED, over: -NOTED.over }) < 0
  return {
    ok: true,
    takes: portionTotal(portion, portions).total,
    gives: Number(floorOf(gives)),
    over: toNumber(off),
    noted,
    factor: dividedBy(portions, gives),
    scoop: noted && level !== null ? scoopFor(made, portions, level, density) : null,
  }
}
