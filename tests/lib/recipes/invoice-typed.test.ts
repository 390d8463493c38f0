import { expect, it } from 'vitest'
import { invoiceTyped, percentTyped } from '#lib/recipes/invoice-typed.ts'

const typed = { date: '2026-11-02', packs: '2', packTyped: '6 x #10 cans', paid: '$72.5' }

it('[RC27] a line of an invoice is read, or its first wrong field named', () => {
  expect(invoiceTyped(typed)).toEqual({
    ok: true,
    invoice: { date: '2026-11-02', packs: 2, packTyped: '6 x #10 cans', cents: 7_250 },
  })
  const wrong = (more: Partial<typeof typed>) => {
    const read = invoiceTyped({ ...typed, ...more })
    return read.ok ? null : read.field
  }
  expect(wrong({ packs: '0' })).toBe('packs')
  expect(wrong({ packs: '1.5' })).toBe('packs')
  expect(wrong({ packTyped: 'a lot' })).toBe('packTyped')
  expect(wrong({ packTyped: 'to taste' })).toBe('packTyped')
  for (const paid of ['0', '0.00', '', 'much', '1,50', '1.234'])
    expect(wrong({ paid })).toBe('paid')
  expect(wrong({ date: '' })).toBe('date')
})

it('[RC26] a percent is 1 to 100, and nothing is all of it', () => {
  expect(percentTyped('80 %')).toEqual({ ok: true, percent: 80 })
  expect(percentTyped(' ')).toEqual({ ok: true, percent: null })
  for (const text of ['0', '101', '80.5', 'most']) expect(percentTyped(text)).toEqual({ ok: false })
})
