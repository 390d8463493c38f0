import { expect, test } from 'vitest'
import { isRunning } from '#lib/service/state.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { OPEN } from '#tests/support/orders.ts'
import { PLAN } from '#tests/support/plans.ts'
import { connectScreen, createSocketRoom } from '#tests/support/socket-room.ts'

const RICE: Command = { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 }

/** The lunch is over, and a dinner is planned with a batch in it. */
const planned = async () => {
  const room = await createSocketRoom()
  const give = (id: string, command: Command, service = 's-dinner') =>
    room.services.submit(service, id, command, 'lead')
  await give('over', { type: 'close' }, 's-lunch')
  expect(await give('plan', commandSchema.parse(PLAN))).toMatchObject({ answer: 'accepted' })
  expect(await give('rice', RICE)).toMatchObject({ answer: 'accepted' })
  return { ...room, give }
}

test('[PL1] a screen that follows a planned service by its id is told its state; welcome names the newest that was opened', async () => {
  const { url } = await planned()
  const lead = await connectScreen(url, 'lead')
  expect(lead.welcome.service).toBe('s-lunch')
  expect(await lead.follow(0, 's-dinner')).toMatchObject({
    kind: 'snapshot',
    position: 2,
    state: { stage: 'planned', batches: { b1: { component: 'rice' } } },
  })
  // From where it stands it goes on by events.
  expect(await lead.follow(1, 's-dinner')).toMatchObject({
    kind: 'events',
    events: [{ position: 2 }],
  })
})

test('[PL1] the counter, which folds no plan, is on the service once that is opened, with what was prepared', async () => {
  const { url, give, token } = await planned()
  const counter = connectCrew(url, 'counter', async () => token('counter'))
  try {
    await whenView(counter.client, ({ service }) => service === 's-lunch')
    await give('open', OPEN)
    await whenView(
      counter.client,
      ({ service, state }) => service === 's-dinner' && state.stage === 'open',
    )
    const { state } = counter.client.view()
    expect(isRunning(state) && state.batches.b1?.component).toBe('rice')
    await give('stop', { type: 'stopSelling', what: 'item', id: 'harbor-tuna' })
    await whenView(counter.client, ({ state: now }) => 'harbor-tuna' in now.notSelling.item)
  } finally {
    counter.close()
  }
})
