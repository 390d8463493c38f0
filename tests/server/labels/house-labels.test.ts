import { describe, expect, onTestFinished, test } from 'vitest'
import { isRunning } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import type { Command } from '#lib/spine/registry.ts'
import { type Label, labelOf } from '#lib/station/label.ts'
import type { Rail } from '#server/rail/rail.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { openLabelHouse, SOUP } from '#tests/support/label-house.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { railStation, usual } from '#tests/support/orders.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const WRAPS = railStation.id
const NO_PEANUT = [{ code: 'peanut', handling: 'leave-out', reason: null }] as const

const withoutPeanut: Command = {
  type: 'send',
  builds: [{ ...usual('bean-and-pepper'), asked: 'needs', needs: NO_PEANUT }],
  paid: false,
  readBack: true,
}

const beans = railStation.ingredients.find((one) => one.id === 'black-beans')
if (!beans) throw new Error('the station has no beans')
const FREE = { ...labelOf(beans), readOn: '2026-03-02', readBy: null }
const WITH_PEANUT: Label = { ...FREE, declarations: { ...FREE.declarations, peanut: 'contains' } }

const wanted = (over: object = {}) => ({
  ingredient: 'black-beans',
  product: null,
  saw: 0,
  label: WITH_PEANUT,
  same: true,
  at: 5,
  adult: 'a-1',
  ...over,
})

/** `crash`: whatever it did is where it was; opened again on the same stores. */
const createHouse = async (log: RailLog = createMemoryLog()) => {
  const path = temporaryFolder()
  const open = async () => {
    const house = await openLabelHouse(path, log)
    onTestFinished(() => house.close())
    return house
  }
  return { ...(await open()), log, again: open }
}

const holdsOf = (rail: Pick<Rail, 'state'>) => {
  const state = rail.state()
  if (!isRunning(state)) throw new Error('no service')
  return openBuilds(state).map(({ build }) => build.hold?.reason ?? null)
}

