import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { takeWords } from '#lib/words/larder/take-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { order } from './support/hands.ts'
import {
  does,
  gives,
  launchTold,
  lotJobs,
  openState,
  planOn,
  readLot,
  shelfOf,
} from './support/larder-hands.ts'
import { expect, test, untilHydrated } from './support/station.ts'

test.use({ proved: true, houseOf: 'cooled-yesterday-served-today' })

/** Chicago: ten past noon, and a quarter past ten of the day after. */
const NOON = Date.parse('2026-11-25T18:10:00Z')
const MORNING = Date.parse('2026-11-26T16:15:00Z')
const MINUTE = 60_000
const [TO_CLOSE, TO_COOL, TO_COLD] = [45 * MINUTE, 105 * MINUTE, 180 * MINUTE] as const

const PASSES = [TO_CLOSE, TO_COOL, TO_COLD]

/** What is ended otherwise than by throwing it out. */
const setAside = (presentUntil: number): readonly Command[] => [
  {
    ...{ type: 'endFood', what: 'pan', id: 'pan-peppers', end: 'cool', lot: 'peppers-1' },
    ...{ how: 'not-checked', initials: 'KT', presentUntil, preparedOn: '2026-11-25' },
    reading: { tenths: 1500, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
  },
  {
    ...{ type: 'endFood', what: 'pan', id: 'pan-slaw', end: 'cold', lot: 'slaw-1' },
    ...{ how: 'not-checked', initials: 'KT', preparedOn: '2026-11-25' },
    reading: { tenths: 380, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
  },
]

/** 2 lb, in whole milligrams. */
const SLAW_TAKEN = 907_185

test('cooled yesterday, served today: ended as a planned service closes, read as it cools, taken into the next, loaded and sold', async ({
  open,
  endServer,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE/)
  test.setTimeout(300_000)
  const data = temporaryFolder(true)
  await publishIn(data, demoStation)
  const before = await launchTold(NOON, PASSES, { data })
  await makeHouse(before.url)
  const yesterday = connectCrew(before.url, 'lead')
  await whenView(yesterday.client, ({ link }) => link === 'live')

  const passes = async (): Promise<void> => {
    const ahead = () => yesterday.client.view().serverOffset
    const was = ahead()
    before.signal('SIGUSR2')
    await expect.poll(ahead).toBeGreaterThan(was + MINUTE)
  }

  await gives(yesterday, 's-yesterday', [
    planOn('2026-11-25'),
    { type: 'open', station: demoStation.id, kind: 'real' },
  ])
  await whenView(yesterday.client, ({ state }) => state.stage === 'open')
  await does(yesterday.client, openingCommands(demoStation, NOON, { backups: [] }))
  await passes()
  const { pans } = openState(yesterday.client)
  const held = { peppers: pans['pan-peppers']?.amount ?? 0, slaw: pans['pan-slaw']?.amount ?? 0 }
  await does(yesterday.client, setAside(NOON + 8 * 60 * MINUTE))
  for (const { what, id } of toAnswer(openState(yesterday.client)))
    await does(yesterday.client, [
      { type: 'endFood', what, id, end: 'throw-out', how: 'not-checked', initials: 'KT' },
    ])
  await does(yesterday.client, [{ type: 'close' }])
  await gives(yesterday, 's-today', [planOn('2026-11-26')])

  const larder = await open(`${before.pageUrl}/larder`)
  await untilHydrated(larder)
  await test.step('the peppers cool: read within 2 hours, and within 6 in all', async () => {
    await expect(shelfOf(larder, words.shelves.cooling)).toContainText(/peppers/i)
    await passes()
    await readLot(larder, /peppers/i, '68')
    await passes()
    await readLot(larder, /peppers/i, '40')
    await expect(shelfOf(larder, words.shelves.cold)).toContainText(/peppers/i)
  })
  yesterday.close()
  await endServer(before)

  const after = await launchTold(MORNING, PASSES, { data, port: before.port })
  const today = connectCrew(after.url, 'lead')
  await whenView(today.client, ({ link }) => link === 'live')

  const shelves = await open(`${after.pageUrl}/larder`)
  await untilHydrated(shelves)
  const jobs = lotJobs(shelves)
  const into = jobs.getByRole('button', { name: /^Take it into Thu, Nov 26, 11:00 AM to 1:00 PM/ })
  await test.step('more than is there is refused in words, some of it is taken, the rest stays', async () => {
    await shelves.getByRole('button', { name: /slaw/i }).click()
    await jobs.getByLabel(takeWords.amount).fill('900')
    await into.click()
    await expect(shelves.getByText(/There isn’t that much of it/)).toBeVisible()
    await jobs.getByLabel(takeWords.amount).fill('2')
    await into.click()
    await expect(shelves.getByText(/^Taken: 2 lb of Sesame slaw, into Thu, Nov 26/)).toBeVisible()
    await expect(shelves.getByRole('button', { name: /slaw/i })).toBeVisible()
  })
  await test.step('all of the peppers', async () => {
    await shelves.getByRole('button', { name: /peppers/i }).click()
    await into.click()
    await expect(shelves.getByText(/^Taken: .* of Roast peppers/)).toBeVisible()
    await expect(shelves.getByRole('button', { name: /peppers/i })).toHaveCount(0)
  })

  await gives(today, 's-today', [{ type: 'open', station: demoStation.id, kind: 'real' }])
  await whenView(today.client, ({ state }) => state.stage === 'open')
  const { batches } = openState(today.client)
  const batchOf = (component: string): string => {
    const found = Object.entries(batches).find(([, one]) => one.component === component)
    if (!found) throw new Error(`nothing of ${component} was taken`)
    return found[0]
  }
  expect(batches[batchOf('slaw')]).toMatchObject({ amount: SLAW_TAKEN, lot: 'slaw-1' })
  expect(batches[batchOf('peppers')]).toMatchObject({ amount: held.peppers, lot: 'peppers-1' })
  expect(held.slaw).toBeGreaterThan(SLAW_TAKEN)

  await test.step('the peppers are reheated, both are loaded with what else is made, and sold', async () => {
    const now = Math.floor(performance.now() + today.client.view().serverOffset)
    const isOf = (one: Command, component: string): boolean =>
      'batch' in one && one.batch === `opening-${component}`
    const line = openingCommands(demoStation, now - MINUTE, { backups: [] }).flatMap(
      (one): readonly Command[] => {
        const component = ['slaw', 'peppers'].find((id) => isOf(one, id))
        if (component === undefined) return [one]
        if (one.type !== 'load') return []
        const amount = component === 'slaw' ? SLAW_TAKEN : held.peppers
        return [{ ...one, batch: batchOf(component), amount }]
      },
    )
    await does(today.client, [
      {
        ...{ type: 'recordReheating', batch: batchOf('peppers'), place: 'range' },
        ...{ startedAt: now - 20 * MINUTE, initials: 'KT' },
        reading: {
          ...{ tenths: 1700, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
          heldSeconds: 15,
        },
      },
      ...line,
    ])
    const counter = await open(`${after.pageUrl}/counter`)
    await order(counter, 'Garden chicken', 1)
  })
  const sold = openState(today.client)
  expect(sold.pans['pan-peppers']?.batches, 'the pan is of what was cooled').toContain(
    batchOf('peppers'),
  )
  today.close()
  await endServer(after)
})
