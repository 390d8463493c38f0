/** All that a card says at the yield that is asked for. */
import { type Amount, type Density, scaled, timesIn } from '#lib/recipes/amount.ts'
import { type Batches, batchesOf } from '#lib/recipes/batches.ts'
import type { Card, CardBox } from '#lib/recipes/card.ts'
import { type CardCost, costOfCard, costOfPortion } from '#lib/recipes/card-cost.ts'
import { madeBy } from '#lib/recipes/factor.ts'
import type { CorrectedYield } from '#lib/recipes/measured-yield.ts'
import {
  dividedBy,
  floorOf,
  fromNumber,
  isZero,
  ONE,
  type Rational,
  ratio,
  times,
  toNumber,
} from '#lib/recipes/rational.ts'
import { type ScaledLine, scaledCard } from '#lib/recipes/scaled-card.ts'
import { type NotInStep, notInStep } from '#lib/recipes/sheet/not-in-step.ts'
import { type WayOut, waysOut } from '#lib/recipes/sheet/ways-out.ts'
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
  /** For how many portions it has to be enough. */
  readonly portions: string
}

/**
 * Who said how many portions it has to be enough for: the field, what is asked under Make, the card,
 * how its pans are usually loaded; or nobody, so that it is as many as are made.
 */
export type WantedBy = 'asked' | 'make' | 'card' | 'usual' | 'made'

export type Checked =
  | {
      readonly code: 'checked'
      readonly check: YieldCheck & { readonly ok: true }
      readonly portion: Amount
      /** By own batches where some were measured, by the card where none was. */
      readonly made: Amount
      /** What own batches say of it; null where the card alone is known. */
      readonly byBatches: PortionsByBatches | null
      readonly portions: Rational
      readonly by: WantedBy
      readonly ways: readonly WayOut[]
    }
  | {
      readonly code:
        | 'not-served'
        | 'no-portion'
        | 'no-size'
        | 'no-density'
        | 'no-yield'
        /** Not even one portion is made. */
        | 'under-one'
        /** What is typed as the number of portions is none. */
        | 'no-count'
    }

/** Whole portions of what is made, as own batches measured it. */
export interface PortionsByBatches {
  /** One or more. */
  readonly batches: number
  /** What the card says. */
  readonly stated: number
  /** Where the mean of many batches lies, 95 times in 100; null of one batch. */
  readonly range: { readonly low: number; readonly high: number } | null
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
  readonly notInStep: readonly NotInStep[]
  /** Of the card once; what is asked for costs `factor` times as much. */
  readonly cost: CardCost
  readonly cents: Rational
  /** By what the card says it makes. */
  readonly portionCents: Rational | null
  /** By what own batches made of it; null where none was measured. */
  readonly measuredCents: Rational | null
}

/** What a station takes of it; null where no pan holds the recipe by itself. */
export interface ServedBy extends Served {
  readonly level: number | null
  /** Portions that its pans are usually loaded with, together; null where nobody said. */
  readonly usual: number | null
}

const ofNobody: Served = { portion: null, density: null }

const wantedFrom = (card: Card, yields: Yield | null, asked: Asked, served: Served): Wanted => {
  const line = asked.handOf === null ? undefined : card.lines[asked.handOf]
  if (line !== undefined && asked.hand.trim() !== '')
    return wantedOfLine(line.typed, asked.hand, served.density)
  return asked.make.trim() === '' ? asItIs(yields) : wantedOf(yields, asked.make, served)
}

const COUNT = /^\d{1,5}$/

interface Wants {
  readonly portions: Rational
  readonly by: WantedBy
}

const countTyped = (typed: string): Rational | null =>
  COUNT.test(typed.trim()) && Number(typed) > 0 ? ratio(Number(typed)) : null

/** `gives`: whole portions that are made. The pans' usual load counts for the card as it is. */
const portionsWanted = (
  { portions }: MadeNow,
  gives: Rational,
  asked: Asked,
  usual: number | null,
): Wants => {
  const isCard = asked.make.trim() === '' && asked.handOf === null
  if (portions !== null) return { portions, by: isCard ? 'card' : 'make' }
  return isCard && usual !== null && usual > 0
    ? { portions: ratio(usual), by: 'usual' }
    : { portions: gives, by: 'made' }
}

