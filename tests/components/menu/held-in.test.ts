import { expect, it } from 'vitest'
import { heldIn } from '#components/menu/line/held-in.ts'

it.each([
  ['hot', 'cold', 'hot'],
  ['cold', '', 'cold'],
  ['dry', 'hot', 'dry'],
  ['time', 'hot', 'hot'],
  ['time', 'cold', 'cold'],
  ['time', 'dry', 'cold'],
  ['time', '', 'cold'],
] as const)('[ED16] in a %s well, %s before, a component is held %s', (well, before, held) => {
  expect(heldIn(well, before)).toBe(held)
})
