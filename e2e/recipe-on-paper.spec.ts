import { PAPERS } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { recipeEn as words } from '#lib/words/recipe/recipe-en.ts'
import { CARDED } from '#tests/support/carded-station.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { nothingIsOutside, printed } from './support/paper-ink.ts'
import { SCHOOL } from './support/plan-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ proved: true, houseOf: 'recipe-on-paper' })

const AT_ONCE = { viewport: { width: 1024, height: 768 } }
const LONG =
  'Fold in the relish, then the dressed mayonnaise, a third at a time, until no dry tuna is left; '

const STATION = stationSchema.parse({
  ...CARDED,
  ...{ id: SCHOOL.id, name: SCHOOL.name },
  vessels: [{ id: 'bowl', name: 'Mixer bowl', holds: '4 qt' }],
  recipes: CARDED.recipes.map((one) => (one.id === 'tuna-mix' ? { ...one, vessel: 'bowl' } : one)),
})

const bare = (text: string): string => text.replace(/\s/g, '')

test('[PA41] [PA46] [PA49] a recipe at any yield, with a method as it was typed: its paper says what its screen says', async ({
  open,
  endServer,
}) => {
  test.setTimeout(240_000)
  const data = temporaryFolder(true)
  await publishIn(data, STATION)
  const server = await launchServer({ data })
  const address = `${server.pageUrl}/menu/recipe?station=${STATION.id}&recipe=tuna-mix`
  const screen = await open(address, AT_ONCE, true)
  const method = screen.getByRole('textbox', { name: words.method.title })
  await expect(method).toBeVisible({ timeout: 60_000 })

  await test.step('steps are typed a line each, and are there when it is opened anew', async () => {
    await method.fill(`1. Drain the tuna.\n\n2. ${LONG.repeat(2)}\nChill.`)
    await expect(
      screen.getByText(words.method.problem({ code: 'too-long', nth: 2, most: 160 })),
    ).toBeVisible()
    await method.fill(`1. Drain the tuna.\n\n2. ${LONG}\nChill.`)
    await method.blur()
    const again = await open(address, AT_ONCE, true)
    await expect(again.getByRole('textbox', { name: words.method.title })).toHaveValue(
      `Drain the tuna.\n${LONG.trim()}\nChill.`,
      { timeout: 60_000 },
    )
    await again.context().close()
  })

  const amounts = async () => {
    await screen.getByLabel(words.make, { exact: true }).fill('5 qt')
    const cells = screen.locator('table').first().locator('tbody tr')
    await expect(cells.first()).toContainText('10 lb')
    return cells.evaluateAll((rows) =>
      rows.map((row) => ({
        name: row.querySelector('th')?.childNodes[0]?.textContent ?? '',
        amount: row.querySelector('td b')?.textContent ?? '',
      })),
    )
  }
  const shown = await amounts()
  const batches = (
    (await screen.getByRole('status').filter({ hasText: 'even batches' }).allInnerTexts())[0] ?? ''
  )
    .split('\n')
    .find((line) => line.includes('even batches'))
  expect(shown).toHaveLength(3)

  await screen.getByRole('link', { name: words.onPaper }).click()
  await expect(screen.locator('article[data-row]').nth(8)).toBeAttached({ timeout: 60_000 })
  for (const paper of PAPERS) {
    const pages = await printed(screen, paper)
    const whole = bare(pages.flatMap(({ lines }) => lines).join(''))
    for (const { name, amount } of shown) {
      expect(amount).not.toBe('')
      expect(whole, name).toContain(bare(name))
      expect(whole, name).toContain(bare(amount))
    }
    for (const said of [
      'Mixer bowl, 4 qt',
      batches ?? '',
      '1. Drain the tuna.',
      `2. ${LONG}`,
      '3. Chill.',
    ])
      expect(whole).toContain(bare(said))
    expect(whole.indexOf(bare('3. Chill.'))).toBeLessThan(whole.indexOf(bare('Hold at 41 °F')))
    expect(pages.at(-1)?.lines.at(-1)).toBe(frameEn.page(pages.length, pages.length))
    await screen.emulateMedia({ media: 'print' })
    await nothingIsOutside(screen, paper)
    await screen.emulateMedia({ media: null })
  }
  await screen.pdf({ path: 'test-results/recipe-card.pdf', preferCSSPageSize: true })
  await endServer(server)
})
