import { biasSaid } from '#lib/estimate/scoop-bias.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import { anyPan, done, inJob, openJob, sends, typeFigures } from './support/food-hands.ts'
import { itemRow, leadPan, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

const GRAMS_A_PORTION = 70
const EMPTY_PAN_GRAMS = 760
/** Sixteen portions scooped 15 percent heavy. */
const REALLY_LEFT = 24 - 16 * 1.15

const kilograms = (portions: number): string =>
  ((EMPTY_PAN_GRAMS + portions * GRAMS_A_PORTION) / 1_000).toFixed(3)

test('scoops run heavy: two weighings say so plainly, and fewer portions are sold', async ({
  job,
}) => {
  const [pans, counterPage] = await Promise.all([job.open('/pans'), job.open('/counter')])
  expect(job.lead.portions('chicken', 1)).toBe(GRAMS_A_PORTION * 1_000)
  const weigh = async (portions: number) => {
    await openJob(pans, 'Herb chicken', pansWords.weigh)
    await inJob(pans, formWords.unit.kg).click()
    await typeFigures(pans, kilograms(portions))
    await sends(pans, formWords.weighSend, formWords.weighed('Herb chicken'))
  }

  await test.step('the full pan is weighed, with its pan', () => weigh(24))
  await test.step('sixteen wraps are made', async () => {
    const item = job.lead.state().station.items.find(({ id }) => id === 'garden-chicken')
    if (!item) throw new Error('no garden chicken')
    const builds = Array.from({ length: 4 }, () => usualChoice(item))
    for (const ticket of [1, 2, 3, 4]) {
      await job.lead.does({ type: 'send', builds, readBack: true, paid: true })
      for (const letter of ['A', 'B', 'C', 'D']) {
        await job.lead.does({ type: 'start', ticket, letter })
        await job.lead.does({ type: 'finish', ticket, letter })
      }
    }
    await expect(leadPan(pans, 'Herb chicken', 8, 0)).toBeVisible()
    await counterPage.getByRole('button', { name: counter.askedNone }).click()
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(counter.left(8))
    await expect(anyPan(pans, 'Herb chicken')).not.toHaveAccessibleName(/ % heavy/)
  })

  await test.step('weighed again, it holds two and a half portions less than was counted', async () => {
    await weigh(REALLY_LEFT)
    const belief = job.lead.state().beliefs.chicken
    const said = belief && biasSaid(belief, 5)
    expect(said?.percent).toBeGreaterThan(8)
    expect(said?.percent).toBeLessThan(20)
    await expect(anyPan(pans, 'Herb chicken')).toHaveAccessibleName(
      new RegExp(`, ${pansWords.heavy(said?.percent ?? 0)}`),
    )
    await expect(leadPan(pans, 'Herb chicken', 5, 0, pansWords.nearlyEmpty)).toBeVisible()
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(counter.left(5))
  })

  await test.step('its pan says what that means, and one tap of the eye goes with it', async () => {
    await tapUntil(
      anyPan(pans, 'Herb chicken'),
      pans.getByText(/^Herb chicken scoops run \d+ % heavy: 1 portion fewer\.$/),
    )
    await tapUntil(
      pans.getByRole('button', { name: pansWords.looks[1], exact: true }),
      done(pans, pansWords.done.looked('Herb chicken', pansWords.looks[1])),
    )
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'countCorrected')).toMatchObject([
    { pan: 'pan-chicken', kind: 'weighing' },
    { pan: 'pan-chicken', kind: 'weighing' },
    { pan: 'pan-chicken', kind: 'eye-check' },
  ])
})
