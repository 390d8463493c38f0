import type { VolumeTool } from '#lib/measure/portion-tools.ts'
import { isCovered } from '#lib/needs/covered.ts'
import { type Finding, isFine, judgeComponent, type Why } from '#lib/needs/judge.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { acceptedUnder } from '#lib/rooms/care/facts/standing.ts'
import { behindOf } from '#lib/rooms/pans/facts/behind.ts'
import {
  type Because,
  type BuildChoice,
  portionsTaken,
  takenComponents,
} from '#lib/service/events/build-choice.ts'
import { boundAt, clockDoubt, isForSale, usableIn } from '#lib/service/held-stock.ts'
import type { Acceptance, RunningState } from '#lib/service/state.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf, linePansOf, pansOf } from '#lib/station/find.ts'
import type { Component, Pan, PortionRule } from '#lib/station/station-document.ts'

/** What a pan has to do with a need: by its declared word, or by what it shares contact with. */
export interface Hazard {
  readonly code: NeedCode
  readonly why: Why
  /** Name of the component that reaches it, for `contact`. */
  readonly touches: string | null
}

/** Level measures of a tool that stands in for a missing one. */
export interface HandMeasure {
  readonly count: number
  readonly tool: VolumeTool
}

export interface TakePan {
  readonly kind: 'take'
  /** Level scoops, tongs, pieces or cups: what the hand does, portions counted in. */
  readonly count: number
  readonly tool: PortionRule | VolumeTool
  /** Its own scoop is missing: what the hand takes further, beside `count` of `tool`. */
  readonly instead: readonly HandMeasure[] | null
  /** Whether its food may be taken: off sale until that is resolved, or to be thrown out. */
  readonly stands: 'sold' | 'off-sale' | 'throw-out' | 'clock'
  readonly onTheSide: boolean
  readonly warm: Component['warm']
  /** The pans hold too little of it for this build. */
  readonly lacking: boolean
  /** It comes from its protected back-up pan; the one on the line stays shut. */
  readonly fromBackup: boolean
  /** It is taken and doesn't fit, and nobody accepted that: the person in charge is asked. */
  readonly hazards: readonly Hazard[]
  /** It is taken under a caution that the person in charge accepted with the guest. */
  readonly accepted: readonly Hazard[]
  /** A handle that reads as purple isn't drawn on a keep-apart build: purple marks allergen tools. */
  readonly plainHandle: boolean
}

/** Why a build goes without; of what was gone, whether it is by our choice now. */
export type WhyWithout = Because | 'not-selling'

/** What a pan is to one build. */
export type PanForBuild =
  | TakePan
  | { readonly kind: 'no'; readonly because: WhyWithout; readonly leaveOut: readonly NeedCode[] }
  | { readonly kind: 'away'; readonly hazards: readonly Hazard[]; readonly leftOut: boolean }
  | { readonly kind: 'idle' }

/** How often the hand goes into the pan for so many portions. */
export const handCount = (tool: PortionRule, portions: number): number => {
  switch (tool.tool) {
    case 'scoop':
    case 'ladle':
    case 'spoodle':
    case 'measure':
      return tool.level * portions
    case 'bottle':
      return tool.squeezes * portions
    case 'piece':
    case 'tongs-pieces':
      return tool.pieces * portions
    case 'tongs':
    case 'cup':
      return portions
  }
}

const hazardOf = (state: RunningState, { need, why, touches }: Finding): Hazard => ({
  code: need,
  why,
  touches: touches === null ? null : componentOf(state.station, touches).name,
})

const isAccepted = (acceptance: Acceptance | null, finding: Finding): boolean =>
  finding.why !== 'contains' &&
  finding.why !== 'contact-unknown' &&
  (acceptance?.findings.some((one) => isCovered(finding, one)) ?? false)

/** The pan that a component is taken from: of several, the first that still holds some. */
export const isTakenFrom = (state: RunningState, pan: Pan): boolean => {
  const same = linePansOf(state.station, pan.component)
  const first =
    same.find((one) => usableIn(state, 'pan', one.id) > 0) ??
    same.find((one) => (state.pans[one.id]?.amount ?? 0) > 0) ??
    same[0]
  return first?.id === pan.id
}

const keptApart = (needs: readonly Need[]): readonly Need[] =>
  needs.filter((need) => need.handling === 'keep-apart')

/** What was begun out of a back-up pan goes on out of that while it holds any, whatever the line is by then. */
const goesOnBehind = (state: RunningState, component: string, begun: readonly string[]): boolean =>
  begun.includes(component) && behindOf(state, component) > 0

/**
 * Components that a build takes from their protected back-up pans, in the order of the line.
 * @param begun those that it was begun to take so
 */
