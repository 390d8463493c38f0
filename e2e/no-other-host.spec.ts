import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { screens } from '#server/http/health.ts'
import { expect, test, untilHydrated, watch } from './support/station.ts'

/** Each screen of the tool, one after the other. */
const ALL_SCREENS_MS = 240_000

test.setTimeout(ALL_SCREENS_MS)

/** The set-up screens ask for what only a lead is told. */
const WHO_IS_NOT_IN = /\/(menu(\/carry)?|plan|prep|larder|paper\/\w+): .*status of 401/

test('[EG7] no page asks another host for anything', async ({ open, expectConsole }) => {
  expectConsole(/nowhere: .*status of 404/, WHO_IS_NOT_IN)
  for (const path of [...Object.values(screens), '/nowhere']) {
    const page = await open('/')
    const asked: string[] = []
    page.on('request', (request) => asked.push(new URL(request.url()).hostname))
    await page.goto(path)
    await untilHydrated(page)
    await page.waitForLoadState('networkidle')
    expect(asked.length, path).toBeGreaterThan(3)
    expect([...new Set(asked)], path).toEqual(['station.test'])
  }
})

test('[EG7] no page may: what it would load of another host is refused by its policy', async ({
  open,
  expectConsole,
}) => {
  expectConsole(
    /Content Security Policy/,
    /another host was asked: http:\/\/127\.0\.0\.1/,
    WHO_IS_NOT_IN,
  )
  let reached = 0
  const stranger = createServer((_, response) => {
    reached += 1
    response.setHeader('Access-Control-Allow-Origin', '*').end('')
  })
  await new Promise<void>((done) => stranger.listen(0, '127.0.0.1', done))
  const elsewhere = `http://127.0.0.1:${(stranger.address() as AddressInfo).port}`
  for (const path of Object.values(screens)) {
    const page = await open(path)
    await untilHydrated(page)
    const problems: string[] = []
    watch(page, problems)
    const got = await page.evaluate(async (address) => {
      const load = (element: HTMLElement): Promise<string> =>
        new Promise((settle) => {
          element.onload = () => settle('loaded')
          element.onerror = () => settle('refused')
          document.body.append(element)
          setTimeout(() => settle('refused'), 1_000)
        })
      const make = (tag: string, of: object) => Object.assign(document.createElement(tag), of)
      const fetched = fetch(address).then(
        () => 'loaded',
        () => 'refused',
      )
      return Promise.all([
        fetched,
        load(make('img', { src: `${address}/a.png` })),
        load(make('script', { src: `${address}/a.js` })),
        load(make('link', { rel: 'stylesheet', href: `${address}/a.css` })),
        load(make('iframe', { src: `${address}/a.html` })).then(() => 'refused'),
        load(make('img', { src: 'data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=' })),
      ])
    }, elsewhere)
    expect(got, path).toEqual(Array(6).fill('refused'))
    expect(problems, 'what the watch saw').toContain(`another host was asked: ${elsewhere}/a.js`)
  }
  expect(reached).toBe(0)
  stranger.close()
})
