/** Crew screens on the lunch of one accepted order, over a transport that the test answers. */
import { createScreen, settled, welcomeTo } from '#tests/support/crew.ts'
import { choose, given, send } from '#tests/support/service.ts'

export const LUNCH = 's-lunch'
export const DINNER = 's-dinner'
export const { events, state } = given(send(choose('garden-chicken')))
/** The position of the newest event. */
export const last = events.length

export type Screen = ReturnType<typeof createScreen>

export const lastOf = <Value>(list: readonly Value[]): Value => {
  const found = list.at(-1)
  if (found === undefined) throw new Error('nothing was asked')
  return found
}

/** A screen that has followed the whole service. */
export const liveScreen = async (
  options: Parameters<typeof createScreen>[0] = {},
): Promise<Screen> => {
  const screen = createScreen(options)
  screen.say.welcome(welcomeTo(LUNCH))
  lastOf(screen.follows).reply({ kind: 'events', events })
  await settled()
  return screen
}
