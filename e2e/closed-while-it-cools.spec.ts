import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { endFormWords } from '#lib/rooms/day/words/ends-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { inJob, job, typeReading } from './support/food-hands.ts'
import { tapUntil } from './support/hands.ts'
import { readLarder } from './support/job.ts'
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

test.use({ proved: true, houseOf: 'closed-while-it-cools' })

/** Chicago: ten past noon. */
const NOON = Date.parse('2026-11-25T18:10:00Z')
const MINUTE = 60_000
/** A tap sooner after another job opened isn't taken. */
const GUARD_MS = 600
/** To the close; 105, 135 and 315 minutes after it. */
const PASSES = [45 * MINUTE, 105 * MINUTE, 30 * MINUTE, 180 * MINUTE]
const TWO_HOURS = 120 * MINUTE

const COOLED = [
  { pan: 'pan-chicken', name: 'Herb chicken' },
  { pan: 'pan-peppers', name: 'Roast peppers' },
] as const

test('closed while it cools: who stays is said, it is read in the larder without a service, and what was missed is thrown out by initials', async ({
  open,
  endServer,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE/)
  test.setTimeout(400_000)
  const data = temporaryFolder(true)
  await publishIn(data, demoStation)
  const server = await launchTold(NOON, PASSES, { data })
  await makeHouse(server.url)
  const lead = connectCrew(server.url, 'lead')
  const { client } = lead
  await whenView(client, ({ link }) => link === 'live', 60_000)
  const passes = async (): Promise<void> => {
    const ahead = () => client.view().serverOffset
    const was = ahead()
    server.signal('SIGUSR2')
    await expect.poll(ahead).toBeGreaterThan(was + MINUTE)
  }
  await gives(lead, 's-today', [
    planOn('2026-11-25'),
    { type: 'open', station: demoStation.id, kind: 'real' },
  ])
  await whenView(client, ({ state }) => state.stage === 'open', 60_000)
  await does(client, openingCommands(demoStation, NOON, { backups: [] }))
  await passes()
  const isCooled = (id: string) => COOLED.some(({ pan }) => pan === id)
  for (const { what, id } of toAnswer(openState(client)).filter((one) => !isCooled(one.id)))
    await does(client, [
      { type: 'endFood', what, id, end: 'throw-out', how: 'not-checked', initials: 'KT' },
    ])
  const held = Object.fromEntries(
    COOLED.map(({ pan }) => [pan, openState(client).pans[pan]?.amount ?? 0]),
  )

  const pans = await open(`${server.pageUrl}/pans`, { viewport: { width: 1024, height: 768 } })
  pans.setDefaultTimeout(60_000)
  await test.step('closing asks of each what it comes to: cooled, read now, and somebody stays', async () => {
    const title = pans.getByRole('heading', { level: 1 })
    const closing = pans.getByRole('button', { name: pansWords.closeService, exact: true }).first()
    await expect(closing).toBeVisible({ timeout: 90_000 })
    await tapUntil(closing, inJob(pans, endFormWords.start))
    await tapUntil(inJob(pans, endFormWords.start), inJob(pans, endFormWords.end.cool))
    for (const { name } of COOLED) {
      await expect(title).toHaveText(endFormWords.title(name, 'pan'))
      const cools = job(pans).locator('button:not([data-main])').filter({ hasText: 'Cool it' })
      await tapUntil(cools, job(pans).getByLabel(readingWords.probe, { exact: true }))
      await typeReading(pans, '150')
      // A claim is never filled in: until somebody says that they stay, it isn't set aside.
      const main = job(pans).locator('[data-main]')
      await expect(main).toBeDisabled()
      await expect(main).toContainText(endFormWords.tapPresent)
      await job(pans).locator('button', { hasText: '+1' }).click()
      await pans.screenshot({ path: `test-results/cools-${name}.png` })
      await expect(main).toBeEnabled()
      await main.click()
      await expect(pans.getByRole('status').filter({ hasText: name }).first()).toContainText(
        /Read it in the larder by 2:5\d/,
      )
    }
    await expect(title).toHaveText(pansWords.closeTitle)
    await pans.waitForTimeout(GUARD_MS)
    await job(pans).locator('[data-main]').click()
  })
  await whenView(client, ({ state }) => state.stage === 'closed', 60_000)
  await pans.context().close()

  const larder = await open(`${server.pageUrl}/larder`)
  await untilHydrated(larder)
  const tile = (name: string) => larder.getByRole('button', { name: new RegExp(name) })
  await test.step('both cool in the larder: read next when, and until when somebody is there', async () => {
    for (const { name } of COOLED) {
      await expect(shelfOf(larder, words.shelves.cooling)).toContainText(name)
      await expect(tile(name)).toContainText(/70 °F or below by 2:5\d/)
      await expect(tile(name)).toContainText(/Somebody is there until 6:5\d/)
    }
    await larder.screenshot({ path: 'test-results/cools-larder.png' })
  })

  await test.step('one is read in time; the other’s reading falls due without a service', async () => {
    await passes()
    await readLot(larder, /Roast peppers/, '68')
    await expect(tile('Roast peppers')).toContainText(/41 °F or below by 6:5\d/)
    await passes()
    await expect(shelfOf(larder, words.shelves.bound)).toContainText('Herb chicken')
    await expect(tile('Herb chicken')).toContainText(words.bound('cooling-missed'))
    await larder.screenshot({ path: 'test-results/cools-missed.png' })
  })

  await test.step('what was missed goes by initials, and nothing else is offered', async () => {
    await tile('Herb chicken').click()
    const out = lotJobs(larder).getByRole('button', { name: words.throwOut })
    await expect(out).toBeDisabled()
    await expect(lotJobs(larder).getByRole('button', { name: words.read })).toHaveCount(0)
    await expect(lotJobs(larder).getByRole('button', { name: words.tookIt })).toHaveCount(0)
    await lotJobs(larder).getByLabel(words.initials).fill('KT')
    await out.click()
    await expect(tile('Herb chicken')).toHaveCount(0)
  })

  await test.step('the one in time goes on to cold, with its last day', async () => {
    await passes()
    await readLot(larder, /Roast peppers/, '40')
    await expect(shelfOf(larder, words.shelves.cold)).toContainText('Roast peppers')
    await expect(tile('Roast peppers')).toContainText(/last day Tue, Dec 1/)
  })
  lead.close()
  await endServer(server)

  const events = await readLarder(data)
  const missed = events.filter(({ type }) => type === 'lotCoolingMissed')
  const aside = events.find(
    (one) => one.type === 'lotSetAside' && one.food.from.id === 'pan-chicken',
  )
  const from = aside?.type === 'lotSetAside' ? aside.food.cooling.at(-1)?.at : undefined
  expect(missed).toMatchObject([{ command: null, due: (from ?? 0) + TWO_HOURS + 1 }])
  expect(events.find(({ type }) => type === 'lotThrownOut')).toMatchObject({
    amount: held['pan-chicken'],
    reason: 'not-cooled',
  })
})
