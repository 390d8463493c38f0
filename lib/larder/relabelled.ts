/** Lots whose labels changed since they were set aside: which of them count, and by whose word. */
import type { LotFood } from '#lib/larder/lot.ts'
import { type Label, UNREAD_LABEL } from '#lib/station/label.ts'

/** Newest versions of labels that ever changed, by ingredient. */
type Versions = Readonly<Record<string, number>>

/** A label as the house had it once. */
export interface LabelOnce {
  readonly version: number
  /** null: nobody had read it. */
  readonly label: Label | null
  /** The same product as before, read again. */
  readonly same: boolean
}

/** What the house knows of labels. */
export interface LabelHistory {
  /** Versions of those that ever changed. */
  newest(): Versions
  /** Of the product in use, from a version on, that with it, in order. */
  from(ingredient: string, version: number): readonly LabelOnce[]
}

/** Of which pack the person in charge says it was made: of the one whose label is read now, or one before. */
export const PACKS = ['same', 'before'] as const
export type Pack = (typeof PACKS)[number]

type Labelled = Pick<LotFood, 'madeOf' | 'labels'>

const versionIn = ({ labels }: Pick<LotFood, 'labels'>, ingredient: string): number =>
  labels?.[ingredient] ?? 0

/** Ingredients of a lot whose label is another now than the one by which it was set aside. */
export const relabelledOf = (lot: Labelled, newest: Versions): readonly string[] =>
  lot.madeOf.filter((id) => versionIn(lot, id) !== (newest[id] ?? 0))

/** A label without who read it, and without the words and picture of its pack, which are the house's. */
export const bareLabel = ({ list: _, photo: __, ...label }: Label): Label => ({
  ...label,
  readBy: null,
})

/**
 * What counts beside today's label where it was made of a pack of before: what that was read as, and each
 * reading of that product since. Where nobody had read it, or no row is left of it, it is unknown.
 */
export const labelsOfBefore = (
  lot: Labelled,
  ingredient: string,
  history: LabelHistory,
): readonly Label[] => {
  const rows = history.from(ingredient, versionIn(lot, ingredient))
  const [first, ...later] = rows
  if (first === undefined || first.version !== versionIn(lot, ingredient)) return [UNREAD_LABEL]
  const next = later.findIndex((one) => !one.same)
  const its = [first, ...(next === -1 ? later : later.slice(0, next))]
  const newest = history.newest()[ingredient] ?? 0
  return its
    .filter(({ version }) => version !== newest)
    .map(({ label }) => bareLabel(label ?? UNREAD_LABEL))
}
