/** What of a bought thing came last: nobody counts what was used of it since, so it is said and not taken off. */
import type { Delivery } from '#lib/larder/delivery.ts'
import type { ReceivingShown } from '#lib/larder/receiving-view.ts'
import { civilDate } from '#lib/measure/civil.ts'

export interface Came {
  /** Civil date at the station. */
  readonly on: string
  /** null: nobody counted them. */
  readonly packs: number | null
}

/** What came longer ago is likely gone, days: common practice, no source. */
const TOLD_DAYS = 14
const DAY_MS = 86_400_000

const newest = (all: readonly Delivery[], now: number): Delivery | undefined =>
  all
    .filter(({ at, sentBack }) => sentBack === null && now - at <= TOLD_DAYS * DAY_MS)
    .sort((one, other) => other.at - one.at)[0]

/** By the id of each ingredient; what went back with its driver never came. */
export const cameLast = ({
  wells,
  others,
  now,
  timeZone,
}: Pick<ReceivingShown, 'wells' | 'others' | 'now' | 'timeZone'>): Readonly<
  Record<string, Came | undefined>
> =>
  Object.fromEntries(
    [...wells.flatMap(({ pans }) => pans.flatMap(({ foods }) => foods)), ...others].flatMap(
      ({ ingredient, deliveries }) => {
        const last = newest(deliveries, now)
        return last === undefined
          ? []
          : [[ingredient, { on: civilDate(last.at, timeZone), packs: last.packs }] as const]
      },
    ),
  )
