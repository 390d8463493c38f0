import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import {
  begin,
  button,
  fill,
  newHands,
  publish,
  readLabel,
  secondsOf,
  section,
  tap,
  untilSaved,
} from './support/menu-hands.ts'
import { ITEMS, PANS } from './support/shell-bar.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'own-station' })

/** Of somebody who has it all in their head, at 2 s a tap and 5 s a field. */
const MOST_SECONDS = 600

test('an own station of three items and eight components, from nothing to published', async ({
  open,
}) => {
  test.setTimeout(300_000)
  const hands = newHands()
  const page = await open('/menu', { viewport: { width: 1024, height: 768 } }, true)
  await begin(page, hands, 'Shell bar')

  await test.step('the wells', async () => {
    for (const held of ['hot', 'hot', 'cold'] as const)
      await tap(hands, button(page, words.line.moreWells(held)))
    await tap(hands, button(page, words.line.putWells(3)))
  })

  await test.step('the pans, one after the other', async () => {
    for (const one of PANS) {
      await tap(hands, button(page, words.line.putIn(one.well)).first())
      if (one.size !== null) await tap(hands, button(page, words.line.size[one.size]))
      await fill(hands, page.getByLabel(words.line.whatGoesIn), one.name)
      await tap(hands, button(page, words.line.putItIn))
      // What is typed into a panel that is going would be of the one before.
      await expect(page.getByRole('heading', { name: one.name })).toBeVisible()
      await tap(hands, button(page, new RegExp(`^${words.pan.straight}`)))
      await tap(hands, button(page, words.pan.kinds[one.kind]))
      await tap(hands, button(page, words.pan.toPortion))
      if (one.weighs === null) await tap(hands, button(page, words.pan.tools.piece))
      else
        await fill(
          hands,
          page.getByLabel(words.pan.density.ten(words.pan.density.scoops)),
          one.weighs,
        )
      await tap(hands, button(page, words.screen.close))
    }
    await untilSaved(page)
    await expect(page.getByText(words.screen.pansSet(8, 8))).toBeVisible()
  })

  await test.step('the items', async () => {
    await section(page, hands, 'items')
    for (const item of ITEMS) {
      await tap(hands, button(page, `+ ${words.item.add}`))
      await expect(page.getByRole('heading', { name: words.item.noName })).toBeVisible()
      await fill(hands, page.getByLabel(words.item.name, { exact: true }), item.name)
      await fill(hands, page.getByLabel(words.item.price, { exact: true }), item.price)
      for (const taken of item.takes) await tap(hands, button(page, words.item.pan(taken, 'not')))
    }
  })

  await test.step('what touches what is confirmed once', async () => {
    await section(page, hands, 'touch')
    await tap(hands, button(page, /^Confirm all/))
    await expect(page.getByText(words.item.confirmed)).toBeVisible()
  })

  await test.step('each label is read, with its pack in hand', async () => {
    await section(page, hands, 'publish')
    for (const one of PANS) {
      await tap(hands, button(page, new RegExp(`^The label of ${one.name}`)))
      await readLabel(page, hands, one)
    }
    await expect(page.getByText(/^The label of /)).toHaveCount(0)
  })

  await publish(page, hands, PASSPHRASE, 1)
  const seconds = secondsOf(hands)
  const said = `an own station, from nothing to published, its labels read: ${hands.taps} taps and ${hands.fields} fields, ${(seconds / 60).toFixed(1)} min at 2 s a tap and 5 s a field`
  test.info().annotations.push({ type: 'figure', description: said })
  console.log(said)
  expect(seconds).toBeLessThanOrEqual(MOST_SECONDS)

  await test.step('it is there after the page is loaded anew', async () => {
    await page.reload()
    await expect(page.getByText(words.screen.published(1))).toBeVisible()
    await expect(page.getByText(words.screen.pansSet(8, 8))).toBeVisible()
  })
})
