import { describe, expect, it } from 'vitest'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { createScreen, settled, welcomeTo } from '#tests/support/crew.ts'

const LUNCH = 's-lunch'

const of = (at: number, service = LUNCH, position = 1): StationForecast => ({
  service,
  position,
  at,
  closesAt: at,
  closesSaid: false,
  rushUntil: null,
  components: {},
  wait: null,
  candidates: [],
  doNext: [],
})

describe('the forecast on a screen', () => {
  it('[Y30] is the newest of the service that is followed', () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    expect(screen.client.view().forecast).toBeNull()
    screen.say.forecast({ service: LUNCH, forecast: of(2_000) })
    screen.say.forecast({ service: LUNCH, forecast: of(1_000) })
    screen.say.forecast({ service: 's-dinner', forecast: of(9_000, 's-dinner') })
    expect(screen.client.view().forecast?.at).toBe(2_000)
    screen.say.forecast({ service: LUNCH, forecast: of(3_000) })
    expect(screen.client.view().forecast?.at).toBe(3_000)
    screen.say.forecast({ service: LUNCH, forecast: of(500, LUNCH, 2) })
    expect(screen.client.view().forecast?.at).toBe(500)
    screen.say.forecast({ service: LUNCH, forecast: of(9_000, LUNCH, 1) })
    expect(screen.client.view().forecast?.at).toBe(500)
  })

  it('[Y30] goes with the service', async () => {
    const screen = createScreen()
    screen.say.welcome(welcomeTo(LUNCH))
    screen.say.forecast({ service: LUNCH, forecast: of(2_000) })
    screen.say.welcome(welcomeTo('s-dinner'))
    await settled()
    expect(screen.client.view().forecast).toBeNull()
  })
})
