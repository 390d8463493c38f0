import { sayChange } from '#lib/editor/words/changes-en.ts'
import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import {
  begin,
  button,
  fill,
  newHands,
  publish,
  section,
  untilSaved,
} from './support/menu-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'price-changed' })

const price = (page: Parameters<typeof begin>[0]) =>
  page.getByLabel(words.item.price, { exact: true })

test('the price changed between services: said in words before it is published, and brought back', async ({
  open,
}) => {
  test.setTimeout(180_000)
  const hands = newHands()
  const page = await open('/menu', { viewport: { width: 1024, height: 768 } }, true)
  await begin(page, hands, 'Noon line', words.screen.fromDemo)
  await publish(page, hands, PASSPHRASE, 1)

  await test.step('a price of less than nothing is told at its field, and stays as it was typed', async () => {
    await section(page, hands, 'items')
    await button(page, /^Garden chicken/).click()
    await expect(page.getByRole('heading', { name: 'Garden chicken' })).toBeVisible()
    await fill(hands, price(page), '-1')
    await untilSaved(page)
    await expect(price(page)).toHaveAttribute('aria-invalid', 'true')
    await expect(price(page)).toHaveValue('-1')
    await section(page, hands, 'publish')
    await expect(button(page, words.publish.lacksMended(1))).toBeDisabled()
  })

  const changed = sayChange({
    what: 'changed',
    entity: 'item',
    id: 'garden-chicken',
    name: 'Garden chicken',
    field: 'priceCents',
    from: 650,
    to: 725,
  })
  await test.step('what changes is said, and published', async () => {
    await section(page, hands, 'items')
    await button(page, /^Garden chicken/).click()
    await fill(hands, price(page), '7.25')
    await untilSaved(page)
    await section(page, hands, 'publish')
    await expect(page.getByText(changed)).toBeVisible()
    await publish(page, hands, PASSPHRASE, 2)
  })
})
