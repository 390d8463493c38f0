import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { begin, button, newHands, publish, section } from './support/menu-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'back-to-last-week' })

test('back to last week’s line: an earlier revision is looked at, brought back and published', async ({
  open,
}) => {
  test.setTimeout(180_000)
  const hands = newHands()
  const page = await open('/menu', { viewport: { width: 1024, height: 768 } }, true)
  await begin(page, hands, 'Week line', words.screen.fromDemo)
  await publish(page, hands, PASSPHRASE, 1)

  await section(page, hands, 'items')
  await button(page, /^Harbor tuna/).click()
  await expect(page.getByRole('heading', { name: 'Harbor tuna' })).toBeVisible()
  await button(page, words.item.takeOut).click()
  await button(page, words.item.takeOutSure).click()
  await expect(button(page, /^Harbor tuna/)).toHaveCount(0)
  await publish(page, hands, PASSPHRASE, 2)

  await test.step('what differs is said first, and a slip brings nothing back', async () => {
    await button(page, new RegExp(`^${words.publish.revision(1)}`)).click()
    await expect(page.getByText('Harbor tuna is taken away.')).toBeVisible()
    await button(page, words.publish.back(1)).click()
    await button(page, words.publish.backSure).click()
    await expect(page.getByText(words.publish.broughtBack(1))).toBeVisible()
  })
  await section(page, hands, 'items')
  await expect(button(page, /^Harbor tuna/)).toBeVisible()
  await publish(page, hands, PASSPHRASE, 3)
})
