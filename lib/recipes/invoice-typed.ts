/** A line of an invoice as it is typed. */
import { timesIn } from '#lib/recipes/amount.ts'
import type { Invoice } from '#lib/recipes/purchased.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import type { AmountCode } from '#lib/recipes/typed-parts.ts'

export interface InvoiceFields {
  readonly date: string
  readonly packs: string
  readonly packTyped: string
  readonly paid: string
}

export const UNTYPED: InvoiceFields = { date: '', packs: '', packTyped: '', paid: '' }

export type InvoiceTyped =
  | { readonly ok: true; readonly invoice: Invoice }
  | {
      readonly ok: false
      readonly field: keyof InvoiceFields
      readonly code: AmountCode
      readonly at: string
    }
  | {
      readonly ok: false
      readonly field: 'date'
      readonly code: 'later'
      readonly at: string
    }

/** Whole cents of money typed as 36, 36.5 or $36.50; null for anything else, and for nothing paid. */
const centsTyped = (typed: string): number | null => {
  const [, whole, part = ''] = /^[$£€]?\s*(\d{1,5})(?:\.(\d{1,2}))?$/.exec(typed.trim()) ?? []
  const cents = whole === undefined ? 0 : Number(whole) * 100 + Number(part.padEnd(2, '0'))
  return cents > 0 ? cents : null
}

const MOST_PACKS = 1_000

/**
 * The line, or the first field that isn't understood. A day that isn't yet is refused: it would count as
 * the newest for years, and no dearer case would.
 * @param today of the station, as 2026-11-02
 */
export const invoiceTyped = (typed: InvoiceFields, today: string): InvoiceTyped => {
  const wrong = (field: keyof InvoiceFields, code: AmountCode, at = ''): InvoiceTyped => ({
    ok: false,
    field,
    code,
    at,
  })
  const packs = /^\d{1,4}$/.test(typed.packs.trim()) ? Number(typed.packs) : 0
  if (packs < 1 || packs > MOST_PACKS) return wrong('packs', 'no-number', typed.packs)
  const pack = typedAmount(typed.packTyped)
  if (!pack.ok) return wrong('packTyped', pack.code, pack.at)
  if (pack.amount === null) return wrong('packTyped', 'no-number', typed.packTyped)
  const cents = centsTyped(typed.paid)
  if (cents === null) return wrong('paid', 'zero', typed.paid)
  if (!/^\d{4}-\d{2}-\d{2}$/.test(typed.date)) return wrong('date', 'empty')
  if (typed.date > today) return { ok: false, field: 'date', code: 'later', at: typed.date }
  return {
    ok: true,
    invoice: { date: typed.date, packs, packTyped: typed.packTyped.trim(), cents },
  }
}

export type PercentTyped =
  | { readonly ok: true; readonly percent: number | null }
  | { readonly ok: false }

/** "4.6 kg of 5.2 kg": what was left of what was trimmed, in percent; null where that isn't said so. */
const ofTrimmed = (typed: string): number | null => {
  const [left = '', all, ...more] = typed.split(/\s+of\s+/i)
  if (all === undefined || more.length > 0) return null
  const [eaten, bought] = [typedAmount(left), typedAmount(all)]
  if (!eaten.ok || !bought.ok || eaten.amount === null || bought.amount === null) return null
  const share = timesIn(eaten.amount, bought.amount, null)
  return share === null ? null : Math.round(toNumber(share) * 10_000) / 100
}

/**
 * Percent to the hundredth, 1 to 100, as "88.5" or as "4.6 kg of 5.2 kg"; nothing typed is null,
 * which is all of it.
 */
export const percentTyped = (typed: string): PercentTyped => {
  const text = typed.trim().replace(/\s*%$/, '')
  if (text === '') return { ok: true, percent: null }
  const percent = /^\d{1,3}(\.\d{1,2})?$/.test(text) ? Number(text) : (ofTrimmed(text) ?? 0)
  return percent >= 1 && percent <= 100 ? { ok: true, percent } : { ok: false }
}
