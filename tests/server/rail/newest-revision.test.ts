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
    ['is newer than the service', 2],
    ['is not known', null],
  ])('[R20] is refused where the station’s document %s; one without goes on', async (_, newest) => {
    const asked: string[] = []
    const { give } = await createOpenRoom({
      newestRevision: (station) => {
        asked.push(station)
        return newest
      },
    })
    expect(await give('needs', withNeed, 'counter')).toEqual({
      id: 'needs',
      answer: 'refused',
      refusal: { code: 'needs-not-checked', why: 'stale' },
    })
    expect(await give('none', withNone, 'counter')).toMatchObject({ answer: 'accepted' })
    expect(new Set(asked)).toEqual(new Set(['alder-hall']))
  })

  test('[R20] is taken where the service has the newest', async () => {
    const { give } = await createOpenRoom()
    expect(await give('needs', withNeed, 'counter')).toMatchObject({ answer: 'accepted' })
  })

  test('[R21] labels that change in one batch each make a revision of their own', async () => {
    const { give, entries, rail } = await createOpenRoom()
    await give('on', { type: 'signOn' }, 'in-charge')
    const changed = ['bell-peppers', 'brown-rice'].map((ingredient, index) =>
      give(`label-${index}`, { type: 'notSameProduct', ingredient }, 'assembly'),
    )
    expect((await Promise.all(changed)).map(({ answer }) => answer)).toEqual([
      'accepted',
      'accepted',
    ])
    const revisions = (await entries()).flatMap((one) =>
      one.type === 'labelChanged' ? [one.revision] : [],
    )
    expect(revisions).toEqual([2, 3])
    expect(rail.state().revision).toBe(3)
  })
})
