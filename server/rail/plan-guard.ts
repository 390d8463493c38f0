/** That no two plans of a station overlap: decided on what the log holds, and guarded in the append. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { PlannedPeriod, ServicePlan } from '#lib/service/events/plan-event.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { EventLog, Guard } from '#server/event-log/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

type Log = Pick<EventLog<Recorded, StoredAnswer>, 'guard' | 'read' | 'services'>

/** Raised by each plan and each change of one. */
const keyOf = (station: string): string => `plan:${station}`

interface KnownPlans {
  readonly version: number
  readonly plans: readonly PlannedPeriod[]
}

/** What is planned of stations, as a batch of commands is decided on it. */
export type PlansOf = ReadonlyMap<string, KnownPlans>

/** What of a service is still only planned; null where it was opened or dropped since. */
const standing = (events: readonly Recorded[]): ServicePlan | null =>
  events.reduce<ServicePlan | null>((so, event) => {
    switch (event.type) {
      case 'servicePlanned':
      case 'planChanged':
        return event.plan
      case 'serviceOpened':
      case 'planDropped':
        return null
      default:
        return so
    }
  }, null)

const plansIn = async (log: Log, station: string): Promise<readonly PlannedPeriod[]> => {
  const plans: PlannedPeriod[] = []
  for (const service of await log.services()) {
    const [first] = await log.read(service, 0, 1)
    if (first?.type !== 'servicePlanned' || first.station.id !== station) continue
    const plan = standing(await log.read(service, 0))
    if (plan) plans.push({ service, ...plan })
  }
  return plans
}

/** Of the stations that commands want to plan a service of, as the log has it now. */
export const plansOf = async (
  log: Log,
  orders: readonly { readonly command: Command }[],
): Promise<PlansOf> => {
  const known = new Map<string, KnownPlans>()
  for (const { command } of orders) {
    if (command.type !== 'plan' || known.has(command.station)) continue
    // The version first: what is planned after it makes the append a conflict.
    const version = await log.guard(keyOf(command.station))
    known.set(command.station, { version, plans: await plansIn(log, command.station) })
  }
  return known
}

/** What an append of entries is guarded by: that nothing else was planned since it was decided. */
export const planGuards = (
  entries: readonly Recorded[],
  station: string | null,
  known: PlansOf,
): readonly Guard[] => {
  if (station === null) return []
  let expected = known.get(station)?.version ?? 0
  return entries.flatMap(({ type }) =>
    type === 'servicePlanned' || type === 'planChanged'
      ? [{ key: keyOf(station), expected: expected++ }]
      : [],
  )
}
