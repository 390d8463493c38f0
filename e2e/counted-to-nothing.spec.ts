import { lineWords } from '#lib/rooms/pans/words/line-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { anyPan, job as dialog, done } from './support/food-hands.ts'
import { leadPan, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test('[S121] counted to nothing: each of the two ways back is one tap more', async ({ job }) => {
  const { lead } = job
  const pans = await job.open('/pans')
  const button = (name: string) => pans.getByRole('button', { name, exact: true })
  const toCount = async () => {
    await tapUntil(anyPan(pans, 'Cheddar'), button(pansWords.correct))
    await tapUntil(button(pansWords.correct), button(pansWords.moreBy(5)))
  }
  const before = lead.state().pans['pan-cheddar']
  await lead.does({ type: 'correct', pan: 'pan-cheddar', amount: 0, kind: 'count' })
  await expect(leadPan(pans, 'Cheddar', 0, 0, pansWords.soldOut)).toBeVisible()

  await test.step('it holds something: the count alone isn’t taken, that it was a slip is', async () => {
    await toCount()
    await expect(pans.getByText(pansWords.countedToNothing)).toBeVisible()
    await expect(button(lineWords.countLack)).toBeDisabled()
    await button(pansWords.moreBy(5)).click()
    await tapUntil(button(pansWords.wasSlip(5)), done(pans, pansWords.done.correct('Cheddar', 5)))
    await expect(leadPan(pans, 'Cheddar', 5, 0, pansWords.nearlyEmpty)).toBeVisible()
    const after = lead.state().pans['pan-cheddar']
    expect(after).toMatchObject({ food: before?.food, load: before?.load })
    expect(after).not.toHaveProperty('ended')
  })

  await test.step('something else was put in: it is loaded', async () => {
    await lead.does({ type: 'correct', pan: 'pan-cheddar', amount: 0, kind: 'count' })
    await toCount()
    await tapUntil(
      button(pansWords.loadIt),
      dialog(pans).getByRole('button', { name: 'Type the temperature' }),
    )
  })
})
