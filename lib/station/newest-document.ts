import { upgraded } from '#lib/station/older-documents.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

type Component3 = StationDocument['components'][number]
type Well3 = StationDocument['line']['wells'][number]

/** Version 2 knew nothing of temperatures, making again, tools, tares, or what a back-up pan is. */
export interface StationDocument2
  extends Omit<
    StationDocument,
    'version' | 'line' | 'components' | 'backups' | 'safety' | 'day' | 'tools'
  > {
  readonly version: 2
  readonly line: {
    readonly wells: readonly (Omit<Well3, 'pans'> & {
      readonly pans: readonly Omit<Well3['pans'][number], 'tareMg' | 'capacityFlOz'>[]
    })[]
  }
  readonly components: readonly Omit<Component3, 'food' | 'remake' | 'costCents'>[]
  readonly backups: readonly { readonly component: string; readonly protected: boolean }[]
}

type Added = 'allergenSet' | 'ownAllergens' | 'cautions' | 'recipes' | 'contacts' | 'backups'

/** Version 1 knew nothing of recipes, claims, who read a label, or what touches what. */
export interface StationDocument1
  extends Omit<StationDocument2, Added | 'version' | 'ingredients' | 'components'> {
  readonly version: 1
  readonly ingredients: readonly Omit<StationDocument['ingredients'][number], 'claims' | 'readBy'>[]
  readonly components: readonly Omit<StationDocument2['components'][number], 'recipes'>[]
}

export type AnyStationDocument = StationDocument | StationDocument2 | StationDocument1

const isNewest = (document: unknown): document is StationDocument =>
  typeof document === 'object' &&
  document !== null &&
  'version' in document &&
  document.version === 3

/** A parsed document of any known version, as the newest. @throws where it is of no known version. */
export const newestOf = (document: AnyStationDocument): StationDocument => {
  const newest = upgraded(document)
  if (!isNewest(newest)) throw new Error('a station document of no known version')
  return newest
}
