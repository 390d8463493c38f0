import { privacyWords as words } from '#lib/words/house/privacy-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

const NAME = 'Quillon'

test('forget this guest: the name goes from the table and from every screen', async ({ job }) => {
  const state = job.lead.state()
  await job.lead.does({
    type: 'send',
    builds: [
      {
        item: 'garden-chicken',
        base: 'pita',
        parts: Object.fromEntries(
          ['chicken', 'peppers', 'slaw', 'cheddar', 'almonds', 'yogurt-sauce'].map((id) => [
            id,
            { placement: 'in' as const, portions: 1, because: 'asked' as const },
          ]),
        ),
        asked: 'none',
        needs: [],
        agreed: false,
        caution: null,
      },
    ],
    paid: false,
    readBack: true,
    name: NAME,
  })
  expect(job.lead.state().nextTicket).toBe(state.nextTicket + 1)
  const desk = await job.open('/counter')
  await desk.getByRole('button', { name: /^Tickets/ }).click()
  await expect(desk.getByText(NAME).first()).toBeVisible()

  const lead = await job.openStill('/privacy')
  const names = lead.getByRole('row', { name: new RegExp(`^${words.rows.names.name}`) })
  await expect(names.getByRole('cell').first()).toHaveText('1')

  await test.step('by its ticket’s number, and once more to be sure', async () => {
    const panel = lead.getByRole('region', { name: words.forget.title })
    await panel.getByRole('button', { name: '1', exact: true }).click()
    await expect(panel.getByText(words.forget.named(NAME))).toBeVisible()
    await panel.getByRole('button', { name: words.forget.act(1) }).click()
    await lead.waitForTimeout(450)
    await panel.getByRole('button', { name: words.forget.sure(1) }).click()
    await expect(panel.getByText(words.forget.done(1))).toBeVisible()
  })

  await test.step('it is nowhere any more; the order goes on', async () => {
    await expect(names.getByRole('cell').first()).toHaveText('0')
    await expect(desk.getByText(NAME)).toHaveCount(0)
    expect(job.lead.state().nextTicket).toBe(2)
  })

  await test.step('the person in charge may look at reasons: this guest has none', async () => {
    const panel = lead.getByRole('region', { name: words.reasons.title })
    await panel.getByLabel('Passphrase').fill(PASSPHRASE)
    await panel.getByRole('button', { name: words.reasons.show }).click()
    await expect(panel.getByText(words.reasons.none)).toBeVisible()
  })
})
