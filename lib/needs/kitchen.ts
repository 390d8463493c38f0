import { byWorst, isInIt } from '#lib/needs/allergen-word.ts'
import { type Lent, type Reach, type Reached, reachOf, type Soil } from '#lib/needs/contact.ts'
import { type Declared, declaredBy } from '#lib/needs/declared.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import type { Declaration, StationDocument } from '#lib/station/station-document.ts'

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
  /** All that is meant with it, by id in order: what may have it in it. */
  readonly reached: readonly string[]
  /** What each of them declares. */
  readonly states: Readonly<Record<string, Declaration>>
}

/** What one component is to one need, however that is handled. */
export interface Facts {
  readonly declared: Declared
  /** The worst that reaches the pan on the line; null where none that does may have it in it. */
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
    if (!isInIt(word.state)) continue
    all.push(one.component)
    states[one.component] = word.state
    if (worst === null || byWorst(word.state, worst.declared.state) < 0)
      worst = { ...one, declared: word }
  }
  return worst === null ? null : { ...worst, reached: all.sort(), states }
}

/** The worst of the scoops that went into a pan: one that hasn't it carries what it touches. */
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
