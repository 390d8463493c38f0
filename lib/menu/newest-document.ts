import { upgraded } from '#lib/menu/older-documents.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'

type Added = 'allergenSet' | 'ownAllergens' | 'cautions' | 'recipes' | 'contacts' | 'backups'

/** Version 1 knew nothing of recipes, claims, who read a label, or what touches what. */
export interface StationDocument1
  extends Omit<StationDocument, Added | 'version' | 'ingredients' | 'components'> {
  readonly version: 1
  readonly ingredients: readonly Omit<StationDocument['ingredients'][number], 'claims' | 'readBy'>[]
  readonly components: readonly Omit<StationDocument['components'][number], 'recipes'>[]
}

export type AnyStationDocument = StationDocument | StationDocument1

const isNewest = (document: unknown): document is StationDocument =>
  typeof document === 'object' &&
  document !== null &&
  'version' in document &&
  document.version === 2

/** A parsed document of any known version, as the newest. @throws where it is of no known version. */
export const newestOf = (document: AnyStationDocument): StationDocument => {
  const newest = upgraded(document)
  if (!isNewest(newest)) throw new Error('a station document of no known version')
  return newest
}
