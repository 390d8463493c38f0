/**
 * Exact fractions. A third of a cup has no finite decimal, so amounts of a recipe are fractions of
 * whole numbers of any size until they are shown.
 */
export interface Rational {
  readonly over: bigint
  /** Above 0; in lowest terms with the other. */
  readonly under: bigint
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b))

/** A fraction in lowest terms. Throws RangeError where `under` is 0. */
export const ratio = (over: bigint | number, under: bigint | number = 1): Rational => {
  const [a, b] = [BigInt(over), BigInt(under)]
  if (b === 0n) throw new RangeError('nothing is divided by 0')
  const sign = b < 0n ? -1n : 1n
  const common = gcd(a < 0n ? -a : a, b * sign) || 1n
  return { over: (a * sign) / common, under: (b * sign) / common }
}

export const ZERO = ratio(0)
export const ONE = ratio(1)

export const plus = (a: Rational, b: Rational): Rational =>
  ratio(a.over * b.under + b.over * a.under, a.under * b.under)

export const minus = (a: Rational, b: Rational): Rational =>
  plus(a, { over: -b.over, under: b.under })

export const times = (a: Rational, b: Rational): Rational =>
  ratio(a.over * b.over, a.under * b.under)

/** Throws RangeError where `b` is 0. */
export const dividedBy = (a: Rational, b: Rational): Rational =>
  ratio(a.over * b.under, a.under * b.over)

/** Below 0 where `a` is less, 0 where both are the same, above 0 where it is more. */
export const compared = (a: Rational, b: Rational): number => {
  const apart = a.over * b.under - b.over * a.under
  return apart < 0n ? -1 : apart > 0n ? 1 : 0
}

export const isZero = (a: Rational): boolean => a.over === 0n

/** The largest whole number that isn't above it. */
export const floorOf = (a: Rational): bigint => {
  const whole = a.over / a.under
  return a.over < 0n && whole * a.under !== a.over ? whole - 1n : whole
}

/** The smallest whole number that isn't below it. */
export const ceilOf = (a: Rational): bigint => -floorOf({ over: -a.over, under: a.under })

/** To the nearest multiple of a step above 0, halves up, as on paper. */
export const toStep = (a: Rational, step: Rational): Rational =>
  times(ratio(floorOf(plus(dividedBy(a, step), ratio(1, 2)))), step)

/** The nearest double: for showing, and for what is uncertain anyhow. */
export const toNumber = (a: Rational): number => {
  const whole = floorOf(a)
  const rest = a.over - whole * a.under
  const scale = 10n ** 18n
  return Number(whole) + Number((rest * scale) / a.under) / 1e18
}

/** A plain decimal, "1.5", exactly; null for any other text. */
export const fromDecimal = (text: string): Rational | null => {
  const [, whole, part = ''] = /^(\d+)(?:\.(\d+))?$|^$/.exec(text) ?? []
  return whole === undefined ? null : ratio(BigInt(whole + part), 10n ** BigInt(part.length))
}

/** A double as the decimal that it is written as: 0.854 is 854/1000. Finite, 0 or more. */
export const fromNumber = (value: number): Rational => {
  if (!(value >= 0 && value < 1e15)) throw new RangeError('a number of 0 or more is needed')
  const plain = fromDecimal(String(value))
  if (plain !== null) return plain
  const [digits = '0', power = '0'] = String(value).split('e')
  const tens = ratio(10n ** BigInt(Math.abs(Number(power))))
  const head = fromDecimal(digits) ?? ZERO
  return Number(power) < 0 ? dividedBy(head, tens) : times(head, tens)
}
