/** What stands in the way of a build, by brute force: from which pans, and what of it was accepted. */
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
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
import type { Ledger, Where } from '#tests/lib/service/oracle/ledger.ts'

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
  { marks }: Ledger,
  isMeant: (pan: string) => boolean,
): WholePlace['soiled'] => {
  const components = componentsOf(state)
  return [...marks].flatMap(([pan, all]) =>
    isMeant(pan) ? [...all].map((by) => ({ component: components.get(pan) ?? '', by })) : [],
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

/** The place as it is, or as food that was finished where `made` says met it. */
const placeOf = (state: RunningState, ledger: Ledger, made: number | null): TakenOracle => {
  const isMeant = (pan: string) => made === null || (ledger.loaded.get(pan)?.position ?? 0) < made
  const lent = Object.entries(state.lent).filter(
    ([key]) => made === null || (ledger.lent.get(key) ?? 0) < made,
  )
  const ready = state.station.backups.filter(
    (one) => one.protected && ledger.standing.has(one.id) && mayBeServed(state, ledger, one.id),
  )
  return oracleOf({
    station: state.station,
    soiled: marksIn(state, ledger, (pan) => isMeant(pan) && state.pans[pan] !== undefined),
    soiledBehind: marksIn(
      state,
      ledger,
      (pan) => isMeant(pan) && state.backupPans[pan] !== undefined,
    ),
    lent: lent.map(([, { component, by }]) => ({ component, by })),
    ready: ready.map((one) => one.component),
  })
}

const taken = ({ base, parts }: BuildChoice): readonly string[] => [
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

/** Of food that is still to be taken. */
export const inTheWayNow = (
  state: RunningState,
  ledger: Ledger,
  choice: BuildChoice,
  build: string,
): InItsWay => {
  const place = placeOf(state, ledger, null)
  const found = taken(choice).flatMap((component) =>
    place.unsuited(component, choice.needs, place.from(component, choice.needs)),
  )
  return among(state, choice, build, found)
}

/** Of food that was finished: by the pans it came from, as they were not changed since. */
export const inTheWayOf = (
  state: RunningState,
  ledger: Ledger,
  {
    choice,
    took,
    made,
  }: { readonly choice: BuildChoice; readonly took: Build['took']; readonly made: Where },
  build: string,
): InItsWay => {
  const found = (at: number | null) =>
    taken(choice).flatMap((component) =>
      placeOf(state, ledger, at).unsuited(
        component,
        choice.needs,
        cameFrom(state, took, component),
      ),
    )
  return {
    surely: among(state, choice, build, found(made.position)).surely,
    // Of what came into a pan later nobody has to say that it can't be in it.
    maybe: among(state, choice, build, found(null)).maybe,
  }
}
