import { describe, expect, onTestFinished, test } from 'vitest'
import type { LarderCommand } from '#lib/larder/command.ts'
import { isRunning } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import type { Command } from '#lib/spine/registry.ts'
import { labelOf } from '#lib/station/label.ts'
import type { Rail } from '#server/rail/rail.ts'
import type { RailLog } from '#tests/support/gated-log.ts'
import { openLabelHouse, SOUP } from '#tests/support/label-house.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { railStation, usual } from '#tests/support/orders.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const WRAPS = railStation.id

const beans = railStation.ingredients.find((one) => one.id === 'black-beans')
if (!beans) throw new Error('the station has no beans')
const READ = { ...labelOf(beans), readOn: '2026-03-02', readBy: null }

const withoutPeanut: Command = {
  type: 'send',
  builds: [
    {
      ...usual('bean-and-pepper'),
      asked: 'needs',
      needs: [{ code: 'peanut', handling: 'leave-out', reason: null }],
    },
  ],
  paid: false,
  readBack: true,
}

const comes = (same: 'same' | 'other' | 'not-sure', ingredient = 'black-beans'): LarderCommand => ({
  type: 'receiveDelivery',
  initials: 'KT',
  delivery: { ingredient, same, comes: 'dry', needsNoCold: true, useBy: null, lot: 'L 12-7' },
})

const createHouse = async (log: RailLog = createMemoryLog()) => {
  const path = temporaryFolder()
  const open = async () => {
    const house = await openLabelHouse(path, log)
    onTestFinished(() => house.close())
    return house
  }
  return { ...(await open()), log, again: open }
}

const stateOf = (rail: Pick<Rail, 'state'>) => {
  const state = rail.state()
  if (!isRunning(state)) throw new Error('no service')
  return state
}
const readOnIn = (rail: Pick<Rail, 'state'>) =>
  stateOf(rail).station.ingredients.find((one) => one.id === 'black-beans')?.readOn
const holdsOf = (rail: Pick<Rail, 'state'>) =>
  openBuilds(stateOf(rail)).map(({ build }) => build.hold?.reason ?? null)

