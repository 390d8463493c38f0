/** How the fields of a type are classed: every one of them, so that a new one doesn't compile without. */
import {
  type ApartClass,
  type CrewClass,
  FIELD_CLASSES,
  type FieldClass,
} from '#lib/access/seen/classes.ts'

/** What stands for a field that is left away. */
export const AWAY = Symbol('away')

type Plain = string | number | boolean
type Something<Value> = Exclude<Value, null | undefined>

/** Every key of every member of a union, and what any of them has there. */
type KeysOf<Value> = Value extends unknown ? keyof Value : never
type At<Value, Key> = Value extends unknown ? (Key extends keyof Value ? Value[Key] : never) : never
type MayLack<Value, Key> =
  undefined extends At<Value, Key>
    ? true
    : Value extends unknown
      ? Key extends keyof Value
        ? never
        : true
      : never

/** A plain field: its class, and where not every screen is sent it what stands in its place. */
type Leaf<Value, Lacks> =
  | CrewClass
  | readonly [
      ApartClass,
      Exclude<Value, undefined> | ([Lacks] extends [never] ? never : typeof AWAY),
    ]

const LIST = Symbol('list')
const EACH = Symbol('each')
const KEPT = Symbol('kept')

interface ListOf<Inner> {
  readonly [LIST]: Inner
}
/** Values by ids, which are never a guest's. */
interface EachOf<Inner> {
  readonly [EACH]: Inner
}
/** What stays the same object while it doesn't change is worked out once. */
interface KeptOf<Inner> {
  readonly [KEPT]: Inner
}

export const list = <const Inner>(of: Inner): ListOf<Inner> => ({ [LIST]: of })
export const each = <const Inner>(of: Inner): EachOf<Inner> => ({ [EACH]: of })
export const kept = <const Inner>(of: Inner): KeptOf<Inner> => ({ [KEPT]: of })

/** How something is classed, as whoever walks through it sees it. */
export type Told =
  | { readonly is: 'plain'; readonly fieldClass: FieldClass; readonly instead: unknown }
  | { readonly is: 'list' | 'each' | 'kept'; readonly of: unknown }
  | { readonly is: 'fields'; readonly fields: readonly (readonly [key: string, of: unknown])[] }

/** @throws for what isn't classed */
export const toldOf = (classed: unknown): Told => {
  const isClass = (one: unknown): one is FieldClass => FIELD_CLASSES.some((name) => name === one)
  if (isClass(classed)) return { is: 'plain', fieldClass: classed, instead: AWAY }
  if (Array.isArray(classed) && isClass(classed[0]))
    return { is: 'plain', fieldClass: classed[0], instead: classed[1] }
  if (typeof classed !== 'object' || classed === null) throw new Error('a field that isn’t classed')
  if (LIST in classed) return { is: 'list', of: classed[LIST] }
  if (EACH in classed) return { is: 'each', of: classed[EACH] }
  if (KEPT in classed) return { is: 'kept', of: classed[KEPT] }
  return { is: 'fields', fields: Object.entries(classed) }
}

type Shape<Value, Whole, Lacks> = [Value] extends [Plain]
  ? Leaf<Whole, Lacks>
  : [Value] extends [readonly unknown[]]
    ? ListOf<Classed<Value[number]>>
    : string extends KeysOf<Value>
      ? EachOf<Classed<At<Value, string>>>
      : Fields<Value>

/** The classes of all that a value of a type holds, however deep. */
export type Classed<Value, Lacks = never> =
  | Shape<Something<Value>, Value, Lacks>
  | KeptOf<Shape<Something<Value>, Value, Lacks>>

/** The classes of every field of a type. */
export type Fields<Value> = {
  readonly [Key in KeysOf<Value>]-?: Classed<At<Value, Key>, MayLack<Value, Key>>
}
