/** All that a card says at the yield that is asked for. */
import { type Amount, scaled } from '#lib/recipes/amount.ts'
import { type Batches, batchesOf } from '#lib/recipes/batches.ts'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import { type CardCost, costOfCard, costOfPortion } from '#lib/recipes/card-cost.ts'
import { madeBy } from '#lib/recipes/factor.ts'
import { ONE, type Rational, times } from '#lib/recipes/rational.ts'
import { type ScaledLine, scaledCard } from '#lib/recipes/scaled-card.ts'
import { typedYield, type Yield } from '#lib/recipes/typed-yield.ts'
import {
  asItIs,
  fitsTyped,
  type NotWanted,
  type Served,
  type Wanted,
  wantedOf,
  wantedOfLine,
} from '#lib/recipes/wanted.ts'
import { type YieldCheck, yieldCheck } from '#lib/recipes/yield-check.ts'

/** As it stands in the fields; '' where nothing is typed. */
export interface Asked {
  readonly make: string
  /** The line that is at hand, by its place on the card; null: none. */
  readonly handOf: number | null
  readonly hand: string
  readonly fits: string
}

export type Checked =
  | {
      readonly code: 'checked'
      readonly check: YieldCheck & { readonly ok: true }
      readonly portion: Amount
      readonly made: Amount
      readonly portions: Rational
    }
  | {
      readonly code:
        | 'not-served'
        | 'no-portion'
        | 'no-size'
        | 'no-density'
        | 'no-yield'
        | 'not-asked'
    }

export interface RecipeSheet {
  /** Why the card's yield isn't understood; null where it is, or nobody said one. */
  readonly yieldProblem: NotWanted | null
  readonly wanted: Wanted
  /** What is made then; null where the card doesn't say. */
  readonly factor: Rational
  readonly lines: readonly ScaledLine[]
  readonly made: Amount | null
  readonly fits: Batches | NotWanted | null
  readonly checked: Checked
  /** Of the card once; what is asked for costs `factor` times as much. */
  readonly cost: CardCost
  readonly cents: Rational
  readonly portionCents: Rational | null
}

/** What a station takes of it; null where no pan holds the recipe by itself. */
export interface ServedBy extends Served {
  readonly level: number | null
}

const ofNobody: Served = { portion: null, density: null }

const wantedFrom = (card: Card, yields: Yield | null, asked: Asked, served: Served): Wanted => {
  const line = asked.handOf === null ? undefined : card.lines[asked.handOf]
  if (line !== undefined && asked.hand.trim() !== '')
    return wantedOfLine(line.typed, asked.hand, served.density)
  return asked.make.trim() === '' ? asItIs(yields) : wantedOf(yields, asked.make, served)
}

const checkedOf = (
  made: Amount | null,
  yields: Yield | null,
  portions: Rational | null,
  served: ServedBy | null,
): Checked => {
  if (served === null) return { code: 'not-served' }
  if (served.portion === null) return { code: 'no-portion' }
  if (yields === null) return { code: 'no-yield' }
  if (made === null) return { code: 'no-size' }
  const { portion, density, level } = served
  if (portions === null) return { code: 'not-asked' }
  const check = yieldCheck(made, portion, portions, density, level)
  return check.ok ? { code: 'checked', check, portion, made, portions } : { code: 'no-density' }
}

/** Nothing that is typed makes it throw: what isn't understood says why, and the card stays as it is. */
export const recipeSheet = (
  card: Card,
  box: CardBox,
  served: ServedBy | null,
  asked: Asked,
): RecipeSheet => {
  const typed = card.yields.trim() === '' ? null : typedYield(card.yields)
  const yields = typed?.ok ? typed.yields : null
  const wanted = wantedFrom(card, yields, asked, served ?? ofNobody)
  const factor = wanted.ok ? wanted.factor : ONE
  const once = yields === null ? null : madeBy(yields)
  const made = once?.ok ? scaled(once.amount, factor) : null
  const pot = asked.fits.trim() === '' ? null : fitsTyped(asked.fits)
  const cost = costOfCard(card, box)
  return {
    yieldProblem: typed === null || typed.ok ? null : typed,
    wanted,
    factor,
    lines: scaledCard(card, factor, box),
    made,
    fits:
      pot === null
        ? null
        : !pot.ok
          ? pot
          : made === null
            ? { ok: false, code: 'no-portion-size', at: '' }
            : batchesOf(made, pot.fits, served?.density ?? null),
    checked: checkedOf(made, yields, wanted.ok ? wanted.portions : null, served),
    cost,
    cents: times(cost.cents, factor),
    portionCents: served?.portion ? costOfPortion(card, box, served.portion, served.density) : null,
  }
}
