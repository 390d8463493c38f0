const formats = new Map<string, Intl.NumberFormat>()

function formatFor(locale: string, currency: string | null): Intl.NumberFormat {
  const key = `${locale} ${currency ?? ''}`
  const known = formats.get(key)
  if (known !== undefined) return known
  const made = new Intl.NumberFormat(
    locale,
    currency === null
      ? { minimumFractionDigits: 2, maximumFractionDigits: 2 }
      : { style: 'currency', currency },
  )
  formats.set(key, made)
  return made
}

/**
 * Money as it is read, from whole cents (the currency's smallest unit): "4.50", or "$4.50" with
 * the ISO 4217 code. Throws RangeError unless cents are whole, at most 2^53 - 1, and the code is one.
 */
export function centsIn(locale: string, cents: number, currency: string | null = null): string {
  if (!Number.isSafeInteger(cents)) throw new RangeError('money is counted in whole cents')
  const format = formatFor(locale, currency)
  const decimals = format.resolvedOptions().maximumFractionDigits ?? 2
  return format.format(cents === 0 ? 0 : cents / 10 ** decimals)
}
