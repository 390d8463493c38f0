import type { Refusal, RefusalCode, Unknown } from '#lib/service/refusal.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'

/** Its code, and of what isn't there also what that is. */
export type ToldCode = Exclude<RefusalCode, 'unknown'> | `unknown ${Unknown}`

export const toldCode = (refusal: Refusal): ToldCode =>
  refusal.code === 'unknown' ? `unknown ${refusal.what}` : refusal.code

/** A station that blocks cautions and takes what no label lists for one: none of its labels lists peanut. */
export const UNLISTED: Partial<StationDocument> = {
  cautions: 'block',
  notListed: 'caution',
  ingredients: demoStation.ingredients.map((one) => ({
    ...one,
    law: 'us-9',
    declarations: { ...one.declarations, peanut: 'not-listed' },
  })),
}
