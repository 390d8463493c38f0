/** What a day ahead is planned by: the menu, what past services taught, and what is planned already. */
import { pastDays } from '#lib/rooms/day/facts/past-days.ts'
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

/** Par of a service that is planned, for as many guests as are asked for. */
const wantedBy = (
  { services, larder }: Pick<House, 'services' | 'larder'>,
  asked: { readonly service: string; readonly station: string; readonly expected: number | null },
  taught: Pick<ParOfPlan, 'past' | 'yields' | 'now'>,
): Readonly<Record<string, ParTold>> => {
  const rail = services.planned(asked.station).find(({ service }) => service === asked.service)
  const state = rail?.state()
  if (!state || !isRunning(state) || !state.plan) return {}
  const { plan } = state
  const { expected } = asked
  return toldPar({ state, plan, expected, larder: larder.state(), ...taught })
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
