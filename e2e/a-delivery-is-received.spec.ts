import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { receivingWords as words } from '#lib/words/receiving/receiving-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import {
  crate,
  figures,
  isReceived,
  panelOf,
  receives,
  sayOf,
  signsAs,
} from './support/delivery-hands.ts'
import { beginning } from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { joinContext } from './support/station.ts'

test.use({ proved: true, killed: true, stations: [demoStation] })

test('a delivery is received: another product is unread until read, and what is bad goes back', async ({
  job,
  expectConsole,
}) => {
  // An answer is lost on the way, and the laptop killed.
  expectConsole(/WebSocket connection|ERR_(CONNECTION_REFUSED|EMPTY_RESPONSE)|status of 401/)
  const now = Date.now()
  const page = await job.openStill('/deliveries')
  const counterPage = await job.open('/counter', { viewport: { width: 1024, height: 768 } })
  const told = page.getByRole('status').first()
  const beans = counterPage
    .getByRole('list', { name: counter.fits })
    .getByRole('listitem')
    .filter({ hasText: 'Bean and pepper' })
  const lots = (lot: string): Promise<number> =>
    page.evaluate(
      async (asked) => (await (await fetch(`/larder/lots?lot=${asked}`)).json()).deliveries.length,
      lot,
    )

  await test.step('milk at 50 °F: said as it is typed, with its paragraph, and sent back', async () => {
    await crate(page, 'Plain yogurt').click()
    await signsAs(page, 'Plain yogurt')
    await sayOf(page, 'Plain yogurt', {
      comes: 'milk',
      degrees: '50',
      date: figures(now, 6),
      lot: 'Y-88',
    })
    const panel = panelOf(page, 'Plain yogurt')
    await expect(panel).toContainText('50 °F: it has to be 45 °F or below.')
    await expect(panel).toContainText('3-202.11(B)')
    await expect(receives(page, 'Plain yogurt')).toHaveCount(0)
    await panel.getByRole('button', { name: beginning(words.sendBack) }).click()
    await expect(told).toContainText(words.doneBack('Plain yogurt', 'too-warm'))
    await expect(crate(page, 'Plain yogurt')).toContainText(words.wentBack)
  })

  await test.step('a pack of yesterday, a lot that is too long, a date of no year: in words', async () => {
    await crate(page, 'Cumin').click()
    const panel = panelOf(page, 'Cumin, ground')
    await sayOf(page, 'Cumin, ground', {
      same: 'other',
      comes: 'dry',
      date: figures(now, -1),
      lot: 'C'.repeat(41),
    })
    await expect(panel).toContainText('3-501.17(B)')
    const back = panel.getByRole('button', { name: words.keys.takeBack })
    for (let figure = 0; figure < 4; figure += 1) await back.click()
    await expect(panel).toContainText(words.lacks.date)
    for (const figure of figures(now, 400).slice(0, 4))
      await panel.getByRole('button', { name: figure, exact: true }).click()
    for (const figure of figures(now, 400).slice(4))
      await panel.getByRole('button', { name: figure, exact: true }).click()
    await expect(panel).toContainText(words.lacks['lot-too-long'])
    await panel.getByLabel(words.lot, { exact: true }).fill('CU 31/7')
    await expect(panel).toContainText(words.becomesUnread)
  })

  await test.step('before it came, a guest without peanut is offered it with a change', async () => {
    await counterPage.getByRole('button', { name: counter.needTile('peanut'), exact: true }).click()
    await expect(beans).toHaveAttribute('data-fit', 'change')
  })

  await test.step('the answer is lost on the way, and the laptop killed: tapped again it is recorded once', async () => {
    await page.evaluate(() => {
      const real = window.fetch
      window.fetch = async (asked, init) => {
        const answer = await real(asked, init)
        if (asked !== '/larder/do') return answer
        window.fetch = real
        throw new TypeError('the answer is lost')
      }
    })
    await receives(page, 'Cumin, ground').click()
    await expect(told).toContainText(words.unknown)
    await job.kill()
    await job.startAgain()
    // Scripts, as which these devices are in, have a proof of each start alone.
    for (const one of [page, counterPage]) await joinContext(one.context(), one.url())
    await expect.poll(() => lots('cu317').catch(() => -1)).toBe(1)
    await isReceived(page, 'Cumin, ground')
    await expect(told).toContainText(words.doneUnread('Cumin, ground'))
    expect(await lots('cu317')).toBe(1)
    await expect(crate(page, 'Cumin')).toContainText(words.label.unread ?? '')
  })

  await test.step('the counter knows: unknown, read the label first', async () => {
    await counterPage.reload()
    await counterPage.getByRole('button', { name: counter.needTile('peanut'), exact: true }).click()
    await expect(beans).toHaveAttribute('data-fit', 'no')
    await expect(beans).toContainText(counter.rowDoesNot('Black beans, peanut: not known'))
    await expect
      .poll(() => job.lead.state().labelChanges)
      .toMatchObject([{ ingredient: 'cumin', read: false }])
  })

  await test.step('a lot that is called back is found, however it is written', async () => {
    await panelOf(page, 'Bell peppers')
      .getByRole('button', { name: words.cancel, exact: true })
      .click()
    await page.getByLabel(words.find.lot).fill('cu-317')
    await page.getByRole('button', { name: words.find.go }).click()
    await expect(page.getByText(words.find.found(1, 'cu-317'))).toBeVisible()
    await page.getByLabel(words.find.lot).fill('Y 88')
    await page.getByRole('button', { name: words.find.go }).click()
    await expect(page.getByText(words.rowBack('too-warm')).first()).toBeVisible()
    await page.getByLabel(words.find.lot).fill('nobody’s')
    await page.getByRole('button', { name: words.find.go }).click()
    await expect(page.getByText(words.find.found(0, 'nobody’s'))).toBeVisible()
  })

  await test.step('its label is read where labels are read, and the counter offers it again', async () => {
    const address = `/menu/label?station=${demoStation.id}&ingredient=cumin`
    await page.goto(new URL(address, page.url()).href)
    await expect(page.getByRole('heading', { name: /Cumin, ground/ })).toBeVisible()
    const saved = await page.evaluate(
      async ({ station, passphrase }) => {
        const asked = await (await fetch(`/menu/labels?station=${station}`)).json()
        const codes: readonly string[] = asked.allergens.ownAllergens
        const of = asked.ingredients.find(
          (one: { ingredient: string }) => one.ingredient === 'cumin',
        )
        const nine = [
          'milk',
          'egg',
          'fish',
          'shellfish',
          'tree-nuts',
          'wheat',
          'peanut',
          'soy',
          'sesame',
        ]
        const label = {
          declarations: Object.fromEntries([...nine, ...codes].map((code) => [code, 'not-listed'])),
          traits: [],
          claims: {},
          law: 'us-9',
          readOn: null,
          list: 'Ground cumin.',
          readBy: null,
        }
        const response = await fetch('/menu/labels', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify({
            station,
            ingredient: 'cumin',
            saw: of.label.version,
            label,
            is: 'other',
            proof: { passphrase },
          }),
        })
        return response.json()
      },
      { station: demoStation.id, passphrase: PASSPHRASE },
    )
    expect(saved).toMatchObject({ code: 'done' })
    await expect
      .poll(() => job.lead.state().station.ingredients.find(({ id }) => id === 'cumin')?.readOn)
      .not.toBeNull()
  })

  const log = await job.log()
  expect(
    log.filter(({ type }) => type === 'labelChanged').map(({ label }) => label === null),
  ).toEqual([true, false])
})
