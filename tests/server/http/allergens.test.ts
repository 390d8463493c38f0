import { expect, test } from 'vitest'
import { sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { sheetNow } from '#server/http/allergens.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { demoStation, given, OPENED_AT, onward } from '#tests/support/service.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const NOW = OPENED_AT + 60_000
const kept = { station: demoStation.id, revision: 3, document: demoStation, labels: {} }

const asked = (
  state: ReturnType<typeof given>['state'] | null,
  first: typeof kept | null = kept,
  changedAt: number | null = null,
): ReturnType<typeof sheetNow> => sheetNow(NOW, state, first, changedAt)

test('the sheet of an open service is as its pans and labels are now', () => {
  const told = given(
    { type: 'soilPan', pan: 'pan-beans', by: 'tuna' },
    { type: 'notSameProduct', ingredient: 'pita' },
  )
  const { at, facts } = asked(told.state)
  expect(at).toBe(NOW)
  expect(facts).toMatchObject({
    revision: told.state.revision,
    soiled: [
      { component: 'beans', by: 'tuna' },
      { component: 'tuna', by: 'beans' },
    ],
    asOf: told.state.at,
  })
  expect(facts && sheetOf(facts).unread).toHaveLength(1)
})

test('while none is open it is of the station’s newest document, with nothing in the pans', () => {
  const soiled = given({ type: 'soilPan', pan: 'pan-beans', by: 'tuna' })
  const closed = onward(soiled, { type: 'close' })
  expect(asked(closed.state).facts).toMatchObject({ revision: 3, soiled: [], asOf: OPENED_AT })
  expect(asked(closed.state, { ...kept, revision: 4 }).facts).toMatchObject({
    revision: 4,
    asOf: null,
  })
  expect(asked(closed.state, kept, OPENED_AT + 5).facts?.asOf).toBe(OPENED_AT + 5)
  expect(asked(closed.state, kept, OPENED_AT - 5).facts?.asOf).toBe(OPENED_AT)
  expect(asked(null).facts).toMatchObject({ station: demoStation, revision: 3, asOf: null })
})

test('where no station is set up there is none', () => {
  expect(asked(null, null)).toEqual({ at: NOW, facts: null })
})

test('it is read over http by whoever asks, and only read', async () => {
  const { url } = await startComposedStation(temporaryFolder())
  const response = await fetch(`${url}/allergens`)
  expect(response.status).toBe(200)
  expect(await response.json()).toMatchObject({ facts: { station: { id: demoStation.id } } })
  expect((await fetch(`${url}/allergens`, { method: 'POST' })).status).toBe(405)
})
