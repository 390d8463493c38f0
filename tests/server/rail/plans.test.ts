import { describe, expect, test } from 'vitest'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { OPEN, railStation } from '#tests/support/orders.ts'
import { PLAN, type PlanGiven } from '#tests/support/plans.ts'
import { createRailRoom, createTestClock, settle } from '#tests/support/rail-room.ts'

const CLOSE: Command = { type: 'close' }
const THE_DAY_BEFORE = Date.parse('2026-11-25T20:00:00Z')
const HOUR = 3_600_000

const planFor = (over: Partial<PlanGiven> = {}): Command =>
  commandSchema.parse({ ...PLAN, ...over })
const LATER = { doorsOpen: '14:00', doorsClose: '15:00' }
const RICE: Command = { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 }
const DROP: Command = { type: 'dropPlan' }

const processOn = async (log: RailLog, documents = { revision: 1, document: railStation }) => {
  const time = createTestClock(THE_DAY_BEFORE)
  const room = await createRailRoom({ log, clock: time.clock, station: () => documents })
  const services = await openStationServices(room.ports)
  return { room, time, services, documents }
}

/** Where food is cooked, so that it cools in two stages. */
const COOKED = { revision: 1, document: demoStation }

const plannedIn = ({ services }: Pick<Awaited<ReturnType<typeof processOn>>, 'services'>) =>
  services.planned('alder-hall').map(({ service }) => service)

