import { describe, expect, test } from 'vitest'
import { openRail } from '#server/rail/rail.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { order } from '#tests/support/orders.ts'
import { createOpenRoom, type RailRoom, settle } from '#tests/support/rail-room.ts'

/** Another server on the same log, that isn't told of this one's appends. */
const elsewhere = (room: RailRoom, log: RailLog) =>
  openRail({ ...room.ports, log: { ...log, onAdvance: () => () => undefined } })

describe('two servers on one log', () => {
  test('[R8] a conflict: what was decided is thrown away, read on and decided again', async () => {
    const room = await createOpenRoom()
    const { give, gated, rail, entries, shown } = room
    const before = shown.length
    gated.overtake(async (log) => {
      const other = await elsewhere(room, log)
      await other.submit('first', order(), 'counter')
      await other.submit(
        'stop',
        { type: 'stopSelling', what: 'item', id: 'garden-chicken' },
        'lead',
      )
    })
    const [chicken, tuna] = await Promise.all([
      give('second', order()),
      give('third', order('harbor-tuna')),
    ])
    expect(chicken).toMatchObject({ answer: 'refused', refusal: { code: 'not-selling' } })
    expect(tuna).toEqual({ id: 'third', answer: 'accepted', position: 14 })
    expect(gated.attempts.at(-2)?.entries).toHaveLength(2)
    const all = await entries()
    expect(all.slice(11).map(({ command }) => command)).toEqual(['first', 'stop', 'third'])
    expect(all.at(-1)).toMatchObject({ ticket: 2, position: 14 })
    expect(rail.position()).toBe(14)
    expect(shown.slice(before).flat()).toEqual(all.slice(11))
  })

  test('[R8] the other server took the very command: its answer is given', async () => {
    const room = await createOpenRoom()
    const { give, gated, entries } = room
    gated.overtake(async (log) => {
      await (await elsewhere(room, log)).submit('order', order(), 'counter')
    })
    expect(await give('order', order())).toEqual({ id: 'order', answer: 'accepted', position: 12 })
    expect(await entries()).toHaveLength(12)
  })

  test('[R8] where others are always first, the command is not taken and nothing is stored', async () => {
    const room = await createOpenRoom()
    const busy = createGatedLog(room.ports.log)
    const rail = await openRail({
      ...room.ports,
      log: { ...busy.log, append: async () => 'conflict', appendAll: async () => 'conflict' },
    })
    expect(await rail.submit('order', order(), 'counter')).toEqual({
      id: 'order',
      answer: 'not taken',
      because: { code: 'busy' },
    })
    expect(await room.ports.log.answerTo('s-lunch', 'order')).toBeNull()
  })

  test('[R18] what the other appended is shown here, each event once and in order', async () => {
    const room = await createOpenRoom()
    const { rail, shown, give, entries } = room
    const before = shown.length
    const other = await openRail(room.ports)
    await other.submit('one', order(), 'counter')
    await settle()
    expect(rail.position()).toBe(12)
    await give('two', order())
    await other.submit('three', order(), 'counter')
    await settle()
    expect(other.state()).toEqual(rail.state())
    expect(shown.slice(before).flat()).toEqual((await entries()).slice(11))
  })

  test('[R18] also when it comes while this one is at work and has nothing to do after', async () => {
    const room = await createOpenRoom()
    const { rail, gated, give } = room
    const other = await elsewhere(room, room.gated.log)
    gated.hold()
    const refused = give('early', { type: 'start', ticket: 1, letter: 'A' })
    await settle()
    gated.open()
    await Promise.all([refused, other.submit('one', order(), 'counter')])
    await settle()
    expect(rail.position()).toBe(12)
  })
})
