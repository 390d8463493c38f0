/** A station whose tuna salad has a card, and what is planned to be tasted of it. */
import type { StationDocument } from '#lib/station/station-document.ts'
import type { PlanTasting } from '#lib/tasting/command.ts'
import type { TasterTold, Tasting, TastingReading } from '#lib/tasting/tasting.ts'
import { demoStation } from '#server/demo-station.ts'

/** 20 portions of a level #8 scoop, 4 fl oz each, are 2 1/2 qt: by its density 2,050 g. */
export const TUNA_CARD = {
  yields: '2 1/2 qt',
  lines: [
    { of: 'tuna', typed: '3 lb' },
    { of: 'dressed-mayonnaise', typed: '1 qt' },
    { of: 'relish', typed: '1 cup' },
  ],
}

/** The demo's line as an own one, with the card of its tuna salad, which is made in loads of 20. */
export const TASTING_STATION: StationDocument = {
  ...demoStation,
  id: 'tasting-line',
  name: 'Tasting line',
  recipes: demoStation.recipes.map((one) =>
    one.id === 'tuna-mix' ? { ...one, ...TUNA_CARD } : one,
  ),
  components: demoStation.components.map((one) =>
    one.id === 'tuna'
      ? {
          ...one,
          remake: {
            where: 'prep kitchen',
            by: 'prep cook',
            minutes: 12,
            minutesPerLoad: 5,
            portionsPerLoad: 20,
            mostLoads: 3,
          },
        }
      : one,
  ),
}

export const DAY = '2026-11-27'
/** Chicago: seven in the morning of that day. */
export const DAWN = Date.parse('2026-11-27T13:00:00Z')

export const PLAN: PlanTasting = {
  type: 'planTasting',
  station: TASTING_STATION.id,
  on: DAY,
  from: '09:34',
  to: '10:24',
  period: 'Period 3',
  portions: 2,
  tasters: 2,
  components: ['tuna', 'beans'],
}

export const NONE: TasterTold = { asked: 'none', needs: [] }
export const NOT_SURE: TasterTold = { asked: 'not-sure', needs: [] }
export const keeps = (
  code: string,
  handling: 'keep-apart' | 'leave-out' = 'keep-apart',
): TasterTold => ({
  asked: 'needs',
  needs: [{ code, handling }],
})

/** Beans are plants: 135 °F. */
export const READ: TastingReading = {
  component: 'beans',
  temperature: { tenths: 1350, scale: 'F' },
  at: DAWN,
  probe: 'probe 1',
  where: 'middle-stirred',
  initialled: true,
  heldSeconds: null,
  stoodSeconds: null,
}

export const TASTING: Tasting = {
  id: 't1',
  station: TASTING_STATION.id,
  on: DAY,
  from: '09:34',
  to: '10:24',
  startsAt: Date.parse('2026-11-27T15:34:00Z'),
  endsAt: Date.parse('2026-11-27T16:24:00Z'),
  period: 'Period 3',
  portions: 2,
  components: ['tuna', 'beans'],
  tasters: [
    { number: 1, told: null },
    { number: 2, told: null },
  ],
  stage: 'planned',
  readings: [],
  tasted: [],
}
