import type { AmountPart, SpokenUnit } from '#lib/measure/amount-parts.ts'
import type { PanSize } from '#lib/measure/pans.ts'
import type { ScoopColour } from '#lib/measure/scoops.ts'
import type { QuantityWords } from '#lib/words/quantity-words.ts'

const LOCALE = 'en-US'

const WHOLE = new Intl.NumberFormat(LOCALE, { maximumFractionDigits: 0 })
const DECIMALS = [0, 1, 2].map(
  (digits) => new Intl.NumberFormat(LOCALE, { maximumFractionDigits: digits }),
)

const UNITS: Readonly<Record<SpokenUnit, { readonly one: string; readonly many: string }>> = {
  gal: { one: 'gal', many: 'gal' },
  qt: { one: 'qt', many: 'qt' },
  pt: { one: 'pt', many: 'pt' },
  cup: { one: 'cup', many: 'cups' },
  tbsp: { one: 'Tbsp', many: 'Tbsp' },
  tsp: { one: 'tsp', many: 'tsp' },
  flOz: { one: 'fl oz', many: 'fl oz' },
  lb: { one: 'lb', many: 'lb' },
  oz: { one: 'oz', many: 'oz' },
}

const COLOURS: Readonly<Record<ScoopColour, string>> = {
  white: 'white',
  gray: 'gray',
  ivory: 'ivory',
  green: 'green',
  blue: 'blue',
  yellow: 'yellow',
  red: 'red',
  black: 'black',
  purple: 'purple',
  terracotta: 'terracotta',
  pink: 'pink',
  plum: 'plum',
  orange: 'orange',
}

const SIZES: Readonly<Record<PanSize, string>> = {
  full: 'full pan',
  half: 'half pan',
  third: 'third pan',
  quarter: 'quarter pan',
  sixth: 'sixth pan',
  ninth: 'ninth pan',
}

function sayPart({ whole, fraction, unit }: AmountPart): string {
  const numbers = [
    ...(whole > 0 || fraction === null ? [WHOLE.format(whole)] : []),
    ...(fraction === null ? [] : [fraction]),
  ]
  const single = (whole === 1 && fraction === null) || (whole === 0 && fraction !== null)
  return `${numbers.join(' ')} ${single ? UNITS[unit].one : UNITS[unit].many}`
}

/** Quantities in US English; fractions with a plain slash, as a kitchen writes them. */
export const quantityEn: QuantityWords = {
  locale: LOCALE,
  amount: (parts) => parts.map(sayPart).join(' '),
  metric: ({ value, decimals, unit }) => `${(DECIMALS[decimals] ?? WHOLE).format(value)} ${unit}`,
  pieces: (count) => WHOLE.format(count),
  under: (smallest) => `under ${smallest}`,
  minus: (amount) => `-${amount}`,
  scoopColour: (colour) => COLOURS[colour],
  scoop: (number, colour) => (colour === null ? `#${number}` : `#${number} ${COLOURS[colour]}`),
  ladle: (flOz) => `${WHOLE.format(flOz)} fl oz ladle`,
  panSize: (size) => SIZES[size],
  pan: (size, depthIn) => `${SIZES[size]}, ${depthIn === 2.5 ? '2 1/2' : depthIn} in deep`,
}
