import { expect, it } from 'vitest'
import { followSteps, heldIn } from '#components/menu/line/held-in.ts'

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

it('[ED16] a component follows its well, and what that doesn’t change is left alone', () => {
  const draft = { station: 's', rows: { 'component:seeds': { name: 'Seeds', held: 'dry' } } }
  const put = (held: string) => [{ do: 'put', entity: 'component', id: 'seeds', fields: { held } }]
  expect(followSteps(draft, 'seeds', 'time')).toEqual(put('cold'))
  expect(followSteps(draft, 'seeds', 'hot')).toEqual(put('hot'))
  expect(followSteps(draft, 'seeds', 'dry')).toEqual([])
  expect(followSteps(draft, 'seeds', null)).toEqual([])
  expect(followSteps(draft, 'nothing', 'hot')).toEqual([])
})
