import { live } from '#lib/words/house/live-en.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { expect, test, untilHydrated } from './support/station.ts'

test('sockets open after the first page load, whatever the framework listens for', async ({
  server,
  open,
}) => {
  const first = await open('/counter')
  await expect(first.getByText(live.isLive, { exact: true })).toBeVisible()
  const second = await open('/pick-up')
  await expect(second.getByText(live.isLive, { exact: true })).toBeVisible()
  const { client, close } = connectCrew(server.url, 'assembly')
  await whenView(client, ({ link }) => link === 'live')
  close()
  await expect(first.getByText(live.isLive, { exact: true })).toBeVisible()
})

test('a page of an older build loads anew, once', async ({ server, open }) => {
  const page = await open('/')
  await untilHydrated(page)
  let loads = 0
  const { build } = await new Promise<{ build: string }>((resolve) => {
    const { socket, close } = connectCrew(server.url, 'lead')
    socket.on('welcome', (welcome: { build: string }) => {
      resolve(welcome)
      close()
    })
  })
  expect(build).toMatch(/^[0-9a-f]{16}$/)
  const old = '0'.repeat(16)
  await page.route('**/_next/static/**/*.js', async (route) => {
    const url = route.request().url().replace(server.pageUrl, server.url)
    try {
      const response = await route.fetch({ url })
      const body = (await response.text()).replaceAll(build, old)
      await route.fulfill({ response, body })
    } catch (problem) {
      // The page loads anew while parts of the old one are still on their way.
      if (!/disposed|already handled|closed/.test(String(problem))) throw problem
    }
  })
  page.on('request', (request) => {
    if (request.isNavigationRequest()) loads += 1
  })
  await page.goto('/counter')
  const entered = () => performance.getEntriesByType('navigation').map((one) => one.toJSON().type)
  await expect(async () => expect(await page.evaluate(entered)).toEqual(['reload'])).toPass()
  await expect(page.getByText(live.isLive, { exact: true })).toBeVisible()
  expect(await page.evaluate(() => Object.values(sessionStorage))).toContain(build)
  expect(loads, 'not a third time').toBe(2)
})
