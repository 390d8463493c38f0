import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, itemOf } from '#lib/station/find.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

export interface Mark {
  /** "21A" */
  readonly name: string
  /** Usual components that this build goes without: as they are written on a wrap, here and in what follows. */
  readonly without: readonly string[]
  readonly onTheSide: readonly string[]
  /** In it, though the item usually has it on the side or not at all; another base than the usual. */
  readonly added: readonly string[]
  /** Components with more than one portion. */
  readonly extra: readonly string[]
  /** What the build is kept from or made without; never written as the allergen alone. */
  readonly keepFrom: readonly NeedCode[]
  readonly leaveOut: readonly NeedCode[]
}

const namesOf = ({ mark, short, name }: Component): readonly string[] => [
  ...(mark === undefined ? [] : [mark]),
  short.join(' '),
  name,
]

/**
 * Its word for wraps, unless another component of the station has the same word or name, as written
 * in capitals; else its short name, and its whole name where that is another's, too.
 */
export const writtenName = (station: StationDocument, id: string): string => {
  const component = componentOf(station, id)
  const others = new Set(
    station.components
      .filter((one) => one !== component)
      .flatMap((one) => namesOf(one).map((name) => name.toUpperCase())),
  )
  return namesOf(component).find((one) => !others.has(one.toUpperCase())) ?? component.name
}

/** The ways in which a build differs from the usual one, by the ids of components. */
export type Differences = Pick<Mark, 'without' | 'onTheSide' | 'added' | 'extra'>

/**
 * What a mark tells of a build's parts, by id, in the item's order: what differs from the usual one,
 * and every component that goes beside it.
 */
export const differencesOf = (station: StationDocument, choice: BuildChoice): Differences => {
  const item = itemOf(station, choice.item)
  const parts = item.parts.map((part) => ({ part, chosen: choice.parts[part.component] }))
  const ids = (some: typeof parts) => some.map(({ part }) => part.component)
  return {
    without: ids(
      parts.filter(({ part, chosen }) => part.usual !== 'no' && chosen?.placement === 'no'),
    ),
    onTheSide: ids(parts.filter(({ chosen }) => chosen?.placement === 'side')),
    added: [
      ...(choice.base === null || choice.base === item.base?.usual ? [] : [choice.base]),
      ...ids(parts.filter(({ part, chosen }) => part.usual !== 'in' && chosen?.placement === 'in')),
    ],
    extra: ids(parts.filter(({ chosen }) => chosen !== undefined && chosen.portions > 1)),
  }
}

/** What is written on the wrap, by the station's words for wraps, since it is written by hand. */
export const markOf = (
  state: RunningState,
  ticket: number,
  letter: string,
  choice: BuildChoice,
): Mark => {
  const { without, onTheSide, added, extra } = differencesOf(state.station, choice)
  const named = (ids: readonly string[]) => ids.map((id) => writtenName(state.station, id))
  return {
    name: buildName(ticket, letter),
    without: named(without),
    onTheSide: named(onTheSide),
    added: named(added),
    extra: named(extra),
    keepFrom: choice.needs.filter((one) => one.handling === 'keep-apart').map((one) => one.code),
    leaveOut: choice.needs.filter((one) => one.handling === 'leave-out').map((one) => one.code),
  }
}

/** How many of a mark's lines tell of its parts; the lines after those tell of its needs. */
export const linesOfParts = (mark: Mark): number =>
  mark.without.length + mark.added.length + mark.extra.length + mark.onTheSide.length

type Lists = Omit<Mark, 'name'>

const LISTS: readonly (keyof Lists)[] = [
  'without',
  'onTheSide',
  'added',
  'extra',
  'keepFrom',
  'leaveOut',
]

/** What a mark says that not every one of the others says too. */
export const differsFrom = (mark: Mark, others: readonly Mark[]): Mark => ({
  ...mark,
  ...Object.fromEntries(
    LISTS.map((list) => [
      list,
      mark[list].filter((said) => !others.every((other) => other[list].includes(said))),
    ]),
  ),
})
