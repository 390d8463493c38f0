/** How a disagreement is told: where, of what, asked by whom, and which way it is wrong. */
import type { Need } from '#lib/station/codes/codes.ts'
import type { Place } from '#tests/lib/needs/oracle/oracle.ts'
import { FINE } from '#tests/lib/needs/oracle/table.ts'

const sayNeeds = (needs: readonly Need[]): string =>
  needs.map((one) => `${one.code} ${one.handling}`).join(', ')

const sayScoops = (scoops: Place['soiled']): string =>
  scoops.map((one) => `${one.component} by ${one.by}`).join(', ')

export const sayCase = (place: Place, needs: readonly Need[], of: string): string =>
  `${place.station.id}, ready [${place.ready}], soiled [${sayScoops(place.soiled)}], lent [${sayScoops(place.lent)}], ${of}, ${sayNeeds(needs)}`

/** Which way an answer is wrong. */
export const wrongWay = (engine: number, oracle: number) => {
  if (engine > oracle && oracle < FINE) return 'unsafe accepted'
  if (engine < FINE && oracle >= FINE) return 'fitting refused'
  return 'judged otherwise'
}
