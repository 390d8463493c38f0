import { join } from 'node:path'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { root } from '#server/root.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { planTheDay, SCHOOL, sayInitials, takeThePlan } from './support/plan-hands.ts'
import { expect, test } from './support/station.ts'

const MINUTE = 60_000
/** Friday, half past seven in the morning of the station; then seven past eleven. */
const FRIDAY = Date.parse('2026-12-04T13:30:00Z')
const LATER = 217 * MINUTE
const AT_ONCE = { viewport: { width: 1024, height: 768 } }

test('late in the morning: a task is passed on half done, ticked on one tablet, and told late on all', async ({
  open,
  endServer,
}) => {
  test.setTimeout(180_000)
  const data = temporaryFolder(true)
  await publishIn(data, SCHOOL)
  const server = await launchServer({
    data,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: { LEVEL_SCOOP_TEST_BEGINS_AT: String(FRIDAY), LEVEL_SCOOP_TEST_PASSES_MS: String(LATER) },
  })
  const lead = await open(`${server.pageUrl}/plan?station=${SCHOOL.id}`, AT_ONCE, true)
  await planTheDay(lead, { on: '2026-12-04', guests: '30' })
  await takeThePlan(lead)
  const [one, other] = [
    await open(`${server.pageUrl}/prep?station=${SCHOOL.id}`, AT_ONCE, true),
    await open(
      `${server.pageUrl}/prep?station=${SCHOOL.id}`,
      { viewport: { width: 390, height: 844 } },
      true,
    ),
  ]
  const slaw = (page: typeof one) => page.getByRole('button', { name: /^Sesame slaw \d+:/ })

  await test.step('the bell rings: it is passed on, with how far it is and where', async () => {
    await slaw(one).click()
    // Nobody is chosen for anybody.
    const chosen = one
      .getByRole('group', { name: prepEn.initials })
      .locator('[aria-pressed="true"]')
    await expect(chosen).toHaveCount(0)
    await sayInitials(one, 'AB')
    await one.getByRole('button', { name: prepEn.pass, exact: true }).click()
    await one.getByRole('button', { name: prepEn.far[2], exact: true }).click()
    await one.getByRole('button', { name: prepEn.where.table, exact: true }).click()
    await one.getByRole('button', { name: prepEn.passIt, exact: true }).click()
    await expect(slaw(other)).toContainText(prepEn.passed(prepEn.far[2], prepEn.where.table))
    await expect(chosen).toHaveCount(0)
  })

  await test.step('past its time it is told late on every tablet, and a tick is seen on all', async () => {
    server.signal('SIGUSR2')
    await expect(slaw(other)).toContainText('late by', { timeout: 15_000 })
    await expect(one.getByText(/tasks? (is|are) late/)).toBeVisible()
    // What misses the doors is said by name, with both times, to the crew and to the lead.
    for (const page of [one, other, lead])
      await expect(
        page.getByRole('alert').filter({ hasText: /: ready \d+:\d\d.*, doors 11:20/ }),
      ).toBeVisible()
    await one.screenshot({ path: 'test-results/prep-late.png' })
    await other.screenshot({ path: 'test-results/prep-late-phone.png' })
    await slaw(one).click()
    // Somebody who isn’t in the plan types.
    await one.getByLabel(prepEn.otherInitials, { exact: true }).fill('GH')
    await one.getByRole('button', { name: prepEn.done, exact: true }).click()
    await expect(slaw(other)).toContainText(prepEn.is.done)
    await expect(slaw(other)).not.toContainText('late by')
  })

  await test.step('a slip is taken back', async () => {
    await one.getByRole('button', { name: prepEn.takeBack, exact: true }).click()
    await expect(slaw(other)).toContainText('late by')
  })
  await endServer(server)
})
