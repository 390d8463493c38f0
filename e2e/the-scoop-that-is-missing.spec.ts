import { assemblyEn } from '#lib/words/assembly-en.ts'
import { formWords } from '#lib/words/food-forms-en.ts'
import { pansWords } from '#lib/words/pans-en.ts'
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

  await test.step('the lead sees what stands in, how far off it is, and what is not lent', async () => {
    await openJob(pans, 'Cheddar', pansWords.scoopMissing)
    await expect(dialog(pans).getByText(formWords.scoopNearest)).toBeVisible()
    await expect(dialog(pans)).toContainText('#30 spare')
    await expect(dialog(pans).getByText(formWords.scoopNot)).toBeVisible()
    await expect(
      dialog(pans).getByRole('listitem').filter({ hasText: '#30 of almonds' }),
    ).toHaveCount(1)
    await sends(pans, formWords.scoopUse, formWords.scoopUsed('Cheddar'))
  })

  const own = job.lead.state().standIns.cheddar?.usual.amount ?? Number.NaN
  const now = job.lead.portions('cheddar', 1)
  const held = job.lead.state().pans['pan-cheddar']?.amount ?? Number.NaN
  expect(now).toBeLessThan(own)

  await test.step('a build that isn’t started is made with it: assembly says so', async () => {
    await expect(assemblyPan(assembly, 'Cheddar')).toContainText('#30')
    await expect(assemblyPan(assembly, 'Cheddar')).toContainText(assemblyEn.otherScoop)
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
    await expect(assemblyPan(assembly, 'Cheddar')).not.toContainText(assemblyEn.otherScoop)
    expect(job.lead.portions('cheddar', 1)).toBe(own)
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type.startsWith('scoop'))).toMatchObject([
    { type: 'scoopMissed', component: 'cheddar' },
    { type: 'scoopFound', component: 'cheddar', washed: true },
  ])
})
