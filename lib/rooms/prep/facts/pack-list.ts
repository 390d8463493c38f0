/** All that goes from the prep kitchen to the counter, by the line's document and the plan: guests see the assembly, not the prep. */
import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { asideShare } from '#lib/rooms/prep/facts/aside-share.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import { findComponent, pansOf } from '#lib/station/find.ts'
import type { Component, PortionRule, StationDocument } from '#lib/station/station-document.ts'

export const PACK_GROUPS = ['pans', 'back-ups', 'tools', 'serve', 'clean', 'paper'] as const
export type PackGroup = (typeof PACK_GROUPS)[number]

/** The plain things, of which a document says no more than how many. */
export const PLAIN_THINGS = [
  'gloves',
  'probes',
  'wipes',
  'bucket',
  'strips',
  'cloths',
  'pan-labels',
  'wrap-labels',
  'set-up-sheet',
  'allergen-sheet',
  'readings-sheet',
  'markers',
] as const
export type PlainThing = (typeof PLAIN_THINGS)[number]

interface Packed {
  /** Of its tick: `pack-pan.pan-rice`. */
  readonly id: string
  readonly group: PackGroup
  readonly count: number
}

export type PackItem = Packed &
  (
    | {
        readonly what: 'pan'
        readonly component: string
        readonly size: PanSize
        readonly depthIn: PanDepthIn
      }
    | {
        readonly what: 'back-up'
        readonly component: string
        readonly size: PanSize
        readonly depthIn: PanDepthIn
        /** Of a protected one: the tool that is in no other pan. */
        readonly own: PortionRule | null
      }
    | { readonly what: 'tool'; readonly rule: PortionRule; readonly components: readonly string[] }
    | { readonly what: 'spare'; readonly name: string }
    /** Filled in the prep kitchen. */
    | { readonly what: 'filled-cup'; readonly component: string; readonly rule: PortionRule }
    | { readonly what: 'cup'; readonly component: string; readonly rule: PortionRule }
    /** What a base comes in; null: items without a base. */
    | { readonly what: 'wrap' | 'bowl'; readonly component: string | null }
    | { readonly what: PlainThing }
  )

/** What is counted of a plan. */
export interface PackPlan {
  readonly station: StationDocument
  readonly plan: Pick<ServicePlan, 'opensAt' | 'closesAt' | 'items'>
  readonly foods: readonly PrepChoice[]
  /** Guests expected; null where nobody said. */
  readonly expected: number | null
  readonly assemblers: number
}

/** One in so many over: common practice, no source. */
const SPARE_OF = 10
/** Gloves are changed at least so often, minutes: common practice, no source. */
const GLOVES_EVERY_MIN = 30
/** Where nobody says how often, minutes: common practice, no source. */
const STRIPS_EVERY_MIN = 120

const over = (count: number): number => count + Math.ceil(count / SPARE_OF)

const toolKey = (rule: PortionRule): string => {
  switch (rule.tool) {
    case 'scoop':
      return `scoop-${rule.number}`
    case 'ladle':
    case 'spoodle':
      return `${rule.tool}-${String(rule.flOz).replace('.', '-')}`
    case 'measure':
      return `measure-${String(rule.size).replace('.', '-')}-${rule.unit}`
    case 'tongs':
    case 'tongs-pieces':
      return 'tongs'
    case 'piece':
      return 'hands'
    case 'cup':
      return `cup-${String(rule.flOz).replace('.', '-')}`
    case 'bottle':
      return 'bottle'
  }
}

/** A gloved hand and a filled cup need no tool. */
const hasTool = ({ tool }: PortionRule): boolean => tool !== 'piece' && tool !== 'cup'

/** One of a sort for each pan of the line that it serves; several pans' bottles and tongs too. */
const toolsOf = (station: StationDocument): readonly PackItem[] => {
  const byKey = new Map<string, { rule: PortionRule; count: number; components: Set<string> }>()
  for (const { component: id } of pansOf(station)) {
    const rule = findComponent(station, id)?.portion
    if (rule === undefined || !hasTool(rule)) continue
    const key = toolKey(rule)
    const found = byKey.get(key) ?? { rule, count: 0, components: new Set<string>() }
    found.count += 1
    found.components.add(id)
    byKey.set(key, found)
  }
  const used = [...byKey].map(
    ([key, { rule, count, components }]): PackItem => ({
      ...{ id: `pack-tool.${key}`, group: 'tools', what: 'tool' },
      ...{ rule, count, components: [...components] },
    }),
  )
  const spares = station.tools
    .filter(({ usualFor }) => usualFor === null)
    .map(
      ({ id, name }): PackItem => ({
        ...{ id: `pack-spare.${id}`, group: 'tools', what: 'spare', count: 1, name },
      }),
    )
  return [...used, ...spares]
}

const portionsIn = (foods: readonly PrepChoice[], component: string): number | null =>
  foods.find((one) => one.component === component)?.portions ?? null

