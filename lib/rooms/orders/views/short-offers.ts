/** What a build that the pans can't fill can become, each as the server would accept it now. */

import { isKept, type Settled } from '#lib/rooms/orders/facts/draft.ts'
import { changeBuild } from '#lib/rooms/orders/views/changing.ts'
import { IDLE, type ShortWay, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import { lackingBuilds } from '#lib/rooms/pans/facts/short.ts'
import { type Amounts, type BuildChoice, takesOf } from '#lib/service/events/build-choice.ts'
import type { Build } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { findItem } from '#lib/station/find.ts'
import type { Item } from '#lib/station/station-document.ts'

export interface ShortOffer {
  readonly way: ShortWay
  readonly priceCents: number
}

/** As many as stand beside each other. */
const MOST = 3

const NO_WAY: ShortWay = { keeps: {}, fewer: {}, without: [], base: null, item: null }

const both = (one: ShortWay, other: ShortWay): ShortWay => ({
  keeps: { ...one.keeps, ...other.keeps },
  fewer: { ...one.fewer, ...other.fewer },
  without: [...one.without, ...other.without],
  base: one.base ?? other.base,
  item: null,
})

/** What can be done about one thing that it lacks, the smallest change first. */
const waysAbout = (
  state: Selling,
  { item, choice }: { readonly item: Item; readonly choice: BuildChoice },
  component: string,
  there: number,
): readonly ShortWay[] => {
  if (choice.base === component)
    return (item.base?.choices ?? [])
      .filter((base) => base !== component)
      .map((base) => ({ ...NO_WAY, keeps: { [component]: 0 }, base }))
  const each = state.portions[component]?.amount ?? Number.POSITIVE_INFINITY
  const most = Math.min((choice.parts[component]?.portions ?? 0) - 1, Math.floor(there / each))
  const part = item.parts.find((one) => one.component === component)
  return [
    ...Array.from({ length: Math.max(0, most) }, (_, less) => ({
      ...NO_WAY,
      keeps: { [component]: (most - less) * each },
      fewer: { [component]: most - less },
    })),
    ...(part && !isKept(item, part)
      ? [{ ...NO_WAY, keeps: { [component]: 0 }, without: [component] }]
      : []),
  ]
}

/** Ways that differ in a number of portions only are one: the most portions are offered. */
const kindOf = ({ way: { fewer, without, base } }: ShortOffer): string =>
  JSON.stringify([Object.keys(fewer), without, base])

const isAsMeant = ({ choice, parts }: Settled, way: ShortWay, had: BuildChoice): boolean =>
  (way.item ?? had.item) === choice.item &&
  (way.base === null || choice.base === way.base) &&
  (way.item !== null ||
    parts.every(({ part: { component }, placement, portions }) => {
      if (way.without.includes(component)) return placement === 'no'
      const before = had.parts[component]
      return (
        placement === (before?.placement ?? 'no') &&
        portions === (way.fewer[component] ?? before?.portions ?? 0)
      )
    }))

/** Whether the pans fill it so, and no other build goes short for it. */
const helps = (
  state: Selling,
  name: string,
  choice: BuildChoice,
  now: ReadonlyMap<string, Amounts>,
) =>
  [...lackingBuilds(state, { build: name, choice, takes: takesOf(choice, state.portions) })].every(
    ([build, lacks]) =>
      build !== name && Object.keys(lacks).every((id) => now.get(build)?.[id] !== undefined),
  )

const offered = (
  state: Selling,
  build: Build,
  at: { readonly ticket: number; readonly letter: string },
  way: ShortWay,
  now: ReadonlyMap<string, Amounts>,
): ShortOffer | null => {
  const [found] = settleAll(changeBuild(IDLE, at, state, way), state)
  const settled = found?.settled
  if (!settled || settled.blocked !== null || settled.toChoose.length > 0) return null
  if (!isAsMeant(settled, way, build.choice)) return null
  return helps(state, buildName(at.ticket, at.letter), settled.choice, now)
    ? { way, priceCents: settled.priceCents }
    : null
}

/**
 * What a short build can become, at most three, the smallest change first: fewer portions, without,
 * another base; another item where none of these helps. Each fits its guest's needs and what is
 * left, by the rules by which an order is sent, and makes no other build short. Empty where nothing
 * helps, or where it isn't short, is held or waits for assembly's answer.
 * @param state as an order finds it that is sent now
 */
export const shortOffers = (
  state: Selling,
  at: { readonly ticket: number; readonly letter: string },
): readonly ShortOffer[] => {
  const build = findBuild(state, at.ticket, at.letter)
  const now = lackingBuilds(state)
  const lacks = now.get(buildName(at.ticket, at.letter))
  if (!build || !lacks || build.hold || build.stop) return []
  const { choice } = build
  const item = findItem(state.station, choice.item)
  if (!item) return []
  const ways = Object.entries(lacks).reduce<readonly ShortWay[]>(
    (so, [component, there]) =>
      so.flatMap((one) =>
        waysAbout(state, { item, choice }, component, there).map((other) => both(one, other)),
      ),
    [NO_WAY],
  )
  const offer = (way: ShortWay) => offered(state, build, at, way, now) ?? []
  const own = ways.flatMap(offer)
  if (own.length > 0)
    return [...new Map(own.toReversed().map((one) => [kindOf(one), one])).values()]
      .toReversed()
      .slice(0, MOST)
  const keeps = Object.fromEntries(Object.keys(lacks).map((id) => [id, 0]))
  return state.station.items
    .filter(({ id }) => id !== item.id)
    .flatMap(({ id }) => offer({ ...NO_WAY, keeps, item: id }))
    .slice(0, MOST)
}
