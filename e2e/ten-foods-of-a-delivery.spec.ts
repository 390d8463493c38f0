import type { Arrival } from '#lib/safety/receiving.ts'
import { receivingWords as words } from '#lib/words/receiving/receiving-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { crate, figures, isReceived, panelOf, sayOf, signsAs } from './support/delivery-hands.ts'
import { expect, test } from './support/job.ts'
import { countTaps } from './support/round-hands.ts'
import { untilHydrated } from './support/station.ts'

/** Chicago: a quarter to seven in the morning. */
const MORNING = Date.parse('2026-11-25T12:45:00Z')
const WEEK_MS = 7 * 86_400_000

/** Ids, what is called how, how it comes, and off the pack: along the line, with two that are passed over. */
const TEN: readonly (readonly [string, string, Arrival, degrees?: string])[] = [
  ['pita', 'Pita bread', 'dry'],
  ['brown-rice', 'Brown rice, long grain', 'dry'],
  ['chicken-breast', 'Chicken breast', 'cold', '38'],
  ['black-beans', 'Black beans, dry', 'dry'],
  ['bell-peppers', 'Bell peppers', 'cold', '40'],
  ['tuna', 'Tuna in water', 'dry'],
  ['cabbage', 'Red cabbage', 'cold', '39.5'],
  ['cheddar', 'Cheddar, microbial rennet', 'cold', '37'],
  ['almonds', 'Sliced almonds', 'dry'],
  ['yogurt', 'Plain yogurt', 'milk', '41'],
]

/** A food, beside figures and what the keyboard types. */
const MOST_TAPS_A_FOOD = 4

test.use({ proved: true, stations: [demoStation], clock: { beginsAt: MORNING, passes: [WEEK_MS] } })

test('[DV16] ten foods of an ordinary delivery: four taps a food at most, and a tap for each that is passed over', async ({
  job,
}) => {
  const page = await job.openStill('/deliveries')
  await test.step('they came a week ago, so how each comes is known', async () => {
    const answers = await page.evaluate(
      async (ten) => {
        const said: string[] = []
        for (const [ingredient, , comes] of ten) {
          const reading = { tenths: 380, scale: 'F', probe: 'blue' }
          const isRead = comes === 'cold' || comes === 'milk'
          const delivery = {
            ingredient,
            same: 'same',
            comes,
            useBy: null,
            lot: 'W1',
            ...(isRead ? { reading } : { needsNoCold: true }),
          }
          const response = await fetch('/larder/do', {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify({
              id: `before-${ingredient}`,
              command: { type: 'receiveDelivery', delivery, initials: 'KT' },
            }),
          })
          said.push((await response.json()).answer.answer)
        }
        return said
      },
      TEN.map((one) => [...one]),
    )
    expect(new Set(answers)).toEqual(new Set(['accepted']))
    await job.hoursPass()
    await page.reload()
    await untilHydrated(page)
    await expect(crate(page, 'Pita bread')).not.toContainText('✓')
  })

  const tapped = await countTaps(page)
  let passedOver = 0
  for (const [index, [, food, , degrees]] of TEN.entries()) {
    if (!(await panelOf(page, food).isVisible())) {
      passedOver += index === 0 ? 0 : 1
      await crate(page, food).click()
    }
    await expect(panelOf(page, food)).toBeVisible()
    if (index === 0) await signsAs(page, food)
    await sayOf(page, food, {
      ...(degrees === undefined ? {} : { degrees }),
      date: figures(MORNING + WEEK_MS, degrees === undefined ? 300 : 9),
      lot: `L${index}-26`,
    })
    await isReceived(page, food)
  }
  const taps = await tapped()
  console.log(`ten foods: ${taps} taps, ${passedOver} of them to pass foods over`)
  expect(taps).toBeLessThanOrEqual(TEN.length * MOST_TAPS_A_FOOD + passedOver + 1)
  for (const [, food] of TEN) await expect(crate(page, food)).toContainText('✓')
  await page.getByRole('button', { name: words.cancel, exact: true }).click()
  const history = page.getByRole('region', { name: words.history })
  for (const [index, [, food]] of TEN.entries())
    await expect(history.getByRole('region', { name: food })).toContainText(`L${index}-26`)
})
