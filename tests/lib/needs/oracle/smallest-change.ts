/** Every way to change an item's usual choice, tried out: which of them do, and which are smallest. */
import type { Item } from '#lib/station/station-document.ts'

export interface Change {
  readonly leaveOut: readonly string[]
  /** The base that it is made on; null where the item has none. */
  readonly base: string | null
}

export interface Expected {
  readonly kind: 'fits' | 'with-change' | 'ask' | 'no'
  /** All that are equally small; none where nothing does. */
  readonly changes: readonly Change[]
}

export const sizeOf = (item: Item, { leaveOut, base }: Change): number =>
  leaveOut.length + (base === (item.base?.usual ?? null) ? 0 : 1)

/** Parts of the usual choice that a guest can do without. */
export const removable = (item: Item): readonly string[] =>
  item.parts
    .filter((part) => part.usual !== 'no' && !part.required && part.component !== item.heart)
    .map((part) => part.component)

/** Parts of the usual choice, without its base. */
export const usualParts = (item: Item): readonly string[] =>
  item.parts.filter((part) => part.usual !== 'no').map((part) => part.component)

const changesOf = (item: Item): readonly Change[] => {
  const bases = item.base?.choices ?? [null]
  const parts = removable(item)
  return Array.from({ length: 2 ** parts.length }, (_, mask) =>
    parts.filter((_part, index) => (mask & (1 << index)) !== 0),
  ).flatMap((leaveOut) => bases.map((base) => ({ leaveOut, base })))
}

interface Tried {
  readonly change: Change
  readonly taken: readonly string[]
  readonly size: number
}

/** Everything that can be done to an item, worked out once; then asked by what is worse. */
export const createSearch = (item: Item) => {
  const all: readonly Tried[] = changesOf(item).map((change) => ({
    change,
    taken: [...usualParts(item), ...(change.base === null ? [] : [change.base])].filter(
      (one) => !change.leaveOut.includes(one),
    ),
    size: sizeOf(item, change),
  }))
  /**
   * First what fits with the smallest change; else what leaves the fewest cautions to accept, then
   * the fewest things that are asked, then the smallest change; never with anything that is `no`.
   */
  return (rank: (component: string) => number): Expected => {
    let best = Number.POSITIVE_INFINITY
    let changes: Change[] = []
    for (const { change, taken, size } of all) {
      const counted = [0, 0, 0, 0, 0]
      for (const one of taken) {
        const at = rank(one)
        counted[at] = (counted[at] ?? 0) + 1
      }
      const [no = 0, caution = 0, ask = 0] = counted
      if (no > 0) continue
      const cost = caution * 10_000 + ask * 100 + size
      if (cost > best) continue
      if (cost < best) changes = []
      best = cost
      changes.push(change)
    }
    if (changes.length === 0) return { kind: 'no', changes }
    if (best >= 100) return { kind: 'ask', changes }
    return { kind: best === 0 ? 'fits' : 'with-change', changes }
  }
}
