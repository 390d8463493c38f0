/** What a day ahead is planned by: the menu, what past services taught, and what is planned already. */
import { expectedBy } from '#lib/rooms/day/facts/expected-by.ts'
import { pastDays } from '#lib/rooms/day/facts/past-days.ts'
import type { PlannedDay } from '#lib/rooms/prep/facts/counted-on.ts'
import { measuredMinutes } from '#lib/rooms/prep/facts/measured-minutes.ts'
import { type ParOfPlan, type ParTold, toldPar } from '#lib/rooms/prep/facts/told-par.ts'
import type { AheadAnswer, PlannedService } from '#lib/rooms/prep/views/ahead.ts'
import { isRunning } from '#lib/service/state.ts'
import { withoutReaders } from '#lib/station/label.ts'
import type { OpenHouse } from '#server/houses/open-house.ts'
import { type MenuCoded, type MenuRoute, shows } from '#server/http/menu-route.ts'

const MOST_GUESTS = 20_000

type House = Pick<OpenHouse, 'stations' | 'records' | 'services' | 'tastings' | 'larder'>

/** A whole number of the address; null where it is none, or out of its range. */
const numberIn = (text: string, most: number): number | null => {
  const value = /^\d{1,5}$/.test(text) ? Number(text) : null
  return value !== null && value <= most ? value : null
}

const plansOf = (
  { services }: Pick<House, 'services'>,
  station: string,
  now: number,
): readonly PlannedService[] =>
  services.planned(station).flatMap((rail) => {
    const { plan } = rail.state()
    if (!plan) return []
    const { kind, on, doorsOpen, doorsClose, closesAt } = plan
    return [{ service: rail.service, kind, on, doorsOpen, doorsClose, isOver: closesAt <= now }]
  })

/** The other services of the house that are planned and open before one, the first first. */
const openBefore = (
  { services, records }: Pick<House, 'services' | 'records'>,
  asked: { readonly service: string; readonly opensAt: number; readonly now: number },
): readonly PlannedDay[] =>
  services.planned().flatMap((rail): PlannedDay[] => {
    const state = rail.state()
    if (rail.service === asked.service || !isRunning(state) || !state.plan) return []
    const { plan, station } = state
    const isBefore =
      plan.opensAt < asked.opensAt ||
      (plan.opensAt === asked.opensAt && rail.service < asked.service)
    if (!isBefore || plan.closesAt <= asked.now) return []
    const past = pastDays(records.all(), station, 'real')
    return [{ state, plan, expected: expectedBy(plan), past }]
  })

/** Par of a service that is planned, for as many guests as are asked for. */
const wantedBy = (
  house: Pick<House, 'services' | 'larder' | 'records'>,
  asked: { readonly service: string; readonly station: string; readonly expected: number | null },
  taught: Pick<ParOfPlan, 'past' | 'yields' | 'now'>,
): Readonly<Record<string, ParTold>> => {
  const rail = house.services
    .planned(asked.station)
    .find(({ service }) => service === asked.service)
  const state = rail?.state()
  if (!state || !isRunning(state) || !state.plan) return {}
  const { plan } = state
  const { service, expected } = asked
  const before = openBefore(house, { service, opensAt: plan.opensAt, now: taught.now })
  return toldPar({ state, plan, expected, larder: house.larder.state(), before, ...taught })
}

/** For the lead and the person in charge. */
export const planRows = (deps: {
  readonly house: House
  readonly now: () => number
}): readonly MenuRoute[] => [
  shows('/plan/ahead', ({ query }): MenuCoded | AheadAnswer => {
    const { stations, records } = deps.house
    const asked = query('station')
    const kept = asked === '' ? stations.first() : stations.find(asked)
    if (!kept) return { code: 'no-such-station' }
    const { document } = kept
    const past = pastDays(records.all(), document, 'real')
    const expected = numberIn(query('guests'), MOST_GUESTS)
    const service = query('service')
    const batches = records
      .all()
      .filter(({ station, kind }) => station === document.id && kind === 'real')
      .flatMap((record) => record.batches)
    const now = deps.now()
    const yields = deps.house.tastings.corrected(document)
    return {
      code: 'done',
      at: now,
      station: withoutReaders(document),
      past: past.length,
      wanted: wantedBy(
        deps.house,
        { service, station: document.id, expected },
        { past, yields, now },
      ),
      minutes: measuredMinutes(batches),
      yields,
      plans: plansOf(deps.house, document.id, now),
    }
  }),
]
