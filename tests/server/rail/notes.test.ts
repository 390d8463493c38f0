import { describe, expect, test } from 'vitest'
import { order } from '#tests/support/orders.ts'
import { createOpenRoom, createRailRoom } from '#tests/support/rail-room.ts'

const told = {
  type: 'adviceTold',
  key: 'measure rice',
  kind: 'measure',
  saves: 50,
  reason: {
    why: 'measure',
    component: 'rice',
    chance: 0.5,
    left: 9,
    sd: 3,
    lookedAt: 0,
  },
} as const

describe('what the server itself has to say', () => {
  test('[R33] is appended like all else, of no command, before the commands of its batch', async () => {
    const { rail, entries, give, shown } = await createOpenRoom()
    const before = rail.position()
    rail.note(() => [told])
    await give('order', order())
    const all = (await entries()).slice(before)
    expect(all.map(({ type, command }) => [type, command])).toEqual([
      ['adviceTold', null],
      ['ticketSent', 'order'],
    ])
    expect(shown.flat().at(-2)).toEqual(all[0])
  })

  test('[R33] is decided on the newest state, each after the one before it', async () => {
    const { rail, entries } = await createOpenRoom()
    const asked: number[] = []
    rail.note((state) => {
      asked.push(state.adviceLog.length)
      return state.adviceLog.length === 0 ? [told] : []
    })
    rail.note((state) => {
      asked.push(state.adviceLog.length)
      return state.adviceLog.length === 0 ? [told] : []
    })
    await rail.idle()
    expect(asked).toEqual([0, 1])
    expect((await entries()).filter(({ type }) => type === 'adviceTold')).toHaveLength(1)
  })

  test('[R33] that says nothing appends nothing, nor before a service is open', async () => {
    const { rail, entries } = await createRailRoom()
    rail.note(() => [told])
    await rail.idle()
    expect(await entries()).toEqual([])
    const open = await createOpenRoom()
    const before = open.rail.position()
    open.rail.note(() => [])
    await open.rail.idle()
    expect(open.rail.position()).toBe(before)
  })

  test('[R33] that fails or can’t have happened is logged, and the commands go on', async () => {
    const { rail, give, logged } = await createOpenRoom()
    rail.note(() => {
      throw new Error('a fault')
    })
    rail.note(() => [{ type: 'adviceLapsed', key: 'nothing' }])
    expect(await give('order', order())).toMatchObject({ answer: 'accepted' })
    expect(logged.filter((line) => line.includes('a note failed'))).toHaveLength(2)
  })
})