describe('another product is delivered', () => {
  test.each(['other', 'not-sure'] as const)(
    '[DV12] %s: the house’s label is unread, every open service knows it, and holds what was promised',
    async (same) => {
      const house = await createHouse()
      const [wraps, soup] = [await house.opened(WRAPS), await house.opened(SOUP.id)]
      await house.services.submit(wraps.service, 'order', withoutPeanut, 'counter')
      expect(holdsOf(wraps)).toEqual([null])
      expect(await house.larder.submit('d1', comes(same))).toMatchObject({ answer: 'accepted' })
      await house.settled()
      expect(house.labels.find('black-beans', null)).toMatchObject({ label: null, same: false })
      expect([wraps, soup].map(readOnIn)).toEqual([null, null])
      expect(holdsOf(wraps)).toEqual(['label'])
      expect(house.faults).toEqual([])
    },
  )

  test('[DV12] the same product, or one that goes back, changes no label', async () => {
    const house = await createHouse()
    const rail = await house.opened(WRAPS)
    const before = house.labels.find('black-beans', null)
    await house.larder.submit('d1', comes('same'))
    const back: LarderCommand = {
      type: 'sendBackDelivery',
      initials: 'KT',
      why: 'damaged',
      delivery: {
        ...{ ingredient: 'black-beans', same: 'other', comes: 'dry', needsNoCold: true },
        ...{ useBy: null, lot: null },
      },
    }
    await house.larder.submit('d2', back)
    await house.settled()
    expect(house.labels.find('black-beans', null)).toEqual(before)
    expect(stateOf(rail).labelChanges).toEqual([])
    expect(house.larder.state().deliveries['black-beans']).toMatchObject([
      { same: 'same', sentBack: null },
      { same: 'other', sentBack: 'damaged' },
    ])
  })

  test('[DV12] what an open pan holds of the product of before goes on counting beside it', async () => {
    const house = await createHouse()
    const rail = await house.opened(WRAPS)
    await house.larder.submit('d1', comes('other'))
    await house.settled()
    const { version } = house.labels.find('black-beans', null) ?? { version: 0 }
    await house.labels.change({
      ingredient: 'black-beans',
      product: null,
      saw: version,
      label: READ,
      same: false,
      at: 9,
      adult: 'a-1',
    })
    await house.settled()
    expect(readOnIn(rail)).toBe('2026-03-02')
    expect(stateOf(rail).mixing['black-beans']?.pans.length).toBeGreaterThan(0)
  })

  test('[DV13] the same again has the same answer and no second version', async () => {
    const house = await createHouse()
    const rail = await house.opened(WRAPS)
    const answer = await house.larder.submit('d1', comes('other'))
    await house.settled()
    const { version } = house.labels.find('black-beans', null) ?? {}
    expect(await house.larder.submit('d1', comes('other'))).toEqual(answer)
    await house.settled()
    expect(house.labels.find('black-beans', null)?.version).toBe(version)
    expect(stateOf(rail).labelChanges.length).toBe(1)
    expect(await house.larder.submit('d1', comes('same'))).toMatchObject({
      refusal: { code: 'id-used-for-something-else' },
    })
    expect(house.larder.state().deliveries['black-beans']?.length).toBe(1)
  })

  test('[DV14] a process that ends between the delivery and the label: unread at the next start', async () => {
    const house = await createHouse()
    await house.opened(WRAPS)
    const cut = await house.cutShortLarder()
    await cut.submit('d1', comes('other'))
    cut.close()
    expect(house.labels.find('black-beans', null)?.label).not.toBeNull()
    house.close()
    const after = await house.again()
    await after.settled()
    expect(after.labels.find('black-beans', null)?.label).toBeNull()
    const rail = after.services.current(WRAPS)
    expect(rail && readOnIn(rail)).toBeNull()
    // Read since, it stays read: the delivery of before is told no second time.
    const { version = 0 } = after.labels.find('black-beans', null) ?? {}
    const read = { ingredient: 'black-beans', product: null, label: READ, same: false }
    await after.labels.change({ ...read, saw: version, at: 9, adult: 'a-1' })
    after.close()
    const third = await house.again()
    expect(third.labels.find('black-beans', null)?.label).toMatchObject({ readOn: '2026-03-02' })
  })

  test.each(Array.from({ length: 16 }, (_, turns) => turns))(
    '[DV15] whoever reads a label %d turns after, by what was seen before: unread in the end',
    async (turns) => {
      const house = await createHouse()
      const saw = house.labels.find('black-beans', null)?.version ?? 0
      const delivered = house.larder.submit('d1', comes('other'))
      for (let turn = 0; turn < turns; turn += 1) await Promise.resolve()
      const read = await house.labels.change({
        ingredient: 'black-beans',
        product: null,
        saw,
        label: READ,
        same: true,
        at: 9,
        adult: 'a-1',
      })
      expect(await delivered).toMatchObject({ answer: 'accepted' })
      await house.settled()
      const now = house.labels.find('black-beans', null)
      expect(now?.label).toBeNull()
      // Saved, it came before the delivery; else it is told that it is stale.
      if (read !== null) expect(read.version).toBeLessThan(now?.version ?? 0)
    },
  )

  test('[DV15] a service that is planned has it unread too', async () => {
    const house = await createHouse()
    await house.services.submit(
      's-plan',
      'plan',
      {
        type: 'plan',
        station: WRAPS,
        kind: 'real',
        on: '2027-01-05',
        doorsOpen: '11:00',
        doorsClose: '13:00',
        bells: null,
        guests: { walkIn: 40, groups: [] },
        items: null,
        crew: [],
      },
      'lead',
    )
    const [planned] = house.services.planned()
    if (!planned) throw new Error('nothing is planned')
    await house.larder.submit('d1', comes('other'))
    await house.settled()
    const state = planned.state()
    expect('labelVersions' in state && state.labelVersions?.['black-beans']).toBe(
      house.labels.find('black-beans', null)?.version,
    )
  })
})
