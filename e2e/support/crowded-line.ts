/** A line on which nothing has room: names of 40 letters, nine pans in a well. */
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** 40 letters, of one word and of several. */
const LONG = [
  'Slowroastedpaprikachickenthighsdeboned',
  'Wheat berries with preserved lemon, dill',
].map((name) => name.padEnd(40, 'x').slice(0, 40))

/** Nine ninths in a well, one by time alone, and each touches all others. */
export const crowded = (of: StationDocument): StationDocument => {
  const [, , cold, last] = of.line.wells
  if (!cold || !last) throw new Error('it has four wells')
  const pans = of.line.wells.flatMap((well) => well.pans)
  const small = pans.map((pan) => ({ ...pan, size: 'ninth' as const, depthIn: 4 as const }))
  const ids = of.components.map(({ id }) => id)
  return stationSchema.parse({
    ...of,
    name: LONG.join(' ').slice(0, 60),
    components: of.components.map((one, at) => ({
      ...one,
      held: one.held === 'hot' ? ('cold' as const) : one.held,
      name: `${(LONG[at % 2] ?? '').slice(0, 38)}${at % 10}`,
    })),
    contacts: (['beside', 'scoop', 'board'] as const).map((kind) => ({
      id: kind,
      kind,
      components: ids,
    })),
    line: {
      wells: [
        { ...cold, id: 'crowded', pans: small.slice(0, 9) },
        { ...last, id: 'by-time', held: 'time', pans: small.slice(9) },
        ...Array.from({ length: 4 }, (_, at) => ({
          ...cold,
          id: `more-${at}`,
          pans: [{ ...small[2], id: `pan-more-${at}`, size: 'sixth' as const }],
        })),
      ],
    },
  })
}
