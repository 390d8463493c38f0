/** What a day ahead is planned by: the menu, what past services taught, and what is planned already. */
import { daysAlike } from '#lib/rooms/prep/facts/days-alike.ts'
import { measuredMinutes } from '#lib/rooms/prep/facts/measured-minutes.ts'
import type { AheadAnswer, PlannedService } from '#lib/rooms/prep/views/ahead.ts'
import { withoutReaders } from '#lib/station/label.ts'
import type { OpenHouse } from '#server/houses/open-house.ts'
import { type MenuCoded, type MenuRoute, shows } from '#server/http/menu-route.ts'

const MINUTES_OF_A_DAY = 1_440
const MOST_GUESTS = 20_000
/** Where nobody says when: a lunch. */
const USUAL_OPENS = 680
const USUAL_LENGTH = 60

type House = Pick<OpenHouse, 'stations' | 'records' | 'services' | 'tastings'>

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
    const taught = records.taught(document, 'real')
    const opens = numberIn(query('opens'), MINUTES_OF_A_DAY) ?? USUAL_OPENS
    const closes = numberIn(query('closes'), MINUTES_OF_A_DAY) ?? opens + USUAL_LENGTH
    const expected = numberIn(query('guests'), MOST_GUESTS)
    const batches = records
      .all()
      .filter(({ station, kind }) => station === document.id && kind === 'real')
      .flatMap((record) => record.batches)
    return {
      code: 'done',
      at: deps.now(),
      station: withoutReaders(document),
      past: taught.past.length,
      wanted: daysAlike(taught, { opens, closes: Math.max(opens + 5, closes), expected }),
      minutes: measuredMinutes(batches),
      yields: deps.house.tastings.corrected(document),
      plans: plansOf(deps.house, document.id, deps.now()),
    }
  }),
]
