/** What the house has, read as drafts. */
import type { HouseFood } from '#lib/carry/met.ts'
import { type Draft, isRecord, type Rows, textIn } from '#lib/editor/draft.ts'
import type { Problem } from '#lib/editor/problem.ts'
import { ALLERGEN_SET_IDS, type AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import type { CarryPorts } from '#server/carry/ports.ts'

export interface SeenDraft {
  readonly draft: Draft
  readonly saw: number
  readonly problems: readonly Problem[]
}

/** A station's draft; null where the house has no such station. */
export const draftIn = ({ menu }: Pick<CarryPorts, 'menu'>, station: string): SeenDraft | null => {
  const told = menu.draft(station, null)
  if (told.code !== 'done') return null
  const { rows, saw, problems } = told
  // Without a save to look back to, every row is there.
  return { draft: { station, rows: rows as Rows }, saw, problems }
}

/** All ingredients of the house, whatever station lists them. */
export const foodOf = (ports: Pick<CarryPorts, 'menu' | 'label'>): HouseFood => {
  const drafts = ports.menu.list().stations.map(({ station }) => draftIn(ports, station)?.draft)
  const rows = drafts.flatMap((one) =>
    Object.entries(one?.rows ?? {}).flatMap(([key, row]) => {
      if (!key.startsWith('ingredient:') || !isRecord(row)) return []
      const { at: _, ...called } = row
      return [[key, called] as const]
    }),
  )
  return { draft: { station: '', rows: Object.fromEntries(rows) }, label: ports.label }
}

const setOf = ({ rows }: Draft): AllergenSetId | null =>
  ALLERGEN_SET_IDS.find((one) => one === textIn(rows.house, 'allergenSet')) ?? null

/** A set by which another station of this house reads its labels; null where all read by this one. */
export const otherSet = (
  ports: Pick<CarryPorts, 'menu'>,
  set: AllergenSetId,
): AllergenSetId | null => {
  const sets = ports.menu
    .list()
    .stations.map(({ station }) => draftIn(ports, station))
    .flatMap((one) => (one === null ? [] : (setOf(one.draft) ?? [])))
  return sets.find((one) => one !== set) ?? null
}
