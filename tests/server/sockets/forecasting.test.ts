import { expect, test } from 'vitest'
import { forecastNow } from '#lib/rooms/advice/facts/forecast-now.ts'
import { pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { settle } from '#tests/support/rail-room.ts'
import { connectScreen, createSocketRoom, type Screen } from '#tests/support/socket-room.ts'
import { OPENED, stocked, stockedStation } from '#tests/support/stock.ts'

const made = (now: number) =>
  forecastNow(stocked().state, pastTaught([], stockedStation, 'real'), {
    position: 11,
    now,
    firstBefore: null,
  })

const heardAll = async (screen: Screen): Promise<void> => {
  await settle()
  await screen.socket.timeout(5_000).emitWithAck('command', null)
}

test('[X20] a forecast goes to the crew screens that follow, and not to the pick-up screen', async () => {
  const { url, forecast } = await createSocketRoom()
  const lead = await connectScreen(url, 'lead')
  const pickUp = await connectScreen(url, 'pick-up')
  const idle = await connectScreen(url, 'counter')
  await lead.follow(0)
  await pickUp.follow(0)
  forecast(made(OPENED))
  for (const screen of [lead, pickUp, idle]) await heardAll(screen)
  expect(lead.of('forecast')).toEqual([{ service: 's-lunch', forecast: made(OPENED) }])
  expect(pickUp.of('forecast')).toEqual([])
  expect(idle.of('forecast')).toEqual([])
})

test('[X20] a screen that follows later gets the newest at once', async () => {
  const { url, forecast } = await createSocketRoom()
  forecast(made(OPENED))
  forecast(made(OPENED + 1_000))
  const lead = await connectScreen(url, 'lead')
  const pickUp = await connectScreen(url, 'pick-up')
  await lead.follow(0)
  await pickUp.follow(0)
  await heardAll(lead)
  await heardAll(pickUp)
  expect(lead.of('forecast')).toMatchObject([{ forecast: { at: OPENED + 1_000 } }])
  expect(pickUp.of('forecast')).toEqual([])
})
