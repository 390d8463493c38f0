import { describe, expect, test } from 'vitest'
import type { Command } from '#lib/spine/registry.ts'
import { usual } from '#tests/support/orders.ts'
import { createOpenRoom } from '#tests/support/rail-room.ts'

const withNeed: Command = {
  type: 'send',
  builds: [
    {
      ...usual('garden-chicken'),
      asked: 'needs',
      needs: [{ code: 'peanut', handling: 'leave-out', reason: null }],
    },
  ],
  paid: false,
  readBack: true,
}

const withNone: Command = { type: 'send', builds: [usual()], paid: false, readBack: true }

describe('an order with needs', () => {
  test.each([
    ['of one of its ingredients is newer than the service has', { 'bell-peppers': 2 }],
    ['is not known', null],
  ])('[R20] is refused where the house’s label %s; one without goes on', async (_, newest) => {
    const { give } = await createOpenRoom({ newestLabels: () => newest })
    expect(await give('needs', withNeed, 'counter')).toEqual({
      id: 'needs',
      answer: 'refused',
      refusal: { code: 'needs-not-checked', why: 'stale' },
    })
    expect(await give('none', withNone, 'counter')).toMatchObject({ answer: 'accepted' })
  })

  test('[R20] is taken where the service has the newest, also by what its batch changes first', async () => {
    const { give } = await createOpenRoom({ newestLabels: () => ({ 'not-here': 7, almonds: 1 }) })
    const stale = give('stale', withNeed, 'counter')
    await give('change', { type: 'notSameProduct', ingredient: 'almonds' }, 'assembly')
    expect(await stale).toMatchObject({ refusal: { why: 'stale' } })
    const almonds = { ...withNeed, builds: [usual('bean-and-pepper')] } as Command
    expect(await give('needs', almonds, 'counter')).toMatchObject({ answer: 'accepted' })
  })

  test('[R21] labels that change leave the revision, and get the version that the guard holds', async () => {
    const { give, entries, rail, ports } = await createOpenRoom()
    await give('on', { type: 'signOn' }, 'in-charge')
    const change = (ingredient: string) =>
      give(`label-${ingredient}`, { type: 'notSameProduct', ingredient }, 'assembly')
    await Promise.all(['bell-peppers', 'brown-rice'].map(change))
    await change('pita')
    const told = (await entries()).flatMap((one) =>
      one.type === 'labelChanged' ? [[one.ingredient, one.revision, one.version]] : [],
    )
    // The opening raised it first.
    expect(told).toEqual([
      ['bell-peppers', 1, 2],
      ['brown-rice', 1, 2],
      ['pita', 1, 3],
    ])
    expect(rail.state().revision).toBe(1)
    expect(rail.state().labelVersions).toEqual({ 'bell-peppers': 2, 'brown-rice': 2, pita: 3 })
    expect(await ports.log.guard('labels:house')).toBe(3)
  })

  test('[R21] a change that another server was ahead of gets a version of its own', async () => {
    const { give, gated, entries } = await createOpenRoom()
    gated.overtake((log) => log.append('@house', 0, [], [], [{ key: 'labels:house', expected: 1 }]))
    await give('label', { type: 'notSameProduct', ingredient: 'pita' }, 'assembly')
    expect((await entries()).at(-1)).toMatchObject({ type: 'labelChanged', version: 3 })
  })
})
