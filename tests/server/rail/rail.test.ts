import { describe, expect, test } from 'vitest'
import { NOT_OPENED } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { openRail } from '#server/rail/rail.ts'
import { LOADS, OPEN, order } from '#tests/support/orders.ts'
import { createOpenRoom, createRailRoom, settle } from '#tests/support/rail-room.ts'

const START: Command = { type: 'start', ticket: 1, letter: 'A' }
const FINISH: Command = { type: 'finish', ticket: 1, letter: 'A' }

describe('a batch', () => {
  test('[R1] an order, its start and its finish can come in one batch, and only in that order', async () => {
    const { give, entries } = await createOpenRoom()
    const answers = await Promise.all([
      give('early', START),
      give('order', order()),
      give('start', START),
      give('finish', FINISH),
    ])
    expect(answers.map(({ answer }) => answer)).toEqual([
      'refused',
      'accepted',
      'accepted',
      'accepted',
    ])
    const types = (await entries()).slice(11).map(({ type }) => type)
    expect(types).toEqual(['ticketSent', 'buildStarted', 'buildFinished'])
  })

  test('[R1] of two that want the last portion the first gets it', async () => {
    const { give, rail } = await createRailRoom()
    await give('open', OPEN)
    for (const [index, load] of LOADS.entries()) {
      const last = load.type === 'load' && load.pan === 'pan-chicken'
      await give(`load-${index}`, last ? { ...load, amount: (load.amount ?? 0) / 24 } : load)
    }
    const [first, second] = await Promise.all([give('one', order()), give('other', order())])
    expect(first).toMatchObject({ answer: 'accepted', position: 12 })
    expect(second).toMatchObject({ refusal: { code: 'sold-out', component: 'chicken' } })
    expect(rail.position()).toBe(12)
  })

  test('[R2] thirty orders in one turn are one append with all their answers, for all that the pans hold', async () => {
    const { give, gated, rail } = await createOpenRoom()
    const before = { appends: gated.attempts.length, commits: gated.log.commits() }
    const ids = Array.from({ length: 30 }, (_, index) => `order-${index}`)
    await Promise.all(ids.map((id) => give(id, order())))
    expect(gated.attempts.length - before.appends).toBe(1)
    expect(gated.log.commits() - before.commits).toBe(1)
    const appended = gated.attempts.at(-1)
    expect(appended?.answers.map(({ command }) => command)).toEqual(ids)
    expect(appended?.entries.map(({ position }) => position)).toEqual(
      Array.from({ length: 24 }, (_, index) => 12 + index),
    )
    expect(rail.position()).toBe(35)
  })

  test('[R2] what arrives during an append is the next one', async () => {
    const { give, gated } = await createOpenRoom()
    const before = gated.attempts.length
    gated.hold()
    const first = give('one', order())
    await settle()
    const others = [give('two', order()), give('three', order())]
    await settle()
    expect(gated.attempts.length - before).toBe(1)
    gated.open()
    await Promise.all([first, ...others])
    expect(gated.attempts.slice(before).map(({ answers }) => answers.length)).toEqual([1, 2])
  })

  test('[R2] a refusal alone is stored, and nothing is shown', async () => {
    const { give, gated, shown, ports } = await createOpenRoom()
    const before = shown.length
    await give('early', START)
    expect(gated.attempts.at(-1)?.entries).toEqual([])
    expect(await ports.log.answerTo('s-lunch', 'early')).toMatchObject({
      answer: { answer: 'refused', refusal: { code: 'unknown', what: 'ticket', id: '1' } },
    })
    expect(shown).toHaveLength(before)
  })

  test('[R34] what a refused command saw is appended with its refusal', async () => {
    const { give, entries, guests, time } = await createRailRoom({
      station: () => ({ revision: 1, document: demoStation }),
    })
    const read = (tenths: number) => ({
      reading: { tenths, scale: 'F', probe: '1', where: 'middle-stirred' } as const,
      initials: 'KT',
    })
    await give('open', OPEN)
    const amount = 400_000
    await give('start', { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1 })
    await give('done', { type: 'finishBatch', batch: 'b1', amount })
    await give('load', { type: 'load', pan: 'pan-tuna', amount, batch: 'b1', ...read(390) })
    const clock = {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: time.clock.now(),
      from: 'cold',
      rule: '4h',
      ...read(480),
    } as const
    const answer = await give('clock', clock)
    expect(answer).toMatchObject({ refusal: { why: 'start-out-of-limits' } })
    expect((await entries()).slice(-2)).toMatchObject([
      { type: 'temperatureRead', command: 'clock', inLimits: false },
      { type: 'takenOffSale', command: 'clock', id: 'pan-tuna' },
    ])
    expect(await guests.of('s-lunch', 'initials')).toMatchObject({ clock: 'KT' })
    const count = (await entries()).length
    expect(await give('clock', clock)).toEqual(answer)
    expect(await entries()).toHaveLength(count)
  })

  test('[R3] nothing is shown or answered while the append is under way', async () => {
    const { give, gated, rail, shown } = await createOpenRoom()
    const heard: string[] = []
    rail.onShow(() => heard.push('shown'))
    gated.hold()
    const before = shown.length
    const answered = give('order', order()).then(() => heard.push('answered'))
    await settle()
    expect(gated.attempts.at(-1)?.entries).toHaveLength(1)
    expect(heard).toEqual([])
    expect(shown).toHaveLength(before)
    expect(rail.position()).toBe(11)
    expect(rail.eventsAfter(11)).toEqual([])
    gated.open()
    await answered
    expect(heard).toEqual(['shown', 'answered'])
    expect(rail.position()).toBe(12)
  })

  test('[R3] idle waits for what is under way, and only for that', async () => {
    const { give, gated, rail } = await createOpenRoom()
    await rail.idle()
    gated.hold()
    const heard: string[] = []
    const answered = give('order', order()).then(() => heard.push('answered'))
    const idle = rail.idle().then(() => heard.push('idle'))
    await settle()
    expect(heard).toEqual([])
    gated.open()
    await Promise.all([answered, idle])
    expect([...heard].sort()).toEqual(['answered', 'idle'])
  })
})

