import type { Page } from '@playwright/test'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { potWords } from '#lib/rooms/food/words/job-lacks-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { backToLine, job as dialog, inJob, pot, sends, typeReading } from './support/food-hands.ts'
import { tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

/** The pan whose notch the open panel grows out of, by what stands lit behind it. */
const litPot = (page: Page) => page.locator('[data-lit] button[data-vessel][data-lit]')

test('three pots at once: each has its own notch, its loads are told apart, and the next step is the main button', async ({
  job,
}) => {
  const pans = await job.open('/pans')
  const start = (batch: string, component: string, loads: number) =>
    job.lead.does({ type: 'startBatch', batch, component, loads })
  await start('pot-chicken', 'chicken', 2)
  await start('pot-rice', 'rice', 1)
  await start('pot-beans', 'beans', 1)

  await test.step('all three stand behind their pans, with their lids beside them', async () => {
    for (const name of ['Herb chicken', 'Brown rice', 'Black beans'])
      await expect(pot(pans, name)).toBeVisible()
    await expect(pans.locator('button[data-kind="pot"]')).toHaveCount(3)
  })

  await test.step('the first load of the chicken is cooked: the second is told apart from it', async () => {
    await tapUntil(pot(pans, 'Herb chicken'), dialog(pans))
    await expect(litPot(pans)).toHaveAttribute('data-vessel', 'pot-chicken')
    await expect(dialog(pans).getByText(batchWords.cookWhich(1, 2))).toBeVisible()
    await typeReading(pans, '167')
    await sends(pans, formWords.readSend('167 °F'), batchWords.cookDone('Herb chicken', '167 °F'))
    const loads = dialog(pans).getByRole('list', { name: potWords.eachLoad }).getByRole('listitem')
    await expect(loads).toHaveText([
      new RegExp(potWords.loadIs.cooked),
      new RegExp(potWords.loadIs.waits),
    ])
    await backToLine(pans)
  })

  await test.step('the rice is cooked, finished, and begins to cool with somebody who stays', async () => {
    await tapUntil(pot(pans, 'Brown rice'), dialog(pans))
    await expect(litPot(pans)).toHaveAttribute('data-vessel', 'pot-rice')
    await typeReading(pans, '150')
    await sends(pans, formWords.readSend('150 °F'), batchWords.cookDone('Brown rice', '150 °F'))
    await sends(pans, 'Finished: ', batchWords.finishDone('Brown rice', 12))
    await inJob(pans, batchWords.step.cool).click()
    await expect(dialog(pans).getByLabel(batchWords.coolPresent)).toBeVisible()
    // That somebody stays is a claim: it isn't there beforehand.
    await expect(dialog(pans).getByText(formWords.clockNotSaid)).toBeVisible()
    await inJob(pans, pansWords.moreBy(1)).click()
    await typeReading(pans, '145')
    await sends(pans, formWords.readSend('145 °F'), batchWords.coolDone('Brown rice', '145 °F'))
    await backToLine(pans)
  })

  await test.step('the beans are cooked and finished, and the main button loads them', async () => {
    await tapUntil(pot(pans, 'Black beans'), dialog(pans))
    await expect(litPot(pans)).toHaveAttribute('data-vessel', 'pot-beans')
    await typeReading(pans, '152')
    await sends(pans, formWords.readSend('152 °F'), batchWords.cookDone('Black beans', '152 °F'))
    await sends(pans, 'Finished: ', batchWords.finishDone('Black beans', 12))
    const main = dialog(pans).locator('[data-main]')
    await expect(main).toHaveText(batchWords.step.load)
    await tapUntil(main, dialog(pans).getByText(formWords.whatGoesIn))
  })

  const { batches } = job.lead.state()
  expect(batches['pot-chicken']).toMatchObject({ loadsDone: 0, cooking: [{}] })
  expect(batches['pot-rice']).toMatchObject({ loadsDone: 1, cooling: [{}] })
  expect(batches['pot-beans']).toMatchObject({ loadsDone: 1, cooling: [], offSale: null })
})
