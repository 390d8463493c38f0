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
