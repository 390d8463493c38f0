import { describe, expect, it } from 'vitest'
import { isRunning } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { LarderLog } from '#server/larder/larder-rail.ts'
import { openRail } from '#server/rail/rail.ts'
import { createGatedLog } from '#tests/support/gated-log.ts'
import { createLarderRoom } from '#tests/support/larder-room.ts'
import { LOADS, OPEN } from '#tests/support/orders.ts'
import { createRailRoom, NOON, settle } from '#tests/support/rail-room.ts'

const SLAW = 612_345

const ends = (lot?: string): Command => ({
  type: 'endFood',
  what: 'pan',
  id: 'pan-slaw',
  end: 'dry',
  amount: SLAW,
  how: 'weighed',
  preparedOn: '2026-03-01',
  initials: 'KT',
  ...(lot === undefined ? {} : { lot }),
})

/** A service whose pans are loaded, and the house's larder over the same log. */
const room = async () => {
  const gated = createGatedLog()
  const larderRoom = await createLarderRoom({ at: NOON, log: gated.log.as() as LarderLog })
  const { rail, ports } = await createRailRoom({ log: gated.log, larder: larderRoom.larder })
  await rail.submit('open', OPEN, 'lead')
  for (const [index, load] of LOADS.entries()) await rail.submit(`load-${index}`, load, 'lead')
  return { ...larderRoom, gated, rail, ports }
}

describe('set aside', () => {
  it('[LA33] what a service sets aside is in the larder by the same commit, with all that goes along', async () => {
    const { rail, larder, gated } = await room()
    const before = gated.log.commits()
    expect(await rail.submit('end', ends('slaw-1'), 'lead')).toMatchObject({ answer: 'accepted' })
    expect(gated.log.commits()).toBe(before + 1)
    expect((await larder.newest()).lots['slaw-1']).toMatchObject({
      component: 'slaw',
      amount: SLAW,
      kept: 'dry',
      stoodOpen: true,
      how: 'weighed',
      dateMark: { lastDay: '2026-03-07' },
      from: { what: 'pan', id: 'pan-slaw' },
    })
  })

  it('[LA33] cooled yesterday, served today: another service takes it, after the first is closed', async () => {
    const { rail, larder, ports } = await room()
    await rail.submit('end', ends('slaw-1'), 'lead')
    expect(await rail.submit('close', { type: 'close' }, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    const next = await openRail({ ...ports, service: 's-next' })
    await next.submit('open-next', OPEN, 'lead')
    const take: Command = { type: 'takeFromLarder', lot: 'slaw-1', amount: 600_000 }
    expect(await next.submit('take', take, 'lead')).toMatchObject({ answer: 'accepted' })
    const state = next.state()
    expect(isRunning(state) && state.batches.b1).toMatchObject({
      component: 'slaw',
      amount: 600_000,
      dateMark: { lastDay: '2026-03-07' },
      stoodOpen: true,
    })
    expect((await larder.newest()).lots['slaw-1']?.amount).toBe(SLAW - 600_000)
  })

  it('[LA33] a lot’s name is used once, and an append that fails sets nothing aside', async () => {
    const { rail, larder, gated, append } = await room()
    gated.fail(new Error('the disk is full'))
    void rail.submit('end', ends('slaw-1'), 'lead')
    await settle()
    expect((await larder.newest()).lots).toEqual({})
    const other = await room()
    await other.rail.submit('end', ends('slaw-1'), 'lead')
    const lots = (await other.larder.newest()).lots
    const again = { ...ends('slaw-1'), id: 'pan-tuna' } as Command
    expect(await other.rail.submit('again', again, 'lead')).toMatchObject({ answer: 'refused' })
    expect((await other.larder.newest()).lots).toEqual(lots)
    expect(await append()).toBe('committed')
  })
})
