/** Yields as they are typed on a card: "serves 24", "4 qt", "makes 2 half pans". */
import { PAN_DEPTHS_IN, PAN_SIZES, type PanDepthIn, type PanSize } from '#lib/measure/pans.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import { isZero, type Rational } from '#lib/recipes/rational.ts'
import { amountFrom } from '#lib/recipes/typed-amount.ts'
import {
  isRangeAt,
  type NotUnderstood,
  notUnderstood,
  numberAt,
  tokensOf,
} from '#lib/recipes/typed-parts.ts'

export type Yield =
  /** `each` where it is said: "50 servings of 1/4 cup". */
  | { readonly kind: 'portions'; readonly count: Rational; readonly each: Amount | null }
  | { readonly kind: 'amount'; readonly amount: Amount }
  /** The depth is null where it isn't said: then nobody knows how much that is. */
  | {
      readonly kind: 'pans'
      readonly count: Rational
      readonly size: PanSize
      readonly depthIn: PanDepthIn | null
    }

export type TypedYield = { readonly ok: true; readonly yields: Yield } | NotUnderstood

const understood = (yields: Yield): TypedYield => ({ ok: true, yields })

const HEAD = /^(yields?|makes?|serves?|feeds|about|approx|portions?|servings?)$/i
const PORTIONS = /^(portions?|servings?|serves|guests|people)$/i

/** Portions and what may stand behind them: "of 1/4 cup". */
const portionsFrom = (tokens: readonly string[], at: number, count: Rational): TypedYield => {
  if (tokens[at] === undefined) return understood({ kind: 'portions', count, each: null })
  const each = amountFrom(tokens, /^(of|x|,)$/i.test(tokens[at]) ? at + 1 : at)
  return each.ok
    ? understood({ kind: 'portions', count, each: each.amount })
    : each.code === 'no-number'
      ? notUnderstood('unknown-word', each.at)
      : each
}

const depthFrom = (tokens: readonly string[], start: number): PanDepthIn | null | undefined => {
  const at = tokens[start] === ',' ? start + 1 : start
  if (tokens[at] === undefined) return null
  const number = numberAt(tokens, at)
  const rest = tokens.slice(number?.next ?? at).join(' ')
  if (number === null || !/^(in|inch|inches)( deep)?$/i.test(rest)) return undefined
  const depth = Number(number.value.over) / Number(number.value.under)
  return PAN_DEPTHS_IN.find((one) => one === depth)
}

/**
 * What a card says that it makes, exactly, or why that isn't understood. A bare number counts
 * portions. A yield of zero is refused.
 */
export const typedYield = (typed: string): TypedYield => {
  const tokens = tokensOf(typed.replaceAll(':', ' ').replaceAll('-size', ''))
  if ('ok' in tokens) return tokens
  let at = 0
  while (HEAD.test(tokens[at] ?? '')) at += 1
  const number = numberAt(tokens, at)
  if (number === null) return notUnderstood('no-number', tokens[at] ?? '')
  const { value: count, next } = number
  if (isRangeAt(tokens, next)) return notUnderstood('range', tokens.slice(at, next + 2).join(' '))
  if (isZero(count)) return notUnderstood('zero')
  const word = tokens[next]
  if (word === undefined || PORTIONS.test(word))
    return portionsFrom(tokens, next + (word === undefined ? 0 : 1), count)
  const size = PAN_SIZES.find((one) => one === word.toLowerCase())
  if (size && /^pans?$/i.test(tokens[next + 1] ?? '')) {
    const depthIn = depthFrom(tokens, next + 2)
    return depthIn === undefined
      ? notUnderstood('unknown-word', tokens.slice(next + 2).join(' '))
      : understood({ kind: 'pans', count, size, depthIn })
  }
  const found = amountFrom(tokens, at)
  if (!found.ok) return found
  return found.amount === null
    ? notUnderstood('no-number')
    : understood({ kind: 'amount', amount: found.amount })
}
