/** What stands in the way of a build, by brute force: from which pans, and what of it was accepted. */
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import {
  createTaken,
  type From,
  type TakenOracle,
  type Unsuited,
  type WholePlace,
  WORST_FIRST,
} from '#tests/lib/needs/oracle/taken.ts'
import type { Begun, Given, Ledger } from '#tests/lib/spine/oracle/ledger.ts'

/** Nobody knows how old it is by a clock that jumped, until it is read again or that is confirmed. */
const isInDoubt = (
  { clockJump, at, station }: RunningState,
  { food }: HeldStock,
  read: { readonly at: number } | null,
): boolean => {
  if (clockJump === null || !food) return false
  const setBack = Math.max(0, -clockJump.byMs)
  if (food.clock !== null || food.dateMark !== null) return true
  if (food.dayEndsAt !== undefined && food.dayEndsAt <= at + setBack + 4 * HOUR_MS) return true
  if (food.heldBy !== 'hot' && food.heldBy !== 'cold') return false
  const everyMs = station.safety.readings.everyMin * MINUTE_MS
  return read === null || read.at < clockJump.at || at >= read.at + everyMs
}

/** Whether food stands behind the line that may be served. */
const mayBeServed = (state: RunningState, { read, jumped }: Ledger, id: string): boolean => {
  const stock = state.backupPans[id]
  if (!stock || stock.amount <= 0 || stock.offSale !== null || stock.food === null) return false
  const last = read.get(id)
  const since = last && last.position > jumped ? last : null
  return !state.toThrowOut[`backup/${id}`] && !isInDoubt(state, stock, since)
}

const componentsOf = (state: RunningState): ReadonlyMap<string, string> =>
  new Map([
    ...state.station.line.wells.flatMap(({ pans }) =>
      pans.map((pan) => [pan.id, pan.component] as const),
    ),
    ...state.station.backups.map((one) => [one.id, one.component] as const),
  ])

const marksIn = (
  state: RunningState,
  { marks, probed }: Ledger,
  isMeant: (pan: string) => boolean,
  made = Number.POSITIVE_INFINITY,
): WholePlace['soiled'] => {
  const components = componentsOf(state)
  return [...marks].flatMap(([pan, all]) =>
    isMeant(pan)
      ? [...all].flatMap((by) =>
          (probed.get(`${pan}/${by}`) ?? 0) < made
            ? [{ component: components.get(pan) ?? '', by }]
            : [],
        )
      : [],
  )
}

const places = new WeakMap<RunningState['station'], Map<string, TakenOracle>>()

/** Worked out once for places that are alike. */
const oracleOf = (place: WholePlace): TakenOracle => {
  const known = places.get(place.station) ?? new Map<string, TakenOracle>()
  places.set(place.station, known)
  const key = JSON.stringify([place.soiled, place.soiledBehind, place.lent, place.ready])
  const found = known.get(key) ?? createTaken(place)
  known.set(key, found)
  return found
}

/** From where in the log to where food was made; up to now where nothing ends it. */
interface Making {
  readonly begun: number
  readonly made: number
}

const EVER: Making = { begun: 0, made: Number.POSITIVE_INFINITY }

/** The place as it is, or as food met it that was made from here to there. */
const placeOf = (state: RunningState, ledger: Ledger, making: Making | null): TakenOracle => {
  const { begun, made } = making ?? EVER
  const isMeant = (pan: string) => (ledger.loaded.get(pan)?.position ?? 0) < made
  const lent = Object.entries(state.lent).filter(([key]) => (ledger.lent.get(key) ?? 0) < made)
  const gone = making ? ledger.gone.filter(({ from, until }) => from < made && until > begun) : []
  const components = componentsOf(state)
  const goneIn = (isHere: (pan: string) => boolean): WholePlace['soiled'] =>
    gone.flatMap(({ pan, by }) =>
      isHere(pan) ? [{ component: components.get(pan) ?? '', by }] : [],
    )
  const goneLent = gone.flatMap(({ pan, by }) => {
    const [component, lender] = pan.split('/')
    return by === '' && component !== undefined && lender !== undefined
      ? [{ component, by: lender }]
      : []
  })
  const ready = state.station.backups.filter(
    (one) => one.protected && ledger.standing.has(one.id) && mayBeServed(state, ledger, one.id),
  )
  const [isOnLine, isBehind] = [state.pans, state.backupPans].map(
    (pans) => (pan: string) => pans[pan] !== undefined,
  ) as [(pan: string) => boolean, (pan: string) => boolean]
  return oracleOf({
    station: state.station,
    soiled: [
      ...marksIn(state, ledger, (pan) => isMeant(pan) && isOnLine(pan), made),
      ...goneIn(isOnLine),
    ],
    soiledBehind: [
      ...marksIn(state, ledger, (pan) => isMeant(pan) && isBehind(pan), made),
      ...goneIn(isBehind),
    ],
    lent: [...lent.map(([, { component, by }]) => ({ component, by })), ...goneLent],
    ready: ready.map((one) => one.component),
  })
}

/** All that is in a build, its base too. */
export const takenComponents = ({ base, parts }: BuildChoice): readonly string[] => [
  ...(base === null ? [] : [base]),
  ...Object.keys(parts).filter((id) => parts[id]?.placement !== 'no'),
]