describe('a label of the house', () => {
  test('[R39] that changes is in both open services, and each holds what no longer fits', async () => {
    const house = await createHouse()
    const [wraps, soup] = [await house.opened(WRAPS), await house.opened(SOUP.id)]
    for (const rail of [wraps, soup])
      expect(await rail.submit('order', withoutPeanut, 'counter')).toMatchObject({
        answer: 'accepted',
      })
    expect([holdsOf(wraps), holdsOf(soup)]).toEqual([[null], [null]])
    const changed = await house.labels.change(wanted())
    expect(changed?.told).toEqual([WRAPS, SOUP.id])
    expect([holdsOf(wraps), holdsOf(soup)]).toEqual([['label'], ['label']])
    expect(await soup.submit('late', withoutPeanut, 'counter')).toMatchObject({
      refusal: { code: 'contains', component: 'beans', need: 'peanut' },
    })
    expect(house.known.find(WRAPS)?.revision).toBe(1)
  })

  test('[R21] changed in one service is the house’s, and the other’s at once', async () => {
    const house = await createHouse()
    const [wraps, soup] = [await house.opened(WRAPS), await house.opened(SOUP.id)]
    await soup.submit('order', withoutPeanut, 'counter')
    await wraps.submit('other', { type: 'notSameProduct', ingredient: 'black-beans' }, 'assembly')
    await house.settled()
    expect(house.labels.find('black-beans', null)).toMatchObject({ label: null, same: false })
    expect(holdsOf(soup)).toEqual(['label'])
    // What its own pans hold counts beside what nobody has read.
    expect(soup.state().mixing['black-beans']?.pans.length).toBeGreaterThan(0)
    const events = (await house.log.read(soup.service, 0)).filter(
      ({ type }) => type === 'labelChanged',
    )
    expect(events).toMatchObject([{ command: null, label: null, revision: 1 }])
    await house.services.submit(wraps.service, 'close', { type: 'close' }, 'lead')
    const next = await house.opened(WRAPS, 's-next')
    expect(next.state().station?.ingredients.find(({ id }) => id === 'black-beans')?.readOn).toBe(
      null,
    )
  })

  test('[R22] cut short behind the service it is the house’s at the next start, and the other’s', async () => {
    const house = await createHouse()
    const [wraps, soup] = [await house.opened(WRAPS), await house.opened(SOUP.id)]
    // As if the process had ended between the commit and what follows from it.
    house.labels.take = () => undefined
    await wraps.submit('other', { type: 'notSameProduct', ingredient: 'pita' }, 'assembly')
    await house.settled()
    expect(house.labels.newest()).toEqual({})
    house.close()
    const again = await house.again()
    await again.settled()
    expect(again.labels.find('pita', null)).toMatchObject({ label: null })
    expect(again.labels.newest()).toHaveProperty('pita')
    const other = again.services.current(SOUP.id)
    expect(other?.state().labelVersions).toEqual(again.labels.newest())
    expect(other?.service).toBe(soup.service)
  })

  test('[R39] cut short before the services it reaches each of them at the next start', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    await house.opened(SOUP.id)
    await wraps.submit('order', withoutPeanut, 'counter')
    const id = house.file.prepare<[], string>('SELECT id FROM house').pluck().get()
    house.file
      .prepare(`INSERT INTO labels VALUES (?, 'black-beans', '', 99, ?, 1, 7, NULL)`)
      .run(id, JSON.stringify(WITH_PEANUT))
    house.close()
    const again = await house.again()
    await again.settled()
    for (const station of [WRAPS, SOUP.id])
      expect(again.services.current(station)?.state().labelVersions).toEqual({ 'black-beans': 99 })
    const rail = again.services.current(WRAPS)
    expect(rail && holdsOf(rail)).toEqual(['label'])
  })

  test('[R39] saved on another than the newest is told, and nothing is written', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    const first = await house.labels.change(wanted())
    const before = wraps.position()
    expect(await house.labels.change(wanted({ label: FREE }))).toBeNull()
    expect(house.labels.find('black-beans', null)?.label).toEqual(WITH_PEANUT)
    expect(wraps.position()).toBe(before)
    const [one, two] = await Promise.all([
      house.labels.change(wanted({ saw: first?.version, label: FREE })),
      house.labels.change(wanted({ saw: first?.version })),
    ])
    expect([one === null, two]).toEqual([false, null])
    expect(house.labels.find('black-beans', null)?.label).toEqual(FREE)
  })

  test('[R39] a service that opens meanwhile is opened with it, or told of it', async () => {
    const gated = createGatedLog()
    const house = await createHouse(gated.log)
    gated.overtake(() => house.labels.change(wanted()))
    const rail = await house.opened(WRAPS)
    const [opened] = await house.log.read(rail.service, 0, 1)
    const { version } = house.labels.find('black-beans', null) ?? {}
    expect(opened).toMatchObject({ type: 'serviceOpened', labels: { 'black-beans': version } })
    expect(
      gated.attempts.filter(({ entries }) => entries[0]?.type === 'serviceOpened'),
    ).toHaveLength(2)
  })

  test('[R39] read again of the same product leaves the pans, of another they count as both', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    const same = await house.labels.change(wanted({ label: FREE }))
    expect(wraps.state().mixing).toEqual({})
    await house.labels.change(wanted({ saw: same?.version, same: false }))
    expect(wraps.state().mixing['black-beans']?.before).toEqual(['black-beans--before'])
  })

  test('[R39] of a substitute is kept apart: no open service and no version of another has it', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    const before = wraps.position()
    const changed = await house.labels.change(wanted({ product: 'other-farm' }))
    expect(changed?.told).toEqual([])
    expect(house.labels.find('black-beans', 'other-farm')?.label).toEqual(WITH_PEANUT)
    expect([wraps.position(), house.labels.newest()]).toEqual([before, {}])
  })

  test('[R39] a closed service is told nothing', async () => {
    const house = await createHouse()
    const wraps = await house.opened(WRAPS)
    await wraps.submit('close', { type: 'close' }, 'lead')
    expect(isRunning(wraps.state()) && wraps.state().stage).toBe('closed')
    const before = wraps.position()
    expect((await house.labels.change(wanted()))?.told).toEqual([])
    expect([wraps.position(), house.faults]).toEqual([before, []])
  })
})
