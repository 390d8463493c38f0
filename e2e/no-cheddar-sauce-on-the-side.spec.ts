import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import {
  assemblyPan,
  assemblyRests,
  begin,
  counterPan,
  givePanel,
  leadPan,
  makeAndMark,
  saying,
  sendButton,
  shelfCard,
  ticketIsSent,
} from './support/hands.ts'
import { expect, less, test } from './support/job.ts'

test('no cheese, sauce on the side: said back, built, marked and counted so', async ({ job }) => {
  const [counterPage, assembly, pans, handOver] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly', { viewport: { width: 1024, height: 768 } }),
    job.open('/pans'),
    job.open('/hand-over'),
  ])
  const before = job.lead.inPan()

  await test.step('one tap for no, two for the side; both are read back', async () => {
    await begin(counterPage, 'Garden chicken')
    await counterPan(counterPage, 'Cheddar').click()
    await expect(counterPan(counterPage, 'Cheddar')).toHaveText(saying('Cheddar', counter.pan.no))
    await counterPan(counterPage, 'Yogurt sauce').click()
    await counterPan(counterPage, 'Yogurt sauce').click()
    await expect(counterPan(counterPage, 'Yogurt sauce')).toContainText('on the side')
    await expect(counterPage.getByText('One garden chicken with pita.')).toBeVisible()
    await expect(counterPage.getByText('No cheddar, as you asked.')).toBeVisible()
    await expect(counterPage.getByText('Lemon yogurt sauce on the side.')).toBeVisible()
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
  })

  await test.step('assembly says no, and on the side, in the places of the pans', async () => {
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, 'guest asked'),
    )
    await expect(assemblyPan(assembly, 'Yogurt sauce')).toHaveText(
      saying('Yogurt', 'sauce', '1', assemblyEn.onTheSide, 'lidded', '2 fl oz'),
    )
    const wrap = assembly.getByRole('heading', { name: assemblyEn.wrap }).locator('..')
    await expect(wrap).toHaveText(saying(assemblyEn.wrap, '1-\u2060A', 'NO CHEDDAR', 'CUP SAUCE'))
  })

  await test.step('a cup is used, no cheddar', async () => {
    await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()
    await expect(leadPan(pans, 'Lemon yogurt sauce', 29, 1)).toBeVisible()
    await makeAndMark(assembly, '1A', assemblyRests(assembly))
    await expect(leadPan(pans, 'Lemon yogurt sauce', 29, 0)).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()
    await expect.poll(job.lead.inPan).toEqual(
      less(before, {
        pita: 1,
        chicken: job.lead.portions('chicken', 1),
        peppers: job.lead.portions('peppers', 1),
        slaw: job.lead.portions('slaw', 1),
        'yogurt-sauce': 1,
      }),
    )
  })

  const wrap = shelfCard(handOver, '1A')
  for (const said of ['no cheddar', 'yogurt sauce on the side'])
    await expect(wrap).toContainText(said)
  const mark = givePanel(handOver, '1A').getByRole('list')
  await expect(mark).toHaveText('NO CHEDDARCUP SAUCE')
  const [sent] = (await job.log()).filter(({ type }) => type === 'ticketSent')
  expect(sent).toMatchObject({
    builds: [
      {
        letter: 'A',
        choice: {
          parts: {
            cheddar: { placement: 'no', portions: 0, because: 'asked' },
            'yogurt-sauce': { placement: 'side', portions: 1 },
          },
        },
      },
    ],
  })
})
