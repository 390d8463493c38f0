import { afterEach, describe, expect, it, vi } from 'vitest'
import type { LarderCommand } from '#lib/larder/command.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { coldRice, coolingRice, setAside } from '#tests/support/larder.ts'
import { createLarderRoom } from '#tests/support/larder-room.ts'
import { settle } from '#tests/support/rail-room.ts'
import { at, degrees } from '#tests/support/readings.ts'

afterEach(() => {
  vi.useRealTimers()
})

const took: LarderCommand = { type: 'anotherTookLot', lot: 'a' }
const reads: LarderCommand = {
  type: 'readLot',
  lot: 'a',
  initials: 'KT',
  reading: { ...degrees(39), probe: 'probe 1', where: 'thickest-part' },
}

const opened = async () => {
  const room = await createLarderRoom({ at: at('14:30') })
  await room.append(setAside('a', coldRice()))
  return room
}

describe('what is asked of the larder', () => {
  it('[LA20] is answered once durable, and the same again is the same answer and no second effect', async () => {
    const { larder, types } = await opened()
    const answer = await larder.submit('one', took)
    expect(answer).toEqual({ answer: 'accepted', position: 2 })
    expect(await larder.submit('one', took)).toEqual(answer)
    expect(await larder.submit('two', took)).toMatchObject({ refusal: { code: 'lot-gone' } })
    expect(await larder.submit('one', { ...took, lot: 'b' })).toEqual({
      answer: 'refused',
      refusal: { code: 'id-used-for-something-else' },
    })
    expect(await types()).toEqual(['lotSetAside', 'lotGone'])
  })

  it('[LA20] of two that want all of it at once, over two servers, one gets it', async () => {
    const { larder, open, types } = await opened()
    const other = await open()
    const answers = await Promise.all([larder.submit('one', took), other.submit('two', took)])
    expect(answers.map(({ answer }) => answer).sort()).toEqual(['accepted', 'refused'])
    expect(await types()).toEqual(['lotSetAside', 'lotGone'])
    expect(await larder.newest()).toEqual(await other.newest())
  })

  it('[LA20] whose initials they are lies apart, under the command’s id', async () => {
    const { larder, log, guests } = await opened()
    await larder.submit('one', reads)
    expect(await guests.of(larder.stream, 'initials')).toEqual({ one: 'KT' })
    const lies = JSON.stringify(await log.read(larder.stream, 0))
    expect(lies).not.toContain('KT')
    // As another one with initials it is the same.
    expect(await larder.submit('one', { ...reads, initials: 'MB' })).toMatchObject({
      answer: 'accepted',
    })
  })
})

describe('what falls due in the larder', () => {
  it('[LA21] falls due at its moment while no service is open and nobody asks', async () => {
    vi.useFakeTimers()
    const { larder, append, time, types } = await createLarderRoom({ at: at('14:00') })
    await append(setAside('a', coolingRice('14:00')))
    await vi.advanceTimersByTimeAsync(1)
    time.pass(HOUR_MS)
    await vi.advanceTimersByTimeAsync(HOUR_MS)
    expect(await types()).toEqual(['lotSetAside'])
    time.pass(HOUR_MS + 1)
    await vi.advanceTimersByTimeAsync(HOUR_MS + 1)
    expect(await types()).toEqual(['lotSetAside', 'lotCoolingMissed'])
    larder.close()
  })

  it('[LA21] falls due at the start where it passed while the laptop was off', async () => {
    const { larder, open, time, types, log } = await opened()
    larder.close()
    time.pass(20 * 24 * HOUR_MS)
    // A machine that was off has a monotonic clock of its own: no jump is seen.
    const again = await open()
    again.look()
    await again.idle()
    expect(await types()).toEqual(['lotSetAside', 'lotReadingMissed', 'lotPastDate'])
    const [, , past] = await log.read(again.stream, 0)
    expect(past).toMatchObject({ due: Date.parse('2026-10-08T00:00:00Z'), command: null })
    expect(await again.submit('late', took)).toMatchObject({ refusal: { code: 'lot-bound' } })
    again.close()
  })

  it('[LA22] a clock that jumps binds nothing until somebody says that it is right', async () => {
    const { larder, time, types } = await opened()
    time.set(at('14:30') + 30 * 24 * HOUR_MS)
    larder.look()
    await larder.idle()
    expect(await types()).toEqual(['lotSetAside', 'larderClockJumped'])
    expect(await larder.submit('one', reads)).toMatchObject({
      refusal: { code: 'larder-clock-unsure' },
    })
    await larder.submit('right', { type: 'confirmLarderClock' })
    larder.look()
    await larder.idle()
    expect((await types()).slice(2)).toEqual([
      'larderClockConfirmed',
      'lotReadingMissed',
      'lotPastDate',
    ])
    larder.close()
  })

  it('[LA22] a clock that fell while nothing ran is seen at the start', async () => {
    const { larder, open, time } = await opened()
    larder.close()
    time.set(at('09:00'))
    const again = await open()
    again.look()
    await again.idle()
    expect(again.state().clockJump).toEqual({ byMs: -5.5 * HOUR_MS })
    await again.submit('right', { type: 'confirmLarderClock' })
    expect([again.state().clockJump, again.state().at]).toEqual([null, at('09:00')])
    expect(again.state().lots.a?.unreadSince).not.toBeNull()
    again.close()
  })

  it('[LA20] an overtaken append reads on and decides again', async () => {
    const { larder, append, faults } = await opened()
    const asked = larder.submit('one', { ...took, lot: 'b' })
    await append(setAside('b', coldRice()))
    await settle()
    expect((await asked).answer).toMatch(/accepted|refused/)
    expect(faults).toEqual([])
  })
})
