import { expect, it } from 'vitest'
import { invoiceTyped, percentTyped } from '#lib/recipes/invoice-typed.ts'

const typed = { date: '2026-11-02', packs: '2', packTyped: '6 x #10 cans', paid: '$72.5' }
const TODAY = '2026-11-02'

it('[RC27] a line of an invoice is read, or its first wrong field named', () => {
  expect(invoiceTyped(typed, TODAY)).toEqual({
    ok: true,
    invoice: { date: '2026-11-02', packs: 2, packTyped: '6 x #10 cans', cents: 7_250 },
  })
  const wrong = (more: Partial<typeof typed>) => {
    const read = invoiceTyped({ ...typed, ...more }, TODAY)
    return read.ok ? null : read.field
  }
  expect(wrong({ packs: '0' })).toBe('packs')
  expect(wrong({ packs: '1.5' })).toBe('packs')
  expect(wrong({ packTyped: 'a lot' })).toBe('packTyped')
  expect(wrong({ packTyped: 'to taste' })).toBe('packTyped')
  for (const paid of ['0', '0.00', '', 'much', '1,50', '1.234'])
    expect(wrong({ paid })).toBe('paid')
  expect(wrong({ date: '' })).toBe('date')
  expect(wrong({ date: '2026-11-03' })).toBe('date')
  expect(wrong({ date: '2062-11-02' })).toBe('date')
  expect(wrong({ date: '2025-12-31' })).toBeNull()
})

it('[RC26] a percent is 1 to 100, and nothing is all of it', () => {
  expect(percentTyped('80 %')).toEqual({ ok: true, percent: 80 })
  expect(percentTyped(' ')).toEqual({ ok: true, percent: null })
  for (const text of ['0', '101', '80.555', 'most'])
    expect(percentTyped(text)).toEqual({ ok: false })
})

it('[RC67] what is eaten is also said by what was left of what was trimmed, to the hundredth', () => {
  // G. Wall, trade calculations: a striploin of 5.2 kg gives 4.6 kg, 88.46 percent.
  expect(percentTyped('4.6 kg of 5.2 kg')).toEqual({ ok: true, percent: 88.46 })
  expect(percentTyped('88.5')).toEqual({ ok: true, percent: 88.5 })
  expect(percentTyped('3 lb of 48 oz')).toEqual({ ok: true, percent: 100 })
  for (const text of [
    '5.2 kg of 4.6 kg',
    '1 lb of 2 cups',
    '1 lb of',
    '1 of 2 of 3',
    '2-3 lb of 4 lb',
  ])
    expect(percentTyped(text), text).toEqual({ ok: false })
})
