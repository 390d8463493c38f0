import type { BrowserContext, Page } from '@playwright/test'
import type { Role } from '#lib/service/roles.ts'
import { accessWords as words } from '#lib/words/house/access-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { codeShown, placeOf } from './support/house-hands.ts'
import { expect, test, untilHydrated } from './support/station.ts'

/** Beside what is typed: 3 to make the house and 4 into its fields, 2 a tablet. */
const MOST_TAPS = 17

const TABLETS: readonly Role[] = ['counter', 'assembly', 'assembly', 'hand-over', 'pick-up']

interface Counted {
  taps: number
  signs: number
}

/** Counts what hands do on every page of a context: trusted taps, and signs typed. */
const counting = async (context: BrowserContext, counted: Counted): Promise<void> => {
  await context.exposeFunction('handDid', (what: keyof Counted) => {
    counted[what] += 1
  })
  await context.addInitScript(() => {
    const told = (what: string) =>
      (window as unknown as { handDid: (what: string) => void }).handDid(what)
    addEventListener('click', ({ isTrusted }) => isTrusted && told('taps'), true)
    addEventListener(
      'keydown',
      ({ isTrusted, key }) => isTrusted && key.length === 1 && told('signs'),
      true,
    )
  })
}

const fill = async (page: Page, name: string, passphrase: string): Promise<void> => {
  await page.getByLabel(words.passphrase.name).click()
  await page.getByLabel(words.passphrase.name).pressSequentially(name)
  await page.getByLabel(words.passphrase.passphrase, { exact: true }).click()
  await page.getByLabel(words.passphrase.passphrase, { exact: true }).pressSequentially(passphrase)
}

test('from an empty folder to five joined tablets', async ({
  browser,
  consoleProblems: _,
  endServer,
}, info) => {
  const begun = performance.now()
  const server = await launchServer({ data: temporaryFolder(true) })
  const started = performance.now()
  const counted: Counted = { taps: 0, signs: 0 }
  const contexts: BrowserContext[] = []
  const device = async (): Promise<Page> => {
    const context = await browser.newContext({ baseURL: server.pageUrl, hasTouch: true })
    contexts.push(context)
    await counting(context, counted)
    return context.newPage()
  }

  const lead = await device()
  const [, secret = ''] = /house(#\S+)/.exec(server.terminal()) ?? []
  await lead.goto(`/house${secret}`)
  await untilHydrated(lead)
  await fill(lead, 'Mara', 'walnut harbour mitten')
  await lead.getByRole('button', { name: words.house.next }).click()
  await fill(lead, 'Ms. Okafor', 'kettle lantern orchard')
  await lead.getByRole('button', { name: words.house.make }).click()
  await lead.getByRole('link', { name: words.house.toDevices }).click()

  for (const [which, role] of TABLETS.entries()) {
    if (TABLETS[which - 1] === role)
      await lead.getByRole('button', { name: words.devices.newCode }).click()
    else await placeOf(lead, role).click()
    const tablet = await device()
    await tablet.goto(`/join#${await codeShown(lead)}`)
    await tablet.getByRole('link', { name: words.join.go(role) }).click()
    await expect(tablet.getByText(live.isLive, { exact: true }).first()).toBeVisible()
    await expect(lead.getByRole('status').filter({ hasText: / is in$/ })).toBeVisible()
  }
  for (const role of new Set(TABLETS))
    await expect(placeOf(lead, role).locator('[data-is="here"]')).toHaveCount(
      TABLETS.filter((one) => one === role).length,
    )

  const seconds = (from: number) => ((performance.now() - from) / 1_000).toFixed(1)
  const said = `from an empty folder to ${TABLETS.length} joined tablets: ${counted.taps} taps beside ${counted.signs} signs typed, ${seconds(begun)} s with the server's start, ${seconds(started)} s after it (a machine's hands)`
  info.annotations.push({ type: 'figure', description: said })
  console.log(said)
  expect(counted.taps).toBeLessThanOrEqual(MOST_TAPS)
  for (const context of contexts) await context.close()
  await endServer(server)
})