/** Out of which of its pans a component would be taken now. */
export const takenFromNow = (
  state: RunningState,
  ledger: Ledger,
  { needs }: BuildChoice,
  component: string,
): From => placeOf(state, ledger, null).from(component, needs)

const cameFrom = (state: RunningState, took: Build['took'], component: string): From => {
  const components = componentsOf(state)
  const own = took.filter(({ pan }) => components.get(pan) === component)
  return own.length > 0 && own.every(({ pan }) => state.backupPans[pan]) ? 'backup' : 'line'
}

type Accepted = RunningState['cautions'][string]['findings'][number]

const acceptedFor = (
  state: RunningState,
  { caution, item, needs }: BuildChoice,
  build: string,
): readonly Accepted[] => {
  const found = state.cautions[`c${caution}`]
  if (!found || found.build !== build || found.item !== item) return []
  const codes = new Set(needs.map(({ code }) => code))
  const isSame =
    found.needs.length === codes.size && found.needs.every((one) => codes.has(one.code))
  return isSame ? found.findings : []
}

export interface InItsWay {
  /** What wasn't accepted, whoever reads it. */
  readonly surely: readonly Unsuited[]
  /** And what wasn't to the letter: less reaches it than was told, or another of them is the worst. */
  readonly maybe: readonly Unsuited[]
}

const isSame = (one: Unsuited, other: Accepted): boolean =>
  one.component === other.component && one.need === other.need && one.why === other.why

/** Whether anything of it is declared worse than it was when that was accepted. */
const isWorse = ({ words }: Unsuited, { states }: Accepted): boolean =>
  states !== undefined &&
  Object.entries(words).some(
    ([id, word]) => WORST_FIRST.indexOf(word) < WORST_FIRST.indexOf(states[id] ?? 'free'),
  )

const among = (
  state: RunningState,
  choice: BuildChoice,
  build: string,
  found: readonly Unsuited[],
): InItsWay => {
  const accepted = acceptedFor(state, choice, build)
  const isCovered = (one: Unsuited): boolean =>
    accepted.some(
      (other) =>
        isSame(one, other) &&
        one.reached.every((id) => other.reached.includes(id)) &&
        !isWorse(one, other),
    )
  const isToTheLetter = (one: Unsuited): boolean =>
    accepted.some(
      (other) =>
        isSame(one, other) &&
        one.reached.join() === other.reached.join() &&
        (one.reached.length === 0 || one.worst.join() === other.touches) &&
        Object.entries(one.words).every(([id, word]) => other.states?.[id] === word),
    )
  return {
    surely: found.filter((one) => one.level === 'no' || !isCovered(one)),
    maybe: found.filter((one) => one.level === 'no' || !isToTheLetter(one)),
  }
}

const unsuitedIn = (
  place: TakenOracle,
  choice: BuildChoice,
  from: (component: string) => From,
): readonly Unsuited[] =>
  takenComponents(choice).flatMap((component) =>
    place.unsuited(component, choice.needs, from(component)),
  )

const once = (found: readonly Unsuited[]): readonly Unsuited[] => [
  ...new Map(found.map((one) => [JSON.stringify(one), one])).values(),
]

/** Of food that is still to be taken. */
export const inTheWayNow = (
  state: RunningState,
  ledger: Ledger,
  choice: BuildChoice,
  build: string,
): InItsWay => {
  const place = placeOf(state, ledger, null)
  const from = (component: string) => place.from(component, choice.needs)
  return among(state, choice, build, unsuitedIn(place, choice, from))
}

const asBegun =
  ({ behind }: Begun) =>
  (component: string): From =>
    behind.has(component) ? 'backup' : 'line'

/** Of what is in the making: still to be taken, and taken until now. */
export const inTheWayMaking = (
  state: RunningState,
  ledger: Ledger,
  choice: BuildChoice,
  build: string,
): InItsWay => {
  const begun = ledger.begun.get(build)
  const now = inTheWayNow(state, ledger, choice, build)
  if (!begun) return now
  const place = placeOf(state, ledger, { ...EVER, begun: begun.position })
  const met = among(state, choice, build, unsuitedIn(place, choice, asBegun(begun)))
  // From where it would be taken may have changed in between, so that nobody knows what of it is where.
  const anywhere = among(
    state,
    choice,
    build,
    unsuitedIn(place, choice, (component) => place.from(component, choice.needs)),
  )
  return {
    surely: once([...now.surely, ...met.surely]),
    maybe: once([...now.maybe, ...met.maybe, ...anywhere.maybe]),
  }
}

/** Of food that was finished: by the pans it came from, as they were not changed before it was begun. */
export const inTheWayOf = (
  state: RunningState,
  ledger: Ledger,
  { choice, took, made, begun }: Pick<Given, 'choice' | 'took' | 'made' | 'begun'>,
  build: string,
): InItsWay => {
  const found = (making: Making): readonly Unsuited[] => {
    const place = placeOf(state, ledger, making)
    return once([
      ...unsuitedIn(place, choice, (component) => cameFrom(state, took, component)),
      ...(begun ? unsuitedIn(place, choice, asBegun(begun)) : []),
    ])
  }
  return {
    surely: among(state, choice, build, found({ begun: begun?.position ?? 0, made: made.position }))
      .surely,
    // Of what came into a pan later nobody has to say that it can't be in it.
    maybe: among(state, choice, build, found({ ...EVER, begun: begun?.position ?? 0 })).maybe,
  }
}