export const backupsTaken = (
  state: RunningState,
  choice: BuildChoice,
  begun: readonly string[] = [],
): readonly string[] => {
  const kitchen = kitchenOf(state)
  const taken = takenComponents(choice)
  const onLine = [...new Set(pansOf(state.station).map((pan) => pan.component))]
  return onLine.filter(
    (id) =>
      taken.includes(id) &&
      (goesOnBehind(state, id, begun) || judgeComponent(kitchen, id, choice.needs).fromBackup),
  )
}

/** The pans on the line as they are, whatever stands ready behind it. */
const lineOnly = (kitchen: Kitchen): Kitchen =>
  kitchen.ready.length === 0 ? kitchen : { ...kitchen, ready: [] }

/** Tools that stand in for a component's own, as often as the hand takes them for so many portions. */
const standInMeasures = (
  state: RunningState,
  component: string,
  portions: number,
): readonly HandMeasure[] =>
  (state.standIns[component]?.measures ?? []).flatMap(({ id, count }) => {
    const tool = state.station.tools.find((one) => one.id === id)?.tool
    return tool ? [{ count: count * portions, tool }] : []
  })

const standsAs = (state: RunningState, pan: string): TakePan['stands'] => {
  if (boundAt(state, 'pan', pan) !== undefined) return 'throw-out'
  if ((state.pans[pan]?.offSale ?? null) !== null) return 'off-sale'
  const isInDoubt = isForSale(state, 'pan', pan) && clockDoubt(state, 'pan', pan) !== null
  return isInDoubt ? 'clock' : 'sold'
}

interface Taking {
  readonly choice: BuildChoice
  readonly begun: readonly string[]
  readonly lacking: string | null
}

const takePan = (
  state: RunningState,
  pan: Pan,
  component: Component,
  { choice, begun, lacking }: Taking,
): TakePan => {
  const portions = portionsTaken(choice, component.id)
  const judged = judgeComponent(kitchenOf(state), component.id, choice.needs)
  const { findings } = judged
  const fromBackup = judged.fromBackup || goesOnBehind(state, component.id, begun)
  const acceptance = acceptedUnder(state, choice)
  const open = findings.filter((one) => one.level !== 'note')
  const hazards = (accepted: boolean) =>
    open
      .filter((one) => isAccepted(acceptance, one) === accepted)
      .map((one) => hazardOf(state, one))
  const [first, ...instead] = standInMeasures(state, component.id, portions)
  return {
    kind: 'take',
    count: first?.count ?? handCount(component.portion, portions),
    tool: first?.tool ?? component.portion,
    instead: first ? instead : null,
    stands: fromBackup ? 'sold' : standsAs(state, pan.id),
    onTheSide: choice.parts[component.id]?.placement === 'side',
    warm: component.warm,
    lacking: lacking === component.id,
    fromBackup,
    hazards: hazards(false),
    accepted: hazards(true),
    plainHandle: keptApart(choice.needs).length > 0,
  }
}

/** What a component is to a need by what it is made of. */
const BY_ITSELF: readonly Finding['why'][] = ['contains', 'unknown', 'may-contain']

/**
 * What one pan is to a build: taken from, left out, kept away, or none of its business. For a
 * keep-apart build every pan stays shut that may have it in it, or that shares contact with what
 * does, whether the item has it or not.
 * @throws where the document is damaged, so that nothing is known
 */
export const panForBuild = (
  state: RunningState,
  pan: Pan,
  choice: BuildChoice,
  lacking: string | null,
  begun: readonly string[] = [],
): PanForBuild => {
  const component = componentOf(state.station, pan.component)
  if (portionsTaken(choice, component.id) > 0 && isTakenFrom(state, pan))
    return takePan(state, pan, component, { choice, begun, lacking })
  const kitchen = lineOnly(kitchenOf(state))
  const chosen = choice.parts[component.id]
  const isUsual = itemOf(state.station, choice.item).parts.some(
    (part) => part.component === component.id && part.usual !== 'no',
  )
  const isLeftOut = isUsual && chosen?.placement === 'no'
  const { findings } = judgeComponent(kitchen, component.id, choice.needs)
  const hazards = findings
    .filter((one) => one.handling === 'keep-apart' && !isFine(one.level))
    .map((one) => hazardOf(state, one))
  if (hazards.length > 0) return { kind: 'away', hazards, leftOut: isLeftOut }
  return isLeftOut
    ? {
        kind: 'no',
        because:
          chosen.because === 'gone' && state.notSelling.component[component.id] !== undefined
            ? 'not-selling'
            : chosen.because,
        leaveOut: findings.filter(({ why }) => BY_ITSELF.includes(why)).map((one) => one.need),
      }
    : { kind: 'idle' }
}

/** Pans that a wrong scoop went into, with the names of what it was a scoop of. */
export const soiledPans = (state: RunningState): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(
    pansOf(state.station).flatMap(({ id }) => {
      const by = state.pans[id]?.soiledBy ?? []
      return by.length === 0 ? [] : [[id, by.map((one) => componentOf(state.station, one).name)]]
    }),
  )
