import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { anyPan, job as dialog, openJob, sends } from './support/food-hands.ts'
import { assemblyPan, leadPan, order, startButton, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test('the scoop that is missing: the nearest that carries nothing across, with its portion', async ({
  job,
}) => {
  const [pans, counterPage, assembly] = await Promise.all([
    job.open('/pans'),
    job.open('/counter'),
    job.open('/assembly'),
  ])
  await order(counterPage, 'Garden chicken', 1)
  await expect(startButton(assembly, '1A')).toBeEnabled()
  await expect(assemblyPan(assembly, 'Cheddar')).toContainText('#24')

  await test.step('the lead chooses among what is at hand, and sees how far off each is', async () => {
    await openJob(pans, 'Cheddar', pansWords.scoopMissing)
    const use = dialog(pans).getByRole('button', { name: formWords.scoopUse, exact: true })
    const choices = dialog(pans).getByRole('group', { name: formWords.scoopChoose, exact: true })
    const light = choices.getByRole('button', { name: /#30 spare 20 % light/ })
    const lacking = dialog(pans).locator('button[data-lacks]')
    await expect(light).toBeVisible()
    await expect(lacking).toBeDisabled()
    await expect(dialog(pans).getByText(formWords.scoopNot)).toBeVisible()
    await expect(
      dialog(pans).getByRole('listitem').filter({ hasText: '#30 of almonds' }),
    ).toHaveCount(1)
    await light.click()
    await expect(lacking).toBeDisabled()
    await expect(use).toHaveCount(0)
  })

  await test.step('a portion that is a fifth light needs the lead’s own yes', async () => {
    const measures = [{ id: 'scoop-30', count: 1 }]
    expect(
      await job.lead.answerTo({ type: 'missScoop', component: 'cheddar', measures }),
    ).toMatchObject({ answer: 'refused', refusal: { code: 'scoop-far-off', percent: -20 } })
    await dialog(pans).getByLabel(formWords.scoopFarOff(-20)).check()
    await sends(pans, formWords.scoopUse, formWords.scoopUsed('Cheddar'))
  })

  const own = job.lead.state().standIns.cheddar?.usual.amount ?? Number.NaN
  const now = job.lead.portions('cheddar', 1)
  const held = job.lead.state().pans['pan-cheddar']?.amount ?? Number.NaN
  expect(now).toBeLessThan(own)

  await test.step('a build that isn’t started is made with it: assembly says so', async () => {
    await expect(assemblyPan(assembly, 'Cheddar')).toContainText('#30')
    await expect(assemblyPan(assembly, 'Cheddar')).toContainText(assemblyEn.standIn)
    const portions = Math.floor((held - now) / now)
    expect(portions).toBeGreaterThan(39)
    await expect(leadPan(pans, 'Cheddar', portions, 1)).toBeVisible()
    await expect(anyPan(pans, 'Cheddar')).toHaveAccessibleName(new RegExp(pansWords.standIn))
  })

  await test.step('its own scoop is back, and so is its portion', async () => {
    await openJob(pans, 'Cheddar', pansWords.scoopBack)
    await dialog(pans).getByLabel(formWords.scoopWashed).check()
    await tapUntil(
      dialog(pans).getByRole('button', { name: formWords.scoopBackSend, exact: true }),
      leadPan(pans, 'Cheddar', 39, 1),
    )
    await expect(assemblyPan(assembly, 'Cheddar')).toContainText('#24')
    await expect(assemblyPan(assembly, 'Cheddar')).not.toContainText(assemblyEn.standIn)
    expect(job.lead.portions('cheddar', 1)).toBe(own)
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type.startsWith('scoop'))).toMatchObject([
    { type: 'scoopMissed', component: 'cheddar' },
    { type: 'scoopFound', component: 'cheddar', washed: true },
  ])
})
