import { join } from 'node:path'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { root } from '#server/root.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { planButton, planPan, planTheDay, SCHOOL, takeThePlan } from './support/plan-hands.ts'
import { expect, test } from './support/station.ts'

/** Thursday, half past seven in the morning of the station. */
const THURSDAY = Date.parse('2026-12-03T13:30:00Z')
const AT_ONCE = { viewport: { width: 1024, height: 768 } }

test('the reading that nobody could take: it stops the plan, says its ways out, and one is taken', async ({
  open,
  endServer,
}) => {
  test.setTimeout(180_000)
  const data = temporaryFolder(true)
  await publishIn(data, SCHOOL)
  const server = await launchServer({
    data,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: { LEVEL_SCOOP_TEST_BEGINS_AT: String(THURSDAY), LEVEL_SCOOP_TEST_PASSES_MS: '' },
  })
  const lead = await open(`${server.pageUrl}/plan?station=${SCHOOL.id}`, AT_ONCE, true)
  await planTheDay(lead, { guests: '46', dayBefore: true })
  const tablet = await open(`${server.pageUrl}/prep?station=${SCHOOL.id}`, AT_ONCE, true)
  await expect(tablet.getByRole('heading', { name: prepEn.notTaken })).toBeVisible()

  await test.step('beans are to be cooked ahead: all are gone when they have to be at 41 °F', async () => {
    await planPan(lead, 'Black beans').click()
    await planButton(lead, planEn.how.ahead).click()
    await expect(lead.getByRole('region', { name: planEn.ways })).toContainText('Nobody is here at')
    await expect(lead.getByRole('region', { name: planEn.ways })).toContainText('41 °F')
    // The button says which hour it is, and leads there.
    await planPan(lead, 'Pita').click()
    await planButton(lead, /^Settle Thu .* Read black beans/).click()
    await expect(lead.getByRole('region', { name: planEn.ways })).toBeFocused()
    await expect(planButton(lead, planEn.takePlan)).toHaveCount(0)
    for (const label of ['Another reader', 'Ice, shallow pans', 'Cook it that day'])
      await expect(planButton(lead, new RegExp(`^${label}`))).toBeVisible()
    await expect(planButton(lead, /^Leave it out/)).toBeVisible()
    await lead.screenshot({ path: 'test-results/plan-unready.png' })
  })

  await test.step('they are cooked that day, the plan is taken, and the tablets have it', async () => {
    await planButton(lead, /^Cook it that day/).click()
    await expect(lead.getByRole('region', { name: planEn.ways })).toHaveCount(0)
    await lead.screenshot({ path: 'test-results/plan-ready.png' })
    await takeThePlan(lead)
    await expect(tablet.getByRole('heading', { name: /^Prep for/ })).toBeVisible()
    await expect(tablet.getByRole('button', { name: /^Cook black beans/ })).toBeVisible()
    await expect(tablet.getByRole('button', { name: /^Read black beans/ })).toHaveCount(0)
  })
  await endServer(server)
})
