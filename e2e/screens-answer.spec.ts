import { expect, test, untilHydrated } from './support/station.ts'

/** Each screen of the tool, one after the other. */
const ALL_SCREENS_MS = 240_000

test.setTimeout(ALL_SCREENS_MS)

const screenPaths = async (url: string): Promise<readonly string[]> => {
  const answer = await fetch(`${url}/health`)
  const health = (await answer.json()) as { screens: Record<string, string> }
  return Object.values(health.screens)
}

test('every screen that /health names hydrates on plain http under its own policy', async ({
  server,
  open,
  expectConsole,
}) => {
  // The set-up screens ask for what only a lead is told.
  expectConsole(/\/(menu(\/carry)?|plan|prep|larder|paper\/\w+): .*status of 401/)
  const paths = await screenPaths(server.url)
  expect(paths).toContain('/counter')
  for (const path of paths) {
    const page = await open(path)
    await untilHydrated(page)
    expect(await page.evaluate(() => window.isSecureContext), path).toBe(false)
    await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
    const answer = await page.request.get(`${server.url}${path}`)
    expect(answer.status()).toBe(200)
    const policy = answer.headers()['content-security-policy'] ?? ''
    expect(policy, path).toContain("'sha256-")
    expect(policy, path).not.toMatch(/unsafe-(inline|eval)|upgrade-insecure-requests/)
  }
})

test('no prerendered screen carries a style attribute, which its policy would refuse', async ({
  server,
}) => {
  for (const path of [...(await screenPaths(server.url)), '/nowhere']) {
    const html = await (await fetch(`${server.url}${path}`)).text()
    expect(html.match(/<[^>]+\sstyle="[^"]*"[^>]*>/)?.[0], path).toBeUndefined()
    expect(html, path).not.toContain('<style')
  }
})

test('an address that does not exist says so on a page that hydrates too', async ({
  open,
  expectConsole,
}) => {
  expectConsole(/the server responded with a status of 404/)
  const page = await open('/nowhere')
  await untilHydrated(page)
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page does not exist')
})

test('a script that the server did not build does not run', async ({ open, expectConsole }) => {
  expectConsole(/Content Security Policy/)
  const page = await open('/counter')
  await untilHydrated(page)
  await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.stranger = true'
    document.body.append(script)
  })
  expect(await page.evaluate(() => 'stranger' in window)).toBe(false)
})
