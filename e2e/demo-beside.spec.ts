import { sayBuild } from '#lib/service/tickets.ts'
import { accessWords as words } from '#lib/words/house/access-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { order } from './support/hands.ts'
import { expect, test } from './support/job.ts'

const OWN = { ...demoStation, id: 'own-line', name: 'Own line' }

test.use({ proved: true, stations: [OWN] })

test('the demo is opened beside the own station: an order in it reaches no own screen, and it is closed again', async ({
  job,
}) => {
  const own = await job.open('/assembly')
  const first = await job.openStill('/')
  await first.getByRole('button', { name: words.start.openDemo }).click()
  await expect(first).toHaveURL(/\?demo$/)
  const counter = await job.open('/counter?demo')
  await expect(counter.getByText(words.demoLine)).toBeVisible()
  await order(counter, 'Garden chicken', 1)
  const made = await job.open('/assembly?demo')
  await expect(made.getByText(sayBuild('1A')).first()).toBeVisible()
  await expect(own.getByText(sayBuild('1A'))).toHaveCount(0)
  await expect(own.getByText(words.demoLine)).toHaveCount(0)
  expect(job.lead.state()).toMatchObject({ kind: 'real', nextTicket: 1 })
  await first.getByRole('button', { name: words.start.closeDemo }).click()
  await expect(first).toHaveURL(/\/$/)
  await expect(made.getByRole('heading', { name: words.shut.demoClosed })).toBeVisible()
})
