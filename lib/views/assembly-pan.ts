import { componentOf, itemOf, pansOf } from '#lib/menu/find.ts'
import type { Component, Pan, PortionRule } from '#lib/menu/station-document.ts'
import type { NeedCode } from '#lib/needs/codes.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import { type Because, type BuildChoice, portionsTaken } from '#lib/service/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Why a pan stays shut beside a keep-apart build: what isn't declared free is a hazard. */
export interface Hazard {
  readonly code: NeedCode
  readonly declared: 'contains' | 'may-contain' | 'unknown'
}

export interface TakePan {
  readonly kind: 'take'
  /** Level scoops, tongs, pieces or cups: what the hand does, portions counted in. */
  readonly count: number
  readonly tool: PortionRule
  readonly onTheSide: boolean
  readonly warm: Component['warm']
  /** The pans hold too little of it for this build. */
  readonly lacking: boolean
  /** It is taken and isn't declared free of what is kept apart: the person in charge is asked. */
  readonly hazards: readonly Hazard[]
  /** A handle that reads as purple isn't drawn on a keep-apart build: purple marks allergen tools. */
  readonly plainHandle: boolean
}

/** What a pan is to one build. */
export type PanForBuild =
  | TakePan
  | { readonly kind: 'no'; readonly because: Because; readonly leaveOut: readonly NeedCode[] }
  | { readonly kind: 'away'; readonly hazards: readonly Hazard[]; readonly leftOut: boolean }
  | { readonly kind: 'idle' }

/** What of a component isn't declared free, of the needs that are handled so. */
const hazardsOf = (
  state: RunningState,
  component: string,
  choice: BuildChoice,
  handling: 'keep-apart' | 'leave-out',
): readonly Hazard[] =>
  choice.needs
    .filter((need) => need.handling === handling)
    .flatMap(({ code }) => {
      const { state: declared } = declaredBy(state.station, component, code)
      return declared === 'free' ? [] : [{ code, declared }]
    })

/** How often the hand goes into the pan for so many portions. */
export const handCount = (tool: PortionRule, portions: number): number => {
  switch (tool.tool) {
    case 'scoop':
      return tool.level * portions
    case 'piece':
      return tool.pieces * portions
    case 'tongs':
    case 'cup':
      return portions
  }
}

/** The pan that a component is taken from: of several, the first that still holds some. */
const isTakenFrom = (state: RunningState, pan: Pan): boolean => {
  const same = pansOf(state.station).filter((one) => one.component === pan.component)
  const first = same.find((one) => (state.pans[one.id]?.amount ?? 0) > 0) ?? same[0]
  return first?.id === pan.id
}

/**
 * What one pan is to a build: taken from, left out, kept away, or none of its business. For a
 * keep-apart build every pan that isn't declared free stays shut, whether the item has it or not.
 */
export const panForBuild = (
  state: RunningState,
  pan: Pan,
  choice: BuildChoice,
  lacking: string | null,
): PanForBuild => {
  const component = componentOf(state.station, pan.component)
  const hazards = hazardsOf(state, component.id, choice, 'keep-apart')
  const portions = portionsTaken(choice, component.id)
  const chosen = choice.parts[component.id]
  const isUsual = itemOf(state.station, choice.item).parts.some(
    (part) => part.component === component.id && part.usual !== 'no',
  )
  const isLeftOut = isUsual && chosen?.placement === 'no'
  if (portions > 0 && isTakenFrom(state, pan))
    return {
      kind: 'take',
      count: handCount(component.portion, portions),
      tool: component.portion,
      onTheSide: chosen?.placement === 'side',
      warm: component.warm,
      lacking: lacking === component.id,
      hazards,
      plainHandle: choice.needs.some((need) => need.handling === 'keep-apart'),
    }
  if (hazards.length > 0) return { kind: 'away', hazards, leftOut: isLeftOut }
  return isLeftOut
    ? {
        kind: 'no',
        because: chosen.because,
        leaveOut: hazardsOf(state, component.id, choice, 'leave-out').map((one) => one.code),
      }
    : { kind: 'idle' }
}
