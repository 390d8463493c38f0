/** The shape of a kept order, and reading it: what isn't exactly that is nothing. */

import type { Wish } from '#lib/rooms/orders/facts/draft.ts'
import type { Arrived, BuildAt, Changing, Sent } from '#lib/rooms/orders/views/ordering.ts'
import { type Amounts, MOST_PORTIONS } from '#lib/service/events/build-choice.ts'
import { LETTERS } from '#lib/service/tickets.ts'
import type { Asked, Handling, NeedCode } from '#lib/station/codes/codes.ts'

export interface KeptDraft {
  readonly asked: Asked | null
  readonly needs: readonly {
    readonly code: NeedCode
    readonly handling: Handling
    readonly hadReason: boolean
  }[]
  readonly asSaid: readonly NeedCode[]
  readonly item: string | null
  readonly base: string | null
  readonly wishes: Readonly<Record<string, Wish>>
  /** Key of what was read back. */
  readonly said: string | null
}

export interface KeptOrder {
  readonly shape: 1
  readonly service: string
  readonly arrived: readonly Arrived[]
  readonly order: {
    readonly step: 'ask' | 'choose' | 'others'
    readonly drafts: readonly KeptDraft[]
    readonly current: number
    readonly paid: boolean
    readonly changing: Changing | null
    readonly telling: BuildAt | null
  } | null
}

type Shape<Value> = (value: unknown) => value is Value

type Fields<Value> = { readonly [Key in keyof Value]-?: Shape<Value[Key]> }

const isString: Shape<string> = (value) => typeof value === 'string'

const isBoolean: Shape<boolean> = (value) => typeof value === 'boolean'

const isCount = (value: unknown): value is number =>
  typeof value === 'number' && Number.isSafeInteger(value) && value >= 0

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const oneOf =
  <Value extends string>(...values: readonly Value[]): Shape<Value> =>
  (value): value is Value =>
    values.some((one) => one === value)

const orNull =
  <Value>(is: Shape<Value>): Shape<Value | null> =>
  (value): value is Value | null =>
    value === null || is(value)

const listOf =
  <Value>(is: Shape<Value>): Shape<readonly Value[]> =>
  (value): value is readonly Value[] =>
    Array.isArray(value) && value.every(is)

const recordOf =
  <Value>(is: Shape<Value>): Shape<Readonly<Record<string, Value>>> =>
  (value): value is Readonly<Record<string, Value>> =>
    isRecord(value) && Object.values(value).every(is)

const having =
  <Value>(fields: Fields<Value>): Shape<Value> =>
  (value): value is Value =>
    isRecord(value) &&
    Object.entries<Shape<unknown>>(fields).every(
      ([key, is]) => Object.hasOwn(value, key) && is(value[key]),
    )

const at: Fields<BuildAt> = { ticket: isCount, letter: isString }

const isAmounts: Shape<Amounts> = recordOf(isCount)

const isWish: Shape<Wish> = having<Wish>({
  placement: oneOf('in', 'side', 'no'),
  portions: (value): value is number => isCount(value) && value <= MOST_PORTIONS,
})

const isDraft: Shape<KeptDraft> = having<KeptDraft>({
  asked: orNull(oneOf('none', 'needs', 'not-sure')),
  needs: listOf(
    having<KeptDraft['needs'][number]>({
      code: isString,
      handling: oneOf('keep-apart', 'leave-out'),
      hadReason: isBoolean,
    }),
  ),
  asSaid: listOf(isString),
  item: orNull(isString),
  base: orNull(isString),
  wishes: recordOf(isWish),
  said: orNull(isString),
})

const isTicketSent = having<Extract<Sent, { readonly kind: 'ticket' }>>({
  kind: oneOf('ticket'),
  id: isString,
})

const isBuildSent = having<Exclude<Sent, { readonly kind: 'ticket' }>>({
  kind: oneOf('changed', 'cancelled'),
  ...at,
})

const isKept: Shape<KeptOrder> = having<KeptOrder>({
  shape: (value): value is 1 => value === 1,
  service: isString,
  arrived: listOf(
    having<Arrived>({
      id: isString,
      sent: (value): value is Sent => isTicketSent(value) || isBuildSent(value),
      items: listOf(isString),
    }),
  ),
  order: orNull(
    having<NonNullable<KeptOrder['order']>>({
      step: oneOf('ask', 'choose', 'others'),
      drafts: (value): value is readonly KeptDraft[] =>
        listOf(isDraft)(value) && value.length > 0 && value.length <= LETTERS.length,
      current: isCount,
      paid: isBoolean,
      changing: orNull(having<Changing>({ ...at, keeps: orNull(isAmounts) })),
      telling: orNull(having<BuildAt>(at)),
    }),
  ),
})

/** null for anything else, such as what an earlier program kept. */
export const keptFrom = (text: string): KeptOrder | null => {
  try {
    const value: unknown = JSON.parse(text)
    return isKept(value) && (value.order?.current ?? 0) < (value.order?.drafts.length ?? 1)
      ? value
      : null
  } catch {
    return null
  }
}
