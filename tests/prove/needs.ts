/** What the engine says of needs is what an oracle says that was written from the rules alone. */
import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { stationSchema } from '#lib/station/schema.ts'
import { compareStation } from '#tests/lib/needs/oracle/comparison.ts'
import { engine } from '#tests/lib/needs/oracle/engine.ts'
import { createFound, type Found, figuresOf, totalOf } from '#tests/lib/needs/oracle/found.ts'
import { generatedStation } from '#tests/lib/needs/oracle/generated-stations.ts'
import type { Proof } from '#tests/prove/proof.ts'

/** Needs drawn at each state of a generated line, of which every pair is asked. */
const PAIRED = 6

const failuresOf = (found: Found): readonly string[] => {
  const untold = totalOf(found) - found.told.length
  return untold > 0 ? [...found.told, `and ${untold} disagreements more`] : found.told
}

/** The demo station with every pair of needs, and generated ones with some pairs each. */
export const proveNeeds = async (stations: number): Promise<Proof> => {
  const ofDemo = createFound()
  compareStation(
    stationSchema.parse(demo),
    0,
    engine,
    { pairedNeeds: Number.POSITIVE_INFINITY, states: 'all', first: false },
    ofDemo,
  )
  const found = createFound()
  for (let seed = 1; seed <= stations; seed += 1)
    compareStation(
      generatedStation(seed),
      seed,
      engine,
      { pairedNeeds: PAIRED, states: 'all', first: false },
      found,
    )
  return {
    title: `needs: the demo station and ${stations} generated ones against the oracle`,
    figures: [
      'the demo station, every build for every need and every pair of needs:',
      ...figuresOf(ofDemo),
      `generated ones, every build for every need and for the pairs of ${PAIRED} needs drawn at each state of the line:`,
      ...figuresOf(found),
    ],
    failures: [...failuresOf(ofDemo), ...failuresOf(found)],
  }
}