describe('the log and the state', () => {
  test('[R11] an event that does not fold is not committed, and its command is refused', async () => {
    const station = { revision: 1, document: { wells: null } as never }
    const { give, entries, logged, ports } = await createRailRoom({ station: () => station })
    expect(await give('open', OPEN)).toEqual({
      id: 'open',
      answer: 'refused',
      refusal: { code: 'could-not-decide' },
    })
    expect(await entries()).toEqual([])
    expect(await ports.log.answerTo('s-lunch', 'open')).not.toBeNull()
    expect(logged.join()).toContain('a command failed')
  })

  test('[R10] a decision that throws is refused and logged, and its neighbours are accepted', async () => {
    const { give, logged, faults, entries } = await createOpenRoom()
    const broken = { type: 'send', builds: null } as never
    const [before, thrown, after] = await Promise.all([
      give('before', order()),
      give('broken', broken),
      give('after', order()),
    ])
    expect(before).toMatchObject({ answer: 'accepted', position: 12 })
    expect(thrown).toMatchObject({ answer: 'refused', refusal: { code: 'could-not-decide' } })
    expect(after).toMatchObject({ answer: 'accepted', position: 13 })
    expect((await entries()).map(({ command }) => command)).not.toContain('broken')
    expect(logged.filter((line) => line.includes('a command failed'))).toHaveLength(1)
    expect(faults).toEqual([])
  })

  test('[R11] all that was committed folds to the state that is shown', async () => {
    const { give, entries, rail } = await createOpenRoom()
    await give('order', order())
    await give('start', START)
    await give('finish', FINISH)
    expect((await entries()).reduce((state, event) => evolve(state, event), NOT_OPENED)).toEqual(
      rail.state(),
    )
  })

  test('[R9] a failing store answers nobody, shows nothing and ends the process', async () => {
    const { give, gated, rail, shown, faults, entries } = await createOpenRoom()
    const before = shown.length
    const failure = new Error('disk I/O error')
    gated.fail(failure)
    const heard: string[] = []
    void give('one', order()).then(() => heard.push('one'))
    await settle()
    void give('two', order()).then(() => heard.push('two'))
    await settle()
    expect(faults).toEqual([failure])
    expect(heard).toEqual([])
    expect(shown).toHaveLength(before)
    expect(rail.position()).toBe(11)
    expect(await entries()).toHaveLength(11)
  })

  test('[R9] a name that cannot be written ends the process as well, before the append', async () => {
    const room = await createOpenRoom()
    room.guests.put = () => Promise.reject(new Error('disk full'))
    const heard: string[] = []
    void room.give('order', order(undefined, 'Ada')).then(() => heard.push('answered'))
    await settle()
    expect(room.faults).toEqual([new Error('disk full')])
    expect(heard).toEqual([])
    expect(await room.entries()).toHaveLength(11)
  })

  test('[R17] who catches up gets exactly what came after, or nothing to fold', async () => {
    const { give, rail, ports } = await createOpenRoom()
    await give('order', order())
    expect(rail.eventsAfter(12)).toEqual([])
    expect(rail.eventsAfter(10)?.map(({ position }) => position)).toEqual([11, 12])
    expect(rail.eventsAfter(0)).toHaveLength(12)
    expect(rail.eventsAfter(13)).toBeNull()
    for (let turn = 0; turn < 2_000; turn += 1)
      await give(`pay-${turn}`, { type: 'pay', ticket: 1, paid: turn % 2 === 0 })
    expect(rail.position()).toBe(2_012)
    expect(rail.eventsAfter(11)).toBeNull()
    expect(
      rail
        .eventsAfter(12)
        ?.map(({ position }) => position)
        .at(0),
    ).toBe(13)
    expect(rail.eventsAfter(12)).toEqual(await ports.log.read('s-lunch', 12))
  })

  test('[R19] a screen that fails to be shown something is logged, and the answer comes', async () => {
    const { give, rail, faults, logged } = await createOpenRoom()
    rail.onShow(() => {
      throw new Error('no such screen')
    })
    const after: number[] = []
    rail.onShow((events) => after.push(events.length))
    expect(await give('order', order())).toMatchObject({ answer: 'accepted' })
    expect(after).toEqual([1])
    expect(faults).toEqual([])
    expect(logged.join()).toContain('was not shown')
  })

  test('[R17] a rail that is opened on a log stands where the log ends', async () => {
    const { give, rail, ports } = await createOpenRoom()
    await give('order', order())
    const again = await openRail(ports)
    expect(again.position()).toBe(12)
    expect(again.state()).toEqual(rail.state())
    expect(again.eventsAfter(11)).toEqual(rail.eventsAfter(11))
  })
})
