import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { scrolled } from './support/drawn.ts'
import { expect, PHONE, resize, TABLETS, test } from './support/stage.ts'
import { view } from './support/views.ts'

/** What is said to a guest is read from arm's length, CSS pixels. */
const SAID_PX = 26

test('no pan moves from the question to the read-back, and no tile as a need is told', async ({
  see,
}) => {
  const page = await see(view('counter, ask'))
  const boxes = (of: string) =>
    page.locator(of).evaluateAll((all) =>
      all.map((one) => {
        const { left, top, width, height } = one.getBoundingClientRect()
        return [left, top, width, height].map(Math.round)
      }),
    )
  const pans = () => boxes('[data-told] > :last-child, [data-face] > :last-child')
  const tiles = () => boxes('[data-code]')
  await expect(page.locator('[data-told]').first()).toBeVisible()
  const [asked, stood] = [await pans(), await tiles()]
  expect(asked).toHaveLength(10)
  expect(stood).toHaveLength(17)
  await page.getByRole('button', { name: 'Milk', exact: true }).click()
  await expect(page.getByRole('list', { name: counter.fits, exact: true })).toBeVisible()
  expect(await tiles()).toEqual(stood)
  expect(await pans()).toEqual(asked)
  await page.getByRole('button', { name: counter.saidNeeds }).click()
  await expect(page.getByRole('list', { name: counter.menu, exact: true })).toBeVisible()
  expect(await pans()).toEqual(asked)
})

test('what is read back stands at 26 px or more, beside the price', async ({ look }) => {
  for (const name of ['read-back', 'read-back, milk']) {
    const page = await look(view(`counter, ${name}`))
    const said = page.getByRole('region', { name: counter.order, exact: true }).getByText(/^“One/)
    for (const size of TABLETS) {
      await resize(page, size)
      const px = await said.evaluate((one) => Number.parseFloat(getComputedStyle(one).fontSize))
      expect.soft(px, `${name}, ${size.width}`).toBeGreaterThanOrEqual(SAID_PX)
    }
  }
})

test('on a phone the menu, the whole line and the read-back are there at once', async ({
  look,
}) => {
  for (const name of ['choose', 'read-back', 'read-back, milk']) {
    const page = await look(view(`counter, ${name}`))
    await resize(page, PHONE)
    const pans = await page
      .locator('[data-face] > :last-child')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().bottom))
    const main = page.getByRole('button', { name: /^I said it/ })
    const foot = (await main.boundingBox())?.y ?? 0
    expect.soft(pans, name).toHaveLength(10)
    expect.soft(Math.max(...pans), `${name}: pans above the foot`).toBeLessThanOrEqual(foot)
    expect.soft(await scrolled(page), `${name}: what scrolls`).toEqual([])
    await resize(page, TABLETS[0] ?? PHONE)
  }
})
