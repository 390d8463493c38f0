/** What can be done where a recipe makes much more or less than its portions take. */
import {
  ceilOf,
  compared,
  dividedBy,
  floorOf,
  ONE,
  type Rational,
  ratio,
  times,
  toNumber,
} from '#lib/recipes/rational.ts'
import type { YieldCheck } from '#lib/recipes/yield-check.ts'

export type WayOut =
  /** Its portion with another scoop. */
  | { readonly kind: 'scoop'; readonly number: number; readonly portions: number }
  /** Just enough of it; `typed` as under Make, to three figures up. */
  | { readonly kind: 'enough'; readonly factor: Rational; readonly typed: string }
  /** The card so many whole times, where once isn't enough. */
  | { readonly kind: 'batches'; readonly count: number; readonly typed: string }

/** Three figures, up: never less than is taken, and at most a hundredth more; as typed under Make. */
const upTo3 = (exact: Rational): { readonly factor: Rational; readonly typed: string } => {
  const places = 2 - Math.floor(Math.log10(toNumber(exact)))
  const step = places < 0 ? ratio(10 ** -places) : ratio(1, 10 ** places)
  const factor = times(ratio(ceilOf(dividedBy(exact, step))), step)
  const digits = Math.max(0, places)
  const all = String(floorOf(times(factor, ratio(10 ** digits)))).padStart(digits + 1, '0')
  const [whole, part] = [all.slice(0, all.length - digits), all.slice(all.length - digits)]
  const shown = part.replace(/0+$/, '')
  return { factor, typed: `x ${whole}${shown === '' ? '' : `.${shown}`}` }
}

/**
 * Ways out of a check that is noted, none of one that isn't.
 *
 * @param now how often the card is made by what is asked; what follows counts from the card once
 */
export const waysOut = (
  check: YieldCheck & { readonly ok: true },
  now: Rational,
): readonly WayOut[] => {
  if (!check.noted) return []
  const enough = upTo3(times(now, check.factor))
  const count = Number(ceilOf(times(now, check.factor)))
  const isShort = compared(check.factor, ONE) > 0
  return [
    ...(check.scoop ? [{ kind: 'scoop' as const, ...check.scoop }] : []),
    { kind: 'enough', ...enough },
    ...(isShort && compared(enough.factor, ratio(count)) !== 0
      ? [{ kind: 'batches' as const, count, typed: `x ${count}` }]
      : []),
  ]
}
