/** Amounts and money in US English, as lib/measure states. */
import { centsIn } from '#lib/words/money.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { fluidOuncesIn, piecesIn, type UnitSystem, weightIn } from '#lib/words/say-amount.ts'

/** From millilitres. Throws RangeError unless finite. */
export const sayFluidOunces = (ml: number, system?: UnitSystem): string =>
  fluidOuncesIn(quantityEn, ml, system)

/** From milligrams. Throws RangeError unless finite. */
export const sayWeight = (mg: number, system?: UnitSystem): string =>
  weightIn(quantityEn, mg, system)

/** Whole numbers only; throws RangeError otherwise. */
export const sayPieces = (count: number): string => piecesIn(quantityEn, count)

/** From whole cents; `currency`: an ISO 4217 code. Throws RangeError for others. */
export const sayCents = (cents: number, currency: string | null = null): string =>
  centsIn(quantityEn.locale, cents, currency)

/** An amount in its component's unit, as a kitchen says it. */
export const sayMuch = (amount: number, unit: 'mg' | 'piece'): string =>
  unit === 'piece' ? sayPieces(amount) : sayWeight(amount)
