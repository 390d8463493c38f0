/** What stands on the line's set-up sheet: each pan where it goes, how much, with what, and its limit. */
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { panUsableMl } from '#lib/measure/pans.ts'
import { wholePortions } from '#lib/measure/portion.ts'
import { type Stand, wellFromAbove } from '#lib/measure/well-layout.ts'
import type { Amount } from '#lib/recipes/amount.ts'
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import type { TemperatureLimit, TimeLimit } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { componentOf } from '#lib/station/find.ts'
import { portionOf } from '#lib/station/portion.ts'
import { loadTotal, portionAmount } from '#lib/station/portion-amount.ts'
import type {
  Component,
  ContactKind,
  Pan,
  PortionRule,
  StationDocument,
  Well,
} from '#lib/station/station-document.ts'

export interface Touching {
  /** In which ways it touches the same others, at least one. */
  readonly kinds: readonly ContactKind[]
  /** Names of other components, each once. */
  readonly names: readonly string[]
}

/** What a plan has of a food: loads, portions in all of them, and portions that the larder has of it. */
export interface PlannedFood {
  readonly loads: number
  readonly portions: number
  readonly inLarder: number
}

export interface SetUpPan {
  readonly pan: string
  readonly component: string
  /** As it is counted along the whole line, from 1. */
  readonly number: number
  readonly name: string
  readonly short: readonly string[]
  readonly size: Pan['size']
  readonly depthIn: Pan['depthIn']
  /** In its well from above, inches. */
  readonly stand: Stand
  readonly rule: PortionRule
  /** What it is usually loaded with, or all loads of a plan: portion × count, and what that is together. */
  readonly load: PortionTotal
  /** What that weighs, whole milligrams; null where it is counted. */
  readonly totalMg: number | null
  /** What a plan has of its food; null: it is no plan's sheet. */
  readonly planned: PlannedFood | null
  /** Numbers of all pans that a plan's loads are for; none where they are for this one alone. */
  readonly shares: readonly number[]
  /** Portions that it holds by volume; null where that isn't known. */
  readonly holds: number | null
  /** The same, where one load of it is more; else null. */
  readonly overfull: number | null
  readonly held: Component['held']
  /** What it is read for; null: dry, nothing is. */
  readonly limit: TemperatureLimit | null
  /** In a well by time alone: how long it stands at most; else null. */
  readonly within: TimeLimit | null
  readonly touches: readonly Touching[]
  /** Back-up pans, at the first pan of their food. */
  readonly behind: StationDocument['backups']
}

export interface SetUpWell {
  /** From 1, from the left. */
  readonly number: number
  readonly held: Well['held']
  readonly pans: readonly SetUpPan[]
}

export interface SetUpFacts {
  readonly station: string
  readonly scale: Scale
  readonly wells: readonly SetUpWell[]
  /** False: nobody has said what touches what. */
  readonly contactsSaid: boolean
}

/** The one of two limits of a sort that asks more. */
const stricter = (one: TemperatureLimit, other: TemperatureLimit): TemperatureLimit => {
  const isHigher = one.tenths.F >= other.tenths.F
  return (one.bound === 'at-least') === isHigher ? one : other
}

/** By time alone what goes in meets both: how it was held, and that from which a clock may run. */
export const limitOf = (
  station: StationDocument,
  well: Pick<Well, 'held'>,
  { held, food }: Pick<Component, 'held' | 'food'>,
): TemperatureLimit | null => {
  const limits = limitsOf(station)
  if (held === 'dry') return null
  const isOnTime = well.held === 'time'
  if (held === 'cold')
    return isOnTime ? stricter(limits.coldHolding, limits.timeOnlyStartCold) : limits.coldHolding
  const holding = food.roast ? limits.hotHoldingRoast : limits.hotHolding
  return isOnTime ? stricter(holding, limits.timeOnlyStartHot) : holding
}

const touchesOf = (station: StationDocument, component: string): readonly Touching[] => {
  const kinds = new Map<ContactKind, string[]>()
  for (const { kind, components } of station.contacts ?? [])
    if (components.includes(component))
      kinds.set(kind, [
        ...(kinds.get(kind) ?? []),
        ...components.filter((one) => one !== component),
      ])
  const bySame = new Map<string, { kinds: ContactKind[]; components: readonly string[] }>()
  for (const [kind, all] of kinds) {
    const components = [...new Set(all)]
    const same = components.toSorted().join(' ')
    const kindsOf = bySame.get(same)?.kinds ?? []
    bySame.set(same, { components, kinds: [...kindsOf, kind] })
  }
  return [...bySame.values()].map(({ kinds: ways, components }) => ({
    kinds: ways,
    names: components.map((one) => componentOf(station, one).name),
  }))
}

/** Portions that go into a pan by volume; null where its portion is no volume, or its capacity isn't known. */
const holdsPortions = ({ size, depthIn, capacityFlOz }: Pan, portion: Amount): number | null => {
  if (portion.kind !== 'volume') return null
  const ml = capacityFlOz === null ? panUsableMl(size, depthIn) : mlFrom(capacityFlOz, 'flOz')
  return ml === null ? null : wholePortions(ml, toNumber(portion.size))
}

/** Pans in the order in which they stand along the line, those behind one another from the back. */
export const setUpFacts = (station: StationDocument): SetUpFacts => {
  const told = new Set<string>()
  let number = 0
  const panIn = (well: Well, pan: Pan, stand: Stand): SetUpPan => {
    const component = componentOf(station, pan.component)
    const isFirst = !told.has(component.id)
    told.add(component.id)
    number += 1
    const portion = portionAmount(component.portion)
    const each = portionOf(component)
    // Lidded cups aren't poured into the pan, so its volume says nothing of how many it takes.
    const most = component.portion.tool === 'cup' ? null : holdsPortions(pan, portion)
    return {
      pan: pan.id,
      component: component.id,
      number,
      name: component.name,
      short: component.short,
      size: pan.size,
      depthIn: pan.depthIn,
      stand,
      rule: component.portion,
      load: loadTotal(component, pan.usualPortions),
      totalMg: each.unit === 'mg' ? each.amount * pan.usualPortions : null,
      planned: null,
      shares: [],
      holds: most,
      overfull: most !== null && most < pan.usualPortions ? most : null,
      held: component.held,
      limit: limitOf(station, well, component),
      within:
        well.held === 'time' && component.held !== 'dry' ? limitsOf(station).timeOnly4h : null,
      touches: touchesOf(station, component.id),
      behind: isFirst ? station.backups.filter((one) => one.component === component.id) : [],
    }
  }
  return {
    station: station.name,
    scale: station.safety.scale,
    contactsSaid: station.contacts !== null,
    wells: station.line.wells.map((well, at) => ({
      number: at + 1,
      held: well.held,
      pans: wellFromAbove(well.pans.map(({ id, size }) => ({ pan: id, size }))).stands.flatMap(
        (stand) => {
          const pan = well.pans.find(({ id }) => id === stand.pan)
          return pan === undefined ? [] : [panIn(well, pan, stand)]
        },
      ),
    })),
  }
}
