import {
  type DayLimit,
  type HeatLimit,
  HOUR_MS,
  type LimitName,
  type LocalVariant,
  MODEL_CODE,
  type SafetyLimits,
  type TemperatureLimit,
  type TimeLimit,
} from '#lib/safety/limits.ts'

/**
 * Local codes that differ, as settings to choose from. Copies of differing age were read, so the
 * person in charge confirms them with the local authority.
 */
export const LOCAL_VARIANTS = {
  newYorkCity: {
    hotHolding: {
      bound: 'at-least',
      tenths: { F: 1400, C: 600 },
      document: 'New York City Health Code',
      paragraph: '§ 81.10, Table 1',
      certainty: 'seen',
    },
  },
  wisconsin: {
    shellEggAir: {
      bound: 'at-most',
      tenths: { F: 410, C: 50 },
      document: 'Wisconsin Food Code (ATCP 75, Appendix)',
      paragraph: '3-501.16(B)',
      certainty: 'seen',
    },
  },
  southDakota1997: {
    reheatWithin: {
      withinMs: HOUR_MS,
      document: 'Administrative Rules of South Dakota (1997 text)',
      paragraph: '44:02:07:33',
      certainty: 'seen',
    },
  },
} as const satisfies Readonly<Record<string, LocalVariant>>

type Limit = HeatLimit | TemperatureLimit | TimeLimit | DayLimit

const looserThan = (own: Limit, model: Limit): boolean => {
  if ('days' in own) return 'days' in model && own.days > model.days
  if ('withinMs' in own) return 'withinMs' in model && own.withinMs > model.withinMs
  if ('bound' in own)
    return (
      'bound' in model &&
      (['F', 'C'] as const).some((scale) =>
        own.bound === 'at-least'
          ? own.tenths[scale] < model.tenths[scale]
          : own.tenths[scale] > model.tenths[scale],
      )
    )
  if (!('combinations' in model)) return true
  return (
    own.standSeconds < model.standSeconds ||
    own.combinations.length === 0 ||
    own.combinations.some(
      (one) =>
        !model.combinations.some(
          (other) =>
            one.tenths.F >= other.tenths.F &&
            one.tenths.C >= other.tenths.C &&
            one.seconds >= other.seconds,
        ),
    )
  )
}

/** Limits that ask less than the model code, for the person in charge to confirm one by one. */
export const looserThanModel = (limits: SafetyLimits): readonly LimitName[] =>
  (Object.keys(MODEL_CODE) as LimitName[]).filter((name) =>
    looserThan(limits[name], MODEL_CODE[name]),
  )
