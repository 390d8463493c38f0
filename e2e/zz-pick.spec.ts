import { PHONE, resize, test } from './support/stage.ts'
import { view } from './support/views.ts'

const out = '/work/shots/pickup'
const b = (name: string, state: string, since = 1) => ({ name, state, since })
const made = (n: number, from = 7) =>
  Array.from({ length: n }, (_, i) => b(`${from + i}A`, 'made', i))
const cases: Record<string, unknown[]> = {
  sketch: [
    b('7A', 'made', 1),
    b('7B', 'made', 2),
    b('8A', 'made', 3),
    b('9A', 'made', 4),
    b('9B', 'made', 5),
    b('9C', 'made', 6),
    b('10A', 'made', 7),
    b('10B', 'making', 8),
    ...[11, 12, 13, 14, 15, 16].map((n) => b(`${n}A`, 'waiting')),
  ],
  one: made(1),
  four: [...made(4), b('11A', 'making'), b('12A', 'making'), b('13A', 'waiting')],
  eight: [
    ...made(8),
    b('15A', 'making'),
    b('16A', 'making'),
    b('16B', 'making'),
    ...[17, 18, 19, 20].map((n) => b(`${n}A`, 'waiting')),
  ],
  fifteen: [
    ...made(15, 20),
    b('35A', 'making'),
    ...Array.from({ length: 18 }, (_, i) => b(`${40 + i}A`, 'waiting')),
  ],
  figures: [
    ...made(6, 108),
    b('108B', 'made'),
    b('108C', 'waiting'),
    b('108D', 'waiting'),
    b('108E', 'waiting'),
    b('114A', 'making'),
    b('115A', 'making'),
    b('116A', 'making'),
    b('117A', 'making'),
    ...Array.from({ length: 22 }, (_, i) => b(`${120 + i}A`, 'waiting')),
    b('119A', 'called'),
  ],
  empty: [],
}
for (const [name, builds] of Object.entries(cases))
  test(`pick ${name}`, async ({ see }) => {
    const first = await see(view('pick-up, empty'))
    const page = first
    await page.routeWebSocket(/socket/, (ws) => {
      const server = ws.connectToServer()
      ws.onMessage((m) => server.send(m))
      server.onMessage((m) =>
        ws.send(
          typeof m === 'string'
            ? m.replace(/"builds":\[[^\]]*\]/, `"builds":${JSON.stringify(builds)}`)
            : m,
        ),
      )
    })
    await page.reload()
    await page.waitForTimeout(1500)
    for (const size of [
      { width: 1280, height: 800 },
      { width: 1024, height: 768 },
      PHONE,
      { width: 1920, height: 1080 },
      { width: 1080, height: 1920 },
    ]) {
      await resize(page, size)
      await page.waitForTimeout(120)
      await page.screenshot({ path: `${out}/${name}-${size.width}.png` })
      const f = await page.evaluate(() =>
        [
          '[data-place=waiting] li',
          '[data-place=making] li',
          '[data-place=made] li[data-ticket] span',
          '[data-place=made] li[data-ticket] span + span',
        ].map((s) => {
          const e = document.querySelector(s)
          return e ? Math.round(parseFloat(getComputedStyle(e).fontSize)) : 0
        }),
      )
      console.log(name, size.width, JSON.stringify(f))
    }
  })
