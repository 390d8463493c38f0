import { describe, expect, test } from 'vitest'
import { fingerprintOf } from '#server/rail/fingerprint.ts'
import { openRail } from '#server/rail/rail.ts'
import { LOADS, OPEN, order } from '#tests/support/orders.ts'
import { createOpenRoom } from '#tests/support/rail-room.ts'

const ACCEPTED = { id: 'order', answer: 'accepted', position: 12 }
const USED = { id: 'order', answer: 'refused', refusal: { code: 'id-used-for-something-else' } }

describe('a command that is sent again', () => {
  test('[R4] gets the same answer within one batch', async () => {
    const { give, entries } = await createOpenRoom()
    const answers = await Promise.all([give('order', order()), give('order', order())])
    expect(answers).toEqual([ACCEPTED, ACCEPTED])
    expect(await entries()).toHaveLength(12)
  })

  test('[R4] gets the same answer over batches, also when it would be refused by now', async () => {
    const { give, entries } = await createOpenRoom()
    expect(await give('order', order())).toEqual(ACCEPTED)
    await give('stop', { type: 'stopSelling', what: 'item', id: 'garden-chicken' })
    expect(await give('order', order())).toEqual(ACCEPTED)
    expect(await entries()).toHaveLength(13)
  })

  test('[R4] a refusal stays a refusal, also when it would be accepted by now', async () => {
    const { give } = await createOpenRoom()
    await give('stop', { type: 'stopSelling', what: 'item', id: 'garden-chicken' })
    const refused = await give('order', order())
    expect(refused).toMatchObject({ answer: 'refused', refusal: { code: 'not-selling' } })
    await give('resume', { type: 'resumeSelling', what: 'item', id: 'garden-chicken' })
    expect(await give('order', order())).toEqual(refused)
    expect(await give('order-2', order())).toMatchObject({ answer: 'accepted' })
  })

  test('[R4] gets the same answer after the log was opened anew', async () => {
    const { give, ports, entries } = await createOpenRoom()
    await give('order', order())
    const again = await openRail(ports)
    expect(await again.submit('order', order(), 'counter')).toEqual(ACCEPTED)
    expect(await entries()).toHaveLength(12)
  })

  test('[R4] costs no append', async () => {
    const { give, gated } = await createOpenRoom()
    await give('order', order())
    const before = gated.attempts.length
    await give('order', order())
    expect(gated.attempts).toHaveLength(before)
  })

  test('[R4] is told by its id alone: the same order under two ids is two tickets', async () => {
    const { give, entries } = await createOpenRoom()
    await Promise.all([give('one', order()), give('other', order())])
    expect(await entries()).toHaveLength(13)
  })

  test('[R5] with other content is refused, in one batch and later', async () => {
    const { give, ports, entries } = await createOpenRoom()
    const [first, second] = await Promise.all([
      give('order', order()),
      give('order', order('harbor-tuna')),
    ])
    expect([first, second]).toEqual([ACCEPTED, USED])
    expect(await give('order', order('bean-and-pepper'))).toEqual(USED)
    expect(await give('order', order())).toEqual(ACCEPTED)
    expect(await entries()).toHaveLength(12)
    expect((await ports.log.answerTo('s-lunch', 'order'))?.answer).toEqual({
      answer: 'accepted',
      position: 12,
    })
  })
})

describe('the name on an order', () => {
  test('[R6] is not part of its fingerprint; that there is one is', () => {
    const ada = fingerprintOf(order(undefined, 'Ada'))
    expect(fingerprintOf(order(undefined, 'Grace'))).toBe(ada)
    expect(fingerprintOf(order())).not.toBe(ada)
    expect(fingerprintOf(order('harbor-tuna', 'Ada'))).not.toBe(ada)
    expect(fingerprintOf(OPEN)).not.toBe(fingerprintOf(LOADS[0] ?? OPEN))
  })

  test('[R6] that came first stays when the order is sent again under another', async () => {
    const { give, guests } = await createOpenRoom()
    await give('order', order(undefined, 'Ada'))
    expect(await give('order', order(undefined, 'Grace'))).toEqual(ACCEPTED)
    expect(await guests.of('s-lunch', 'name')).toEqual({ order: 'Ada' })
  })

  test('[R7] is written before the append, and never in the log', async () => {
    const { give, gated, guests, entries, ports } = await createOpenRoom()
    let whenAppended: unknown = null
    gated.overtake(async () => {
      whenAppended = await guests.of('s-lunch', 'name')
    })
    await give('order', order(undefined, 'Ada'))
    expect(whenAppended).toEqual({ order: 'Ada' })
    const stored = JSON.stringify([
      await entries(),
      await ports.log.answerTo('s-lunch', 'order'),
      gated.attempts,
    ])
    expect(stored).not.toContain('Ada')
    expect(stored).toContain('"named":true')
  })

  test('[R7] of an order that was refused is not kept', async () => {
    const { give, guests } = await createOpenRoom()
    await give('stop', { type: 'stopSelling', what: 'item', id: 'garden-chicken' })
    await give('order', order(undefined, 'Ada'))
    expect(await guests.services()).toEqual([])
  })
})
