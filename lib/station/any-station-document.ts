import type { StationDocument } from '#lib/station/station-document.ts'

type Component3 = StationDocument3['components'][number]
type Well3 = StationDocument3['line']['wells'][number]

/** Version 3 knew nothing of what a label doesn't list, when it is read again, or of tax. */
export interface StationDocument3
  extends Omit<StationDocument, 'version' | 'notListed' | 'readAgainDays' | 'locale' | 'tax'> {
  readonly version: 3
}

/** Version 2 knew nothing of temperatures, making again, tools, tares, or what a back-up pan is. */
export interface StationDocument2
  extends Omit<
    StationDocument3,
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

export type AnyStationDocument =
  | StationDocument
  | StationDocument3
  | StationDocument2
  | StationDocument1

/** Whether a document is of the newest version; screens fold no other, since the server brings it up. */
export const isNewest = (document: unknown): document is StationDocument =>
  typeof document === 'object' &&
  document !== null &&
  'version' in document &&
  document.version === 4
