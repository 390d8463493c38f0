/** What a comparison found: everything counted, the first few disagreements told in full. */
const MOST_TOLD = 20

export const DISAGREEMENTS = [
  'unsafe accepted',
  'fitting refused',
  'judged otherwise',
  'named otherwise',
  'back-up otherwise',
  'verdict otherwise',
  'change larger than needed',
  'thrown',
] as const
export type Disagreement = (typeof DISAGREEMENTS)[number]

export interface Counts {
  stations: number
  places: number
  items: number
  /** Sets of components taken, over all items. */
  builds: number
  singles: number
  pairs: number
  components: number
  verdicts: number
  no: number
  caution: number
  ask: number
  fine: number
  fromBackup: number
}

export interface Found {
  readonly counts: Counts
  readonly disagreements: Readonly<Record<Disagreement, number>>
  readonly told: readonly string[]
  readonly disagree: (what: Disagreement, how: () => string) => void
}

export const createFound = (): Found => {
  const told: string[] = []
  const disagreements = Object.fromEntries(DISAGREEMENTS.map((one) => [one, 0])) as Record<
    Disagreement,
    number
  >
  return {
    told,
    disagreements,
    counts: {
      stations: 0,
      places: 0,
      items: 0,
      builds: 0,
      singles: 0,
      pairs: 0,
      components: 0,
      verdicts: 0,
      no: 0,
      caution: 0,
      ask: 0,
      fine: 0,
      fromBackup: 0,
    },
    disagree: (what, how) => {
      disagreements[what] += 1
      if (told.length < MOST_TOLD) told.push(`${what}: ${how()}`)
    },
  }
}

export const totalOf = (found: Found): number =>
  DISAGREEMENTS.reduce((sum, one) => sum + found.disagreements[one], 0)

/** Figures to print. */
export const figuresOf = ({ counts, disagreements }: Found): readonly string[] => {
  const say = (count: number): string => count.toLocaleString('en-US')
  return [
    `${say(counts.stations)} stations, ${say(counts.items)} items, ${say(counts.builds)} sets of components, ${say(counts.places)} states of the line`,
    `${say(counts.singles)} builds judged for one need, ${say(counts.pairs)} for two: ${say(counts.no)} no, ${say(counts.caution)} caution, ${say(counts.ask)} ask, ${say(counts.fine)} fine; ${say(counts.fromBackup)} out of a back-up pan`,
    `${say(counts.components)} components judged alone, ${say(counts.verdicts)} verdicts`,
    DISAGREEMENTS.map((one) => `${say(disagreements[one])} ${one}`).join(', '),
  ]
}
