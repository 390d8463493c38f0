import type { LineDrawn } from '#lib/access/http.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What of a station's line is drawn before anybody joined: its name, and how many pans a well has. */
export const lineDrawn = ({ name, line }: StationDocument): LineDrawn => ({
  name,
  wells: line.wells.map(({ pans }) => pans.length),
})
