/** Values with a canary in every field, made of how the fields are classed. */
import { toldOf } from '#lib/access/seen/classed.ts'
import type { FieldClass } from '#lib/access/seen/classes.ts'

export interface Canary {
  readonly path: string
  readonly fieldClass: FieldClass
  readonly instead: unknown
}

export const UNKNOWN = 'canary of no class'

export const canaryOf = (path: string): string => `canary at ${path}`

const below = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`)

/** Every plain field below a path, lists and records as one of them each. */
export const canariesOf = (classed: unknown, path = ''): readonly Canary[] => {
  const told = toldOf(classed)
  switch (told.is) {
    case 'plain':
      return [{ path, fieldClass: told.fieldClass, instead: told.instead }]
    case 'kept':
      return canariesOf(told.of, path)
    case 'fields':
      return told.fields.flatMap(([key, inner]) => canariesOf(inner, below(path, key)))
    default:
      return canariesOf(told.of, below(path, '*'))
  }
}

/** A value with a canary in every plain field, and one of no class wherever there are fields. */
export const planted = (classed: unknown, path = ''): unknown => {
  const told = toldOf(classed)
  switch (told.is) {
    case 'plain':
      return canaryOf(path)
    case 'kept':
      return planted(told.of, path)
    case 'list':
      return [planted(told.of, below(path, '*'))]
    case 'each':
      return { one: planted(told.of, below(path, '*')) }
    case 'fields':
      return {
        ...Object.fromEntries(
          told.fields.map(([key, inner]) => [key, planted(inner, below(path, key))]),
        ),
        ofNoClass: UNKNOWN,
        nested: { ofNoClass: [UNKNOWN] },
      }
  }
}

/** What really happened, with canaries in the fields that nobody needs to fold it. */
export const plantedIn = (classed: unknown, value: unknown, path = ''): unknown => {
  if (value === null || value === undefined) return value
  const told = toldOf(classed)
  const isApart = Array.isArray(classed)
  if (told.is === 'plain') return isApart ? canaryOf(path) : value
  if (told.is === 'kept') return plantedIn(told.of, value, path)
  if (told.is === 'list')
    return (value as readonly unknown[]).map((one) => plantedIn(told.of, one, below(path, '*')))
  const fields = new Map(told.is === 'fields' ? told.fields : [])
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => {
      if (told.is === 'each') return [key, plantedIn(told.of, one, below(path, '*'))]
      const inner = fields.get(key)
      return [key, inner === undefined ? one : plantedIn(inner, one, below(path, key))]
    }),
  )
}

/** The paths of all canaries that are found anywhere in what is written of a value. */
export const canariesIn = (value: unknown): readonly string[] => [
  ...new Set(
    [...JSON.stringify(value).matchAll(/"canary at ([^"]*)"/g)].map(([, path = '']) => path),
  ),
]
