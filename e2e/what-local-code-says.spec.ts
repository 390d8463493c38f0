import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { begin, button, fill, newHands, section, tap, untilSaved } from './support/menu-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'what-local-code-says' })

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const

test('what local code says: a limit with its source, a rush, a sanitizer, a tool', async ({
  open,
}) => {
  test.setTimeout(240_000)
  const hands = newHands()
  const page = await open('/menu', { viewport: SIZES[1] }, true)
  await begin(page, hands, 'By local code', words.screen.fromDemo)
  await section(page, hands, 'house')
  const leaf = (which: keyof typeof words.house.leaves) =>
    tap(hands, button(page, words.house.leaves[which]))
  const fits = async (leafName: string) => {
    for (const size of SIZES) {
      await page.setViewportSize(size)
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(over, `${leafName} at ${size.width}`).toBeLessThanOrEqual(0)
      await page.screenshot({
        path: test.info().outputPath(`${leafName}-${size.width}.png`),
        fullPage: true,
      })
    }
    await page.setViewportSize(SIZES[1])
  }

  await test.step('a limit that asks less takes being read in the code itself', async () => {
    await leaf('limits')
    await tap(hands, button(page, words.limits.differsIn(words.limits.names.coldHolding)))
    const own = page.getByRole('group', {
      name: words.limits.own(words.limits.names.coldHolding),
    })
    await fill(hands, own.getByLabel(words.limits.temperature), '45')
    await expect(page.getByText(words.limits.beside.looser)).toBeVisible()
    await fill(hands, own.getByLabel(words.limits.document), 'Health code of Alder County')
    await fill(hands, own.getByLabel(words.limits.paragraph), '§ 4.2')
    await tap(hands, own.getByRole('button', { name: words.limits.knownWays.memory }))
    await expect(page.getByText(/read it in the local code, and say where/)).toBeVisible()
    await tap(hands, own.getByRole('button', { name: words.limits.knownWays.seen }))
    await expect(page.getByText(words.limits.beside.looser)).toBeVisible()
    await fits('limits')
  })

  await test.step('the kitchen: a sanitizer and a tool', async () => {
    await leaf('kitchen')
    await tap(hands, button(page, words.house.sanitizers.chlorine))
    await fill(hands, page.getByLabel(words.house.sanitizerEvery), '60')
    await tap(hands, button(page, words.house.reheatPlaces.oven))
    const tools = page.getByRole('group', { name: words.house.toolsAtHand })
    const before = await tools.getByLabel(words.house.toolName).count()
    await tap(hands, button(page, words.house.addTool))
    await expect(tools.getByLabel(words.house.toolName)).toHaveCount(before + 1)
    await tools.getByLabel(words.house.toolSizeOf).last().selectOption({ label: 'Ladle 4 fl oz' })
    await fits('kitchen')
  })

  await test.step('the day: a rush that ends before it begins is told', async () => {
    await leaf('day')
    const rushes = page.getByRole('group', { name: words.house.rushes })
    await tap(hands, button(page, words.house.addRush))
    await rushes.getByLabel(words.house.from, { exact: true }).last().fill('12:30')
    await rushes.getByLabel(words.house.to, { exact: true }).last().fill('12:00')
    await expect(rushes.getByRole('alert')).toHaveText('The rush ends before it begins.')
    await rushes.getByLabel(words.house.to, { exact: true }).last().fill('13:00')
    await expect(rushes.getByRole('alert')).toHaveCount(0)
    await fits('day')
  })

  await test.step('all of it is there after the page is loaded anew', async () => {
    await untilSaved(page)
    await page.reload()
    await section(page, hands, 'house')
    await leaf('kitchen')
    await expect(page.getByLabel(words.house.sanitizerEvery)).toHaveValue('60')
    await leaf('limits')
    await expect(page.getByLabel(words.limits.paragraph)).toHaveValue('§ 4.2')
    await expect(page.getByLabel(words.limits.temperature)).toHaveValue('45')
  })
})