interface MadeNow {
  readonly made: Amount | null
  readonly yields: Yield | null
  readonly factor: Rational
  readonly portions: Rational | null
}

/** Whole ones; what a double can't hold isn't a portion less. */
const wholeOf = (portions: Rational, share: number): number =>
  Math.floor(toNumber(portions) * share + 1e-9)

const byBatchesOf = (stated: Rational, { batches, range }: CorrectedYield): PortionsByBatches => ({
  batches,
  stated: wholeOf(stated, 1),
  range: range && { low: wholeOf(stated, range.low), high: wholeOf(stated, range.high) },
})

const checkedOf = (
  now: MadeNow,
  asked: Asked,
  served: ServedBy | null,
  measured: CorrectedYield | null,
): Checked => {
  const { yields, factor } = now
  const made = now.made && measured ? scaled(now.made, fromNumber(measured.ratio)) : now.made
  if (served === null) return { code: 'not-served' }
  if (served.portion === null) return { code: 'no-portion' }
  if (yields === null) return { code: 'no-yield' }
  if (made === null) return { code: 'no-size' }
  const { portion, density, level, usual } = served
  const gives = timesIn(made, portion, density)
  if (gives === null) return { code: 'no-density' }
  const typed = asked.portions.trim() === '' ? null : countTyped(asked.portions)
  if (asked.portions.trim() !== '' && typed === null) return { code: 'no-count' }
  const whole = ratio(floorOf(gives))
  const wants: Wants =
    typed === null ? portionsWanted(now, whole, asked, usual) : { portions: typed, by: 'asked' }
  if (isZero(wants.portions)) return { code: 'under-one' }
  const check = yieldCheck(made, portion, wants.portions, density, level)
  if (!check.ok) return { code: 'no-density' }
  const stated = measured && now.made && timesIn(now.made, portion, density)
  const byBatches = measured && stated ? byBatchesOf(stated, measured) : null
  const ways = waysOut(check, factor)
  return { code: 'checked', check, portion, made, byBatches, ...wants, ways }
}

const yieldOf = (typed: string): Yield | null => {
  const read = typed.trim() === '' ? null : typedYield(typed)
  return read?.ok ? read.yields : null
}

const fitsOf = (typed: string, made: Amount | null, density: Density | null) => {
  const pot = typed.trim() === '' ? null : fitsTyped(typed)
  if (pot === null || !pot.ok) return pot
  return made === null
    ? ({ ok: false, code: 'no-portion-size', at: '' } as const)
    : batchesOf(made, pot.fits, density)
}

/**
 * Nothing that is typed makes it throw: what isn't understood says why, and the card stays as it is.
 *
 * @param measured what own batches of this card really made; the check counts by it
 */
export const recipeSheet = (
  card: Card,
  box: CardBox,
  served: ServedBy | null,
  asked: Asked,
  measured: CorrectedYield | null = null,
): RecipeSheet => {
  const typed = card.yields.trim() === '' ? null : typedYield(card.yields)
  const yields = typed?.ok ? typed.yields : null
  const wanted = wantedFrom(card, yields, asked, served ?? ofNobody)
  const factor = wanted.ok ? wanted.factor : ONE
  const once = yields === null ? null : madeBy(yields)
  const made = once?.ok ? scaled(once.amount, factor) : null
  const fits = fitsOf(asked.fits, made, served?.density ?? null)
  const share = fits?.ok ? fits.share : ONE
  const cost = costOfCard(card, box)
  const portions = wanted.ok ? wanted.portions : null
  const portionCents = served?.portion
    ? costOfPortion(card, box, served.portion, served.density)
    : null
  return {
    yieldProblem: typed === null || typed.ok ? null : typed,
    wanted,
    factor,
    lines: scaledCard(card, factor, box),
    made,
    fits,
    checked: checkedOf({ made, yields, factor, portions }, asked, served, measured),
    notInStep: notInStep(yields, factor, share, [yieldOf(asked.make), yieldOf(asked.fits)]),
    cost,
    cents: times(cost.cents, factor),
    portionCents,
    measuredCents:
      portionCents && measured ? dividedBy(portionCents, fromNumber(measured.ratio)) : null,
  }
}
