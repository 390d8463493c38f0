import {
  type DayLimit,
  type HeatLimit,
  type LimitName,
  MODEL_CODE,
  type SafetyLimits,
  type TemperatureLimit,
  type TimeLimit,
} from '#lib/safety/limits.ts'

export type Limit = HeatLimit | TemperatureLimit | TimeLimit | DayLimit

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

/**
 * What a limit asks beside the model code's of the same name: `looser` also where only one of its
 * figures or combinations asks less. @throws never; of two kinds that can't be compared it is looser.
 */
export const besideModel = (name: LimitName, own: Limit): 'looser' | 'stricter' | 'same' => {
  const model = MODEL_CODE[name]
  if (looserThan(own, model)) return 'looser'
  return looserThan(model, own) ? 'stricter' : 'same'
}
