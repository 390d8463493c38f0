import { expect, test } from 'vitest'
import { labelOf, UNREAD_LABEL } from '#lib/station/label.ts'
import { relabelled } from '#lib/station/relabelled.ts'
import { demoStation } from '#tests/support/service.ts'

test('[M42] an ingredient keeps what it is called with another label', () => {
  const almonds = demoStation.ingredients.find(({ plural }) => plural)
  if (!almonds) throw new Error('no ingredient of the demo station has a plural name')
  const { id, name, plural } = almonds
  const read = { ...labelOf(almonds), claims: { halal: 'not' as const } }
  for (const label of [read, null]) {
    const told = relabelled(demoStation, id, label).ingredients.find((one) => one.id === id)
    expect(told).toEqual({ id, name, plural, ...(label ?? UNREAD_LABEL) })
  }
  expect(labelOf(almonds)).not.toHaveProperty('plural')
})

test('[M42] another product has neither its maker nor its pack, and the same substitutes', () => {
  const [first] = demoStation.ingredients
  if (!first) throw new Error('the demo station has no ingredient')
  const product = { maker: 'Invented mill', pack: '5 kg bag' }
  const products = [{ id: 'other', ...product, ...UNREAD_LABEL }]
  const invoices = [{ date: '2026-11-02', packs: 1, packTyped: '50 lb', cents: 2_500 }]
  const bought = { products, edible: 80, invoices }
  const station = { ...demoStation, ingredients: [{ ...first, ...product, ...bought }] }
  expect(Object.keys(labelOf({ ...first, ...product, ...bought }))).toEqual(
    Object.keys(labelOf(first)),
  )
  expect(relabelled(station, first.id, labelOf(first)).ingredients).toEqual(station.ingredients)
  const other = relabelled(station, first.id, null).ingredients[0]
  expect(other).toEqual({ id: first.id, name: first.name, ...bought, ...UNREAD_LABEL })
})
