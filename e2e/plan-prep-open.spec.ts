import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { io } from 'socket.io-client'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { root } from '#server/root.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { type LaunchedServer, launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { order } from './support/hands.ts'
import { expect, test } from './support/station.ts'

test.use({ proved: true, houseOf: 'plan-prep-open' })

/** Chicago: four in the afternoon, and a quarter past ten of the day after. */
const EVENING = Date.parse('2026-11-25T22:00:00Z')
const MORNING = Date.parse('2026-11-26T16:15:00Z')
const MINUTE = 60_000
const SERVICE = 's-lunch'

const at = (beginsAt: number, data: string, port = 0): Promise<LaunchedServer> =>
  launchServer({
    data,
    port,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: { LEVEL_SCOOP_TEST_BEGINS_AT: String(beginsAt) },
  })

/** Gives commands to one service, as a tablet of the lead's. */
const lead = async (url: string, service: string, commands: readonly object[]): Promise<void> => {
  const token = await scriptsToken(url)
  const socket = io(url, {
    auth: { protocol: PROTOCOL, role: 'lead', token },
    extraHeaders: { origin: new URL(url).origin },
    transports: ['websocket'],
    forceNew: true,
  })
  for (const [index, one] of commands.entries()) {
    const command: Command = commandSchema.parse(one)
    const id = `c-${service}-${command.type}-${index}-${Date.now()}`
    const message = { protocol: PROTOCOL, id, service, command }
    expect(
      await socket.timeout(10_000).emitWithAck('command', message),
      JSON.stringify(command),
    ).toMatchObject({ answer: 'accepted' })
  }
  socket.close()
}

const PLAN = {
  type: 'plan',
  station: demoStation.id,
  kind: 'real',
  on: '2026-11-26',
  doorsOpen: '11:00',
  doorsClose: '13:00',
  guests: { walkIn: 40, groups: [] },
  crew: [{ initials: 'KT', adult: true, from: '07:30', to: '14:00' }],
}

const SLAW = 'slaw-of-yesterday'

/** The pans of the morning: what else is made today, and the slaw of yesterday. */
const ofTheMorning = (): readonly object[] =>
  openingCommands(demoStation, MORNING - MINUTE, { backups: [] })
    .filter((one) => !('batch' in one && one.batch === 'opening-slaw' && one.type !== 'load'))
    .map((one) =>
      one.type === 'load' && one.batch === 'opening-slaw' ? { ...one, batch: SLAW } : one,
    )

const plannedRow = (page: Page) => page.getByRole('link', { name: /11:00 AM to 1:00 PM/ })

test('plan, prep, open: what was made the evening before is on the line at noon', async ({
  open,
  endServer,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE/)
  test.setTimeout(240_000)
  const data = temporaryFolder(true)
  await publishIn(data, demoStation)
  const evening = await at(EVENING, data)
  await makeHouse(evening.url)

  await test.step('a service is planned for tomorrow, and its slaw is made and chilled', async () => {
    await lead(evening.url, SERVICE, [
      PLAN,
      {
        type: 'startBatch',
        batch: SLAW,
        component: 'slaw',
        loads: 1,
        startedAt: EVENING - 60 * MINUTE,
      },
      {
        type: 'finishBatch',
        batch: SLAW,
        amount: 9_000_000,
        finishedAt: EVENING - 40 * MINUTE,
        preparedOn: '2026-11-25',
      },
    ])
    const page = await open(evening.pageUrl)
    await expect(plannedRow(page)).toContainText(plannedWords.prepared({ batches: 1 }))
    await plannedRow(page).click()
    await expect(page.getByText(plannedWords.follows)).toBeVisible()
    await expect(page.getByText(plannedWords.otherDay('Wed, Nov 25'))).toBeVisible()
  })

  expect((await evening.stop()).code).toBe(0)
  const morning = await at(MORNING, data, evening.port)

  await test.step('the laptop was off over night: it is there, and is opened from the first page', async () => {
    const page = await open(morning.pageUrl)
    await expect(plannedRow(page)).toContainText(plannedWords.today)
    await plannedRow(page).click()
    await page.getByRole('button', { name: plannedWords.open }).click()
    await expect(page.getByText(/: open since 10:1\d/)).toBeVisible()
  })

  await test.step('the slaw of yesterday is loaded, and the first order is taken', async () => {
    await lead(morning.url, SERVICE, ofTheMorning())
    const counter = await open(`${morning.pageUrl}/counter`)
    await order(counter, 'Harbor tuna', 1)
  })

  await endServer(morning)
})
