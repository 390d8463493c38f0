/** Which pans stand side by side on a screen, and which of them one lid is drawn over. */
import type { Pan, StationDocument, Well } from '#lib/station/station-document.ts'

/** Pans that a row of a 10-inch tablet has room for; a longer line goes by well. */
export const MOST_IN_A_ROW = 11

/** The line's wells as they stand in rows: all in one, or one by one. */
export const rowsOfWells = (
  { line }: StationDocument,
  byWell: boolean,
): readonly (readonly Well[])[] => (byWell ? line.wells.map((well) => [well]) : [line.wells])

export const isLong = ({ line }: StationDocument): boolean =>
  line.wells.reduce((sum, { pans }) => sum + pans.length, 0) > MOST_IN_A_ROW

/** Runs of neighbours that stay shut, as ids from left to right; a pan between two runs parts them. */
export const lidsOver = (
  pans: readonly Pan[],
  isShut: (pan: Pan) => boolean,
): readonly (readonly string[])[] => {
  const runs: string[][] = []
  let isRunning = false
  for (const pan of pans) {
    const shut = isShut(pan)
    if (shut && isRunning) runs.at(-1)?.push(pan.id)
    else if (shut) runs.push([pan.id])
    isRunning = shut
  }
  return runs
}
