import { findPan } from '#lib/menu/find.ts'
import type { Declaration, StationDocument } from '#lib/menu/station-document.ts'
import type { NeedCode } from '#lib/needs/codes.ts'
import { type Lent, type Reach, type Reached, reachOf, type Soil } from '#lib/needs/contact.ts'
import { byWorst, type Declared, declaredBy } from '#lib/needs/declared.ts'
import type { RunningState } from '#lib/service/state.ts'

/** A station as it stands now: its document, what went into its pans, which back-ups are ready. */
export interface Kitchen {
  readonly station: StationDocument
  readonly soiled: readonly Soil[]
  /** What went into pans behind the line; nothing where left away. */
  readonly soiledBehind?: readonly Soil[]
  /** Scoops that are lent, or were, to pans that weren't changed since. */
  readonly lent: readonly Lent[]
  /** Components whose protected back-up pan is said to stand ready. */
  readonly ready: readonly string[]
}

export interface Touched extends Reached {
  readonly declared: Declared
  /** All that is meant with it, by id in order: what isn't declared free. */
  readonly reached: readonly string[]
  /** What each of them declares. */
  readonly states: Readonly<Record<string, Declaration>>
}

/** What one component is to one need, however that is handled. */
export interface Facts {
  readonly declared: Declared
  /** The worst that reaches the pan on the line; null where all that does is declared free. */
  readonly touched: Touched | null
  /** The worst that still reaches its protected back-up pan. */
  readonly touchedInBackup: Touched | null
  /** The worst whose scoop went into the pan on the line, by itself or by what it touches. */
  readonly soiled: Touched | null
  /** The worst whose scoop went into a back-up pan of it. */
  readonly soiledBackup: Touched | null
  /** A protected back-up pan of it stands ready. */
  readonly hasBackup: boolean
  /** Nobody has said what touches what. */
  readonly contactUnknown: boolean
}

export type FactsOf = (component: string, code: NeedCode) => Facts

const worstOf = (
  reached: readonly Reached[],
  declared: ReadonlyMap<string, Declared>,
): Touched | null => {
  let worst: Omit<Touched, 'reached' | 'states'> | null = null
  const states: Record<string, Declaration> = {}
  const all: string[] = []
  for (const one of reached) {
    const word = declared.get(one.component)
    if (!word) throw new Error(`the station has no component ${one.component}`)
    if (word.state === 'free') continue
    all.push(one.component)
    states[one.component] = word.state
    if (worst === null || byWorst(word.state, worst.declared.state) < 0)
      worst = { ...one, declared: word }
  }
  return worst === null ? null : { ...worst, reached: all.sort(), states }
}

/** The worst of the scoops that went into a pan: one that is free itself carries what it touches. */
const soilOf = (
  scoops: readonly string[],
  reach: ReadonlyMap<string, Reach> | null,
  declared: ReadonlyMap<string, Declared>,
): Touched | null => {
  const found = scoops.flatMap((by) => {
    const own = worstOf([{ component: by, contact: 'scoop' }], declared)
    const carried = own ?? worstOf(reach?.get(by)?.line ?? [], declared)
    return carried
      ? [{ ...carried, component: by, contact: 'scoop' as const, isOwn: own !== null }]
      : []
  })
  const [worst] = found.sort(
    (one, other) =>
      Number(other.isOwn) - Number(one.isOwn) || byWorst(one.declared.state, other.declared.state),
  )
  if (!worst) return null
  const { component, contact, declared: word, isOwn } = worst
  return {
    component,
    contact,
    declared: isOwn ? word : { state: word.state, through: [] },
    reached: [...new Set(found.map((one) => one.component))].sort(),
    states: Object.fromEntries(found.map((one) => [one.component, one.declared.state])),
  }
}

const createFacts = ({ station, soiled, soiledBehind = [], lent, ready }: Kitchen): FactsOf => {
  const reach = reachOf(station, soiled, lent)
  const hasBackup = new Set(
    station.backups
      .filter((one) => one.protected && ready.includes(one.component))
      .map((one) => one.component),
  )
  const scoopsInto = (marks: readonly Soil[], id: string) =>
    marks.filter((one) => one.component === id).map((one) => one.by)
  const byCode = new Map<NeedCode, ReadonlyMap<string, Facts>>()
  const column = (code: NeedCode): ReadonlyMap<string, Facts> => {
    const declared = new Map(
      station.components.map(({ id }) => [id, declaredBy(station, id, code)] as const),
    )
    const nowhere: Reach = { line: [], backup: [] }
    return new Map(
      [...declared].map(([id, word]) => {
        const { line, backup } = reach?.get(id) ?? nowhere
        return [
          id,
          {
            declared: word,
            touched: worstOf(line, declared),
            touchedInBackup: worstOf(backup, declared),
            soiled: soilOf(scoopsInto(soiled, id), reach, declared),
            soiledBackup: soilOf(scoopsInto(soiledBehind, id), reach, declared),
            hasBackup: hasBackup.has(id),
            contactUnknown: reach === null,
          },
        ]
      }),
    )
  }
  return (component, code) => {
    const known = byCode.get(code) ?? column(code)
    byCode.set(code, known)
    const facts = known.get(component)
    if (!facts) throw new Error(`the station has no component ${component}`)
    return facts
  }
}

