import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { begin, button, fill, newHands, section, untilSaved } from './support/menu-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'two-people-edit' })

const TABLET = { viewport: { width: 1024, height: 768 } }

test('two people edit: each sees the other’s change, and nobody overwrites silently', async ({
  open,
  expectConsole,
}) => {
  test.setTimeout(180_000)
  // It isn't let look for a while, so that it doesn't know yet.
  expectConsole(/ERR_FAILED/, /409 \(Conflict\)/)
  const hands = newHands()
  const one = await open('/menu', TABLET, true)
  await begin(one, hands, 'Shared line', words.screen.fromDemo)
  const other = await open(new URL(one.url()).href, TABLET, true)
  for (const page of [one, other]) {
    await section(page, hands, 'items')
    await button(page, /^Garden chicken/).click()
    await expect(page.getByRole('heading', { name: 'Garden chicken' })).toBeVisible()
  }
  const price = (page: typeof one) => page.getByLabel(words.item.price, { exact: true })

  await test.step('what one saves is soon on the other’s screen', async () => {
    await fill(hands, price(one), '7.00')
    await untilSaved(one)
    await expect(price(other)).toHaveValue('7.00', { timeout: 20_000 })
  })

  await test.step('the same changed by both is asked, and nothing typed is lost', async () => {
    await other.route('**/menu/draft?*', (route) => route.abort())
    await fill(hands, price(one), '7.50')
    await untilSaved(one)
    await fill(hands, price(other), '8.00')
    const asked = other.getByRole('alert').filter({ hasText: words.screen.clashWhat })
    await expect(asked).toBeVisible()
    await expect(asked).toContainText('Price: yours 8.00, theirs 7.50')
    await expect(price(other)).toHaveValue('8.00')
    await asked.getByRole('button', { name: words.screen.mine }).click()
    await other.unroute('**/menu/draft?*')
    await untilSaved(other)
    await expect(price(one)).toHaveValue('8.00', { timeout: 20_000 })
  })
})