describe('services that are planned', () => {
  test('[PL1] several stand beside the open one, in the order of their doors, and none is followed by itself', async () => {
    const one = await processOn(createMemoryLog())
    const { services } = one
    await services.submit('s-now', 'now', OPEN, 'lead')
    await services.submit('s-late', 'late', planFor(LATER), 'lead')
    await services.submit('s-lunch', 'lunch', planFor(), 'lead')
    expect(plannedIn(one)).toEqual(['s-lunch', 's-late'])
    expect(services.planned('soup-line')).toEqual([])
    expect(services.planned()).toHaveLength(2)
    expect(services.current('alder-hall')?.service).toBe('s-now')
    expect(services.currents().map(({ service }) => service)).toEqual(['s-now'])
  })

  test('[PL1] one that is opened is planned no more, and is followed', async () => {
    const one = await processOn(createMemoryLog())
    const { services } = one
    await services.submit('s-lunch', 'lunch', planFor(), 'lead')
    await services.submit('s-lunch', 'rice', RICE, 'lead')
    expect(await services.submit('s-lunch', 'open', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(plannedIn(one)).toEqual([])
    expect(services.current('alder-hall')?.state()).toMatchObject({
      stage: 'open',
      batches: { b1: { component: 'rice' } },
    })
  })

  test('[PL1] none is opened beside an open one, and stays planned', async () => {
    const one = await processOn(createMemoryLog())
    const { services } = one
    await services.submit('s-now', 'now', OPEN, 'lead')
    await services.submit('s-lunch', 'lunch', planFor(), 'lead')
    expect(await services.submit('s-lunch', 'open', OPEN, 'lead')).toMatchObject({
      refusal: { code: 'service-already-open' },
    })
    await services.submit('s-now', 'close', CLOSE, 'lead')
    expect(plannedIn(one)).toEqual(['s-lunch'])
    expect(await services.submit('s-lunch', 'again', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
  })

  test('[PL40] that two entries are one person’s counts, though initials are set apart before', async () => {
    const { services } = await processOn(createMemoryLog())
    const kt = { initials: 'KT', adult: true, from: '08:00', to: '12:00' }
    const crew = [kt, { ...kt, initials: 'AB', adult: false }]
    const twice = planFor({ crew: [...crew, { ...kt, from: '11:00', to: '13:00' }] })
    expect(await services.submit('s-lunch', 'twice', twice, 'lead')).toMatchObject({
      refusal: { code: 'there-twice', from: '11:00', to: '13:00' },
    })
    expect(await services.submit('s-lunch', 'lunch', planFor({ crew }), 'lead')).toMatchObject({
      answer: 'accepted',
    })
  })

  test('[PL7] a restart comes back to the open one, and to each that is planned', async () => {
    const log: RailLog = createMemoryLog()
    const { services } = await processOn(log)
    // Planned first and opened last, and another way round.
    await services.submit('s-lunch', 'lunch', planFor(), 'lead')
    await services.submit('s-now', 'now', OPEN, 'lead')
    await services.submit('s-now', 'over', CLOSE, 'lead')
    await services.submit('s-lunch', 'open', OPEN, 'lead')
    await services.submit('s-late', 'late', planFor(LATER), 'lead')
    await services.submit('s-never', 'never', planFor({ ...LATER, on: '2026-11-27' }), 'lead')
    await services.submit('s-never', 'drop', DROP, 'lead')
    const again = await processOn(log)
    expect(again.services.current('alder-hall')?.service).toBe('s-lunch')
    expect(again.services.currents().map(({ service }) => service)).toEqual(['s-lunch'])
    expect(plannedIn(again)).toEqual(['s-late'])
  })

  test('[PL7] what fell due in one while no server ran is found at the next start', async () => {
    const log: RailLog = createMemoryLog()
    const first = await processOn(log, COOKED)
    const cooled: Command = commandSchema.parse({
      type: 'recordCooling',
      batch: 'b1',
      reading: { tenths: 1500, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
      initials: 'KT',
      presentUntil: THE_DAY_BEFORE + 7 * HOUR,
    })
    await first.services.submit('s-lunch', 'lunch', planFor(), 'lead')
    await first.services.submit('s-lunch', 'rice', RICE, 'lead')
    const reading = { tenths: 1660, scale: 'F', probe: 'probe 1', where: 'middle-stirred' }
    for (const [id, command] of Object.entries({
      cook: { type: 'recordCooking', batch: 'b1', reading, initials: 'KT' },
      done: { type: 'finishBatch', batch: 'b1', amount: 2_000_000 },
    }))
      expect(
        await first.services.submit('s-lunch', id, commandSchema.parse(command), 'lead'),
      ).toMatchObject({ answer: 'accepted' })
    expect(await first.services.submit('s-lunch', 'cool', cooled, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    first.services.close()
    const second = await processOn(log, COOKED)
    second.time.pass(12 * HOUR)
    second.services.look()
    await second.services.idle()
    const [rail] = second.services.planned('alder-hall')
    expect(rail?.state().batches.b1?.offSale?.why).toBe('cooling-missed')
    const missed = (await log.read('s-lunch', 0)).find(({ type }) => type === 'coolingMissed')
    expect(missed?.due).toBe(THE_DAY_BEFORE + 2 * HOUR + 1)
  })

  test('[PL3] of two servers that plan at one time one wins, and the other is refused', async () => {
    const within: RailLog = createMemoryLog()
    const gated = createGatedLog(within)
    const [one, two] = [await processOn(gated.log), await processOn(within)]
    gated.overtake(() => two.services.submit('s-two', 'two', planFor(), 'lead'))
    expect(await one.services.submit('s-one', 'one', planFor(), 'lead')).toMatchObject({
      refusal: { code: 'plans-overlap', service: 's-two' },
    })
    expect(await within.services()).toEqual(['s-two'])
    // It stands in nobody's way once it is dropped.
    await two.services.submit('s-two', 'drop', DROP, 'lead')
    expect(await one.services.submit('s-one', 'more', planFor(), 'lead')).toMatchObject({
      answer: 'accepted',
    })
  })

  test('[PL3] a plan that was sent again plans nothing more', async () => {
    const one = await processOn(createMemoryLog())
    const first = await one.services.submit('s-one', 'one', planFor(), 'lead')
    expect(await one.services.submit('s-one', 'one', planFor(), 'lead')).toEqual(first)
    expect(plannedIn(one)).toEqual(['s-one'])
  })

  test('[PL5] a document that is published is followed by the next look, and not by an open service', async () => {
    const documents = { revision: 1, document: railStation }
    const one = await processOn(createMemoryLog(), documents)
    await one.services.submit('s-lunch', 'lunch', planFor(), 'lead')
    await one.services.submit('s-now', 'now', OPEN, 'lead')
    documents.revision = 2
    documents.document = { ...railStation, name: 'Alder Hall, as of today' }
    one.services.look()
    await one.services.idle()
    await settle()
    expect(one.services.planned()[0]?.state()).toMatchObject({
      revision: 2,
      station: { name: 'Alder Hall, as of today' },
    })
    expect(one.services.current('alder-hall')?.state().revision).toBe(1)
  })

  test('[PL6] one that is planned or open is never erased; one that was dropped is', async () => {
    const one = await processOn(createMemoryLog())
    const { services } = one
    await services.submit('s-lunch', 'lunch', planFor(), 'lead')
    await services.submit('s-never', 'never', planFor(LATER), 'lead')
    await services.submit('s-never', 'drop', DROP, 'lead')
    expect(await services.erase(['s-lunch', 's-never'])).toEqual(['s-never'])
    expect(plannedIn(one)).toEqual(['s-lunch'])
  })
})
