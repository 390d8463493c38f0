import { waysTo } from '#lib/needs/declared.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Components that an ingredient goes into, through recipes too, in the document's order. */
export const componentsWith = (station: StationDocument, ingredient: string): readonly string[] =>
  station.components
    .filter((one) => [...waysTo(station, one)].some((way) => way.at(-1) === ingredient))
    .map((one) => one.id)
