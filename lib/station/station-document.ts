import type { z } from 'zod'
import type { declarationSchema } from '#lib/station/shapes/label-schema.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

export type StationDocument = StationShape
export type Ingredient = StationDocument['ingredients'][number]
export type Component = StationDocument['components'][number]
export type Item = StationDocument['items'][number]
export type Part = Item['parts'][number]
export type Well = StationDocument['line']['wells'][number]
export type Pan = Well['pans'][number]
export type PortionRule = Component['portion']
export type Declaration = z.infer<typeof declarationSchema>
export type Held = Component['held']
export type Recipe = StationDocument['recipes'][number]
export type Contact = NonNullable<StationDocument['contacts']>[number]
export type ContactKind = Contact['kind']