const factsByKitchen = new WeakMap<Kitchen, FactsOf>()

/** The facts of a kitchen, worked out once a need. @throws where the document is damaged. */
export const factsOf = (kitchen: Kitchen): FactsOf => {
  const known = factsByKitchen.get(kitchen) ?? createFacts(kitchen)
  factsByKitchen.set(kitchen, known)
  return known
}

/** Kitchens by what else is in them than the document: few at any time. */
const kitchens = new WeakMap<StationDocument, Map<string, Kitchen>>()
const MOST_KITCHENS = 24

const kitchenWith = (kitchen: Kitchen): Kitchen => {
  const { station, soiled, soiledBehind, lent, ready } = kitchen
  const key = JSON.stringify([soiled, soiledBehind, lent, ready])
  const all = kitchens.get(station) ?? new Map<string, Kitchen>()
  kitchens.set(station, all)
  const known = all.get(key)
  if (known) return known
  if (all.size >= MOST_KITCHENS) all.clear()
  all.set(key, kitchen)
  return kitchen
}

type Stock = RunningState['pans'][string]

const NONE: readonly Soil[] = []

const isSameMark = (one: Soil, other: Soil): boolean =>
  one.component === other.component && one.by === other.by

const marksIn = (
  stock: Readonly<Record<string, Stock>>,
  componentOf: (id: string) => string | undefined,
  isMeant: (stock: Stock) => boolean,
): readonly Soil[] =>
  Object.keys(stock).flatMap((id) => {
    const one = stock[id]
    const component = one?.soiledBy.length && isMeant(one) ? componentOf(id) : undefined
    return component === undefined || !one ? NONE : one.soiledBy.map((by) => ({ component, by }))
  })

/** Where in the log food was made: begun, and finished; left away where that isn't known, or to come. */
export interface Making {
  readonly begunIn?: number
  readonly madeIn?: number
}

/** Any food that was ever taken, and may yet be. */
const ANY: Making = {}

const kitchenIn = (state: RunningState, making: Making | null): Kitchen => {
  const { begunIn = 0, madeIn = Number.POSITIVE_INFINITY } = making ?? ANY
  const isMeant = ({ loadedIn = 0 }: Stock): boolean => loadedIn <= madeIn
  const wiped = making
    ? (state.wiped ?? []).filter(({ from, until }) => from <= madeIn && until >= begunIn)
    : []
  const of = (where: (typeof wiped)[number]['where'], marks: readonly Soil[]): readonly Soil[] => {
    const all = [...marks]
    for (const { component, by, ...one } of wiped)
      if (one.where === where && !all.some((other) => isSameMark({ component, by }, other)))
        all.push({ component, by })
    return all
  }
  const { station, pans, backupPans } = state
  const onLine = marksIn(pans, (id) => findPan(station, id)?.component, isMeant)
  const behind = marksIn(backupPans, (id) => backupPans[id]?.component, isMeant)
  const lent = Object.values(state.lent)
    .filter(({ sinceIn = 0 }) => sinceIn <= madeIn)
    .map(({ component, by }) => ({ component, by }))
  return kitchenWith({
    station,
    soiled: of('line', onLine),
    soiledBehind: of('behind', behind),
    lent: of('lent', lent),
    ready: Object.keys(state.backups),
  })
}

/** Of a state, which never changes: worked out once. */
const kitchenNow = new WeakMap<RunningState, Kitchen>()

/** The kitchen of a service as it is now; the same object while nothing of it changes. */
export const kitchenOf = (state: RunningState): Kitchen => {
  const known = kitchenNow.get(state) ?? kitchenIn(state, null)
  kitchenNow.set(state, known)
  return known
}

/**
 * The kitchen as food that was made from one place in the log to another may have met it. What went
 * into a pan that was loaded since isn't in it, nor what a scoop brings that was lent since; of the
 * others nobody knows when it went in. What was in a pan as food was made stays in that food, though
 * the pan was changed since.
 */
export const kitchenMet = (state: RunningState, making: Making): Kitchen => {
  const now = kitchenOf(state)
  const { soiled, soiledBehind = NONE, lent } = now
  const isClean = soiled.length === 0 && soiledBehind.length === 0 && lent.length === 0
  return isClean && !state.wiped ? now : kitchenIn(state, making)
}
