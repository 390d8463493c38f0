/** What reaches what over shared tools and neighbouring pans. */
import type { ContactKind, StationDocument } from '#lib/station/station-document.ts'

/** Contacts that a protected back-up pan of a component's own doesn't have (DESIGN: food safety). */
const CLEARABLE: readonly ContactKind[] = ['scoop', 'beside', 'reached-over']

export interface Soil {
  readonly component: string
  /** The component whose scoop went into it. */
  readonly by: string
}

/** A scoop that is lent: the pans of both touch each other. */
export type Lent = Soil

export interface Reached {
  readonly component: string
  /** How the way to it begins. */
  readonly contact: ContactKind
}

export interface Reach {
  /** From the pan on the line. */
  readonly line: readonly Reached[]
  /** From a protected back-up pan: what never clears, and what comes over that. */
  readonly backup: readonly Reached[]
}

interface Edge {
  readonly kind: ContactKind
  readonly components: readonly string[]
}

/** By component, what leads on from its pan: of a scoop that went in, from the pan that has its mark. */
const edgesFrom = (
  contacts: NonNullable<StationDocument['contacts']>,
  soiled: readonly Soil[],
  lent: readonly Lent[],
): ReadonlyMap<string, readonly Edge[]> => {
  const from = new Map<string, Edge[]>()
  const lead = (component: string, edge: Edge) =>
    from.set(component, [...(from.get(component) ?? []), edge])
  const both = lent.map(({ component, by }) => ({
    kind: 'scoop' as const,
    components: [component, by],
  }))
  for (const edge of [...contacts, ...both]) for (const one of edge.components) lead(one, edge)
  for (const { component, by } of soiled) lead(component, { kind: 'scoop', components: [by] })
  return from
}

const spread = (
  from: string,
  firstHops: readonly Edge[],
  byComponent: ReadonlyMap<string, readonly Edge[]>,
): readonly Reached[] => {
  const found = new Map<string, ContactKind>()
  const queue: { readonly component: string; readonly contact: ContactKind }[] = []
  const reach = (component: string, contact: ContactKind) => {
    if (found.has(component)) return
    found.set(component, contact)
    queue.push({ component, contact })
  }
  for (const edge of firstHops)
    for (const one of edge.components) if (one !== from) reach(one, edge.kind)
  for (const at of queue)
    for (const edge of byComponent.get(at.component) ?? [])
      for (const one of edge.components) reach(one, at.contact)
  found.delete(from)
  return [...found].map(([component, contact]) => ({ component, contact }))
}

/** Every component's reach; null where nobody has said what touches what. */
export const reachOf = (
  station: Pick<StationDocument, 'contacts' | 'components'>,
  soiled: readonly Soil[],
  lent: readonly Lent[],
): ReadonlyMap<string, Reach> | null => {
  if (station.contacts === null) return null
  const byComponent = edgesFrom(station.contacts, soiled, lent)
  return new Map(
    station.components.map(({ id }) => {
      const own = byComponent.get(id) ?? []
      const lasting = own.filter(({ kind }) => !CLEARABLE.includes(kind))
      return [id, { line: spread(id, own, byComponent), backup: spread(id, lasting, byComponent) }]
    }),
  )
}