/** Guests expected; where nobody said, as many as can be served of what items are named for. */
const guestsOf = ({ station, plan, foods, expected }: PackPlan): number => {
  const onSale = station.items.filter(({ id }) => plan.items === null || plan.items.includes(id))
  const hearts = [...new Set(onSale.map(({ heart }) => heart))]
  return expected ?? hearts.reduce((sum, id) => sum + (portionsIn(foods, id) ?? 0), 0)
}

/** What is planned of it holds what guests took before: par reads that. */
const cupsFor = (from: PackPlan, component: Component): number => {
  const portions = portionsIn(from.foods, component.id) ?? from.expected ?? 0
  return Math.max(
    1,
    Math.ceil(portions * asideShare(from.station, from.plan.items, component.id) - 1e-9),
  )
}

const cupsOf = (from: PackPlan): readonly PackItem[] => {
  const { station, foods, expected } = from
  return station.components.flatMap((component): readonly PackItem[] => {
    const { id, portion: rule, side } = component
    const about = { group: 'serve', component: id, rule } as const
    if (rule.tool === 'cup') {
      const count = Math.max(1, portionsIn(foods, id) ?? expected ?? 1)
      return [{ id: `pack-filled.${id}`, what: 'filled-cup', count, ...about }]
    }
    return side
      ? [{ id: `pack-cup.${id}`, what: 'cup', count: cupsFor(from, component), ...about }]
      : []
  })
}

/** A base that is taken whole is wrapped; a scooped one, and what has none, comes in a bowl. */
const basesOf = (from: PackPlan): readonly PackItem[] => {
  const { station, foods } = from
  const bases = [...new Set(station.items.flatMap(({ base }) => base?.choices ?? []))]
  const guests = Math.max(1, guestsOf(from))
  const chosen = bases.map((id): PackItem => {
    const tool = findComponent(station, id)?.portion.tool
    const isWhole = tool === 'piece' || tool === 'tongs-pieces'
    const count = over(portionsIn(foods, id) ?? guests)
    const what = isWhole ? 'wrap' : 'bowl'
    return { id: `pack-${what}.${id}`, group: 'serve', what, component: id, count }
  })
  return station.items.some(({ base }) => base === null)
    ? [
        ...chosen,
        {
          ...{ id: 'pack-bowl', group: 'serve', what: 'bowl', component: null },
          count: over(guests),
        },
      ]
    : chosen
}

const plain = (what: PlainThing, group: PackGroup, count: number): PackItem => ({
  ...{ id: `pack-${what}`, group, what, count },
})

const plainOf = (from: PackPlan): readonly PackItem[] => {
  const { station, plan, assemblers } = from
  const minutes = Math.max(1, (plan.closesAt - plan.opensAt) / MINUTE_MS)
  const times = (every: number) => 1 + Math.ceil(minutes / every)
  const pans = pansOf(station)
  const read = pans.filter((pan) => findComponent(station, pan.component)?.held !== 'dry').length
  const readings = read * times(station.safety.readings.everyMin)
  const strips = station.safety.sanitizer?.everyMin ?? STRIPS_EVERY_MIN
  const guests = guestsOf(from)
  return [
    plain('gloves', 'clean', assemblers * times(GLOVES_EVERY_MIN) + Math.ceil(guests / SPARE_OF)),
    plain('probes', 'clean', 2),
    plain('wipes', 'clean', Math.max(1, over(readings))),
    plain('bucket', 'clean', 1),
    plain('strips', 'clean', times(strips)),
    plain('cloths', 'clean', assemblers + 1),
    plain('pan-labels', 'paper', pans.length + station.backups.length),
    plain('wrap-labels', 'paper', Math.max(1, over(guests))),
    plain('set-up-sheet', 'paper', 1),
    plain('allergen-sheet', 'paper', 1),
    plain('readings-sheet', 'paper', 1),
    plain('markers', 'paper', assemblers + 1),
  ]
}

/** In the order in which it is packed: pans along the line, what stands behind, tools, cups and wraps, gloves and probes, paper. */
export const packList = (from: PackPlan): readonly PackItem[] => {
  const { station } = from
  const pans = pansOf(station).map(
    ({ id, component, size, depthIn }): PackItem => ({
      ...{ id: `pack-pan.${id}`, group: 'pans', what: 'pan', count: 1 },
      ...{ component, size, depthIn },
    }),
  )
  const behind = station.backups.map(
    ({ id, component, size, depthIn, protected: isProtected }): PackItem => {
      const rule = findComponent(station, component)?.portion
      return {
        ...{ id: `pack-back-up.${id}`, group: 'back-ups', what: 'back-up', count: 1 },
        ...{ component, size, depthIn },
        own: isProtected && rule !== undefined && hasTool(rule) ? rule : null,
      }
    },
  )
  return [
    ...pans,
    ...behind,
    ...toolsOf(station),
    ...cupsOf(from),
    ...basesOf(from),
    ...plainOf(from),
  ]
}
