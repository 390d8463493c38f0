/** The small line on a wrap: which pans it was made from, and what of it its mark names. */
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { differencesOf, writtenName } from '#lib/service/mark.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A way in which a build differs from the usual one, as its mark names it. */
export type Difference = 'no' | 'added' | 'extra' | 'side'

export interface StripPan {
  readonly pan: string
  /** `usual` is in it as it comes, `not` isn't in it. */
  readonly is: Difference | 'usual' | 'not'
}

export interface Named {
  readonly component: string
  /** As it stands on the line, on one line: "Yogurt sauce". */
  readonly short: string
  /** As it is written on the wrap: "sauce". */
  readonly brief: string
  readonly is: Difference
}

export interface Strip {
  /** Every pan of the line, left to right. */
  readonly pans: readonly StripPan[]
  /** What differs, in the order of the mark. */
  readonly named: readonly Named[]
}

const shortOf = (station: StationDocument, id: string): string => {
  const { short, name } = componentOf(station, id)
  return short.length > 0 ? short.join(' ') : name
}

const marked = (station: StationDocument, choice: BuildChoice): ReadonlyMap<string, Difference> => {
  const { without, added, extra, onTheSide } = differencesOf(station, choice)
  // A component that is named twice, as more and on the side, is drawn as what is written last.
  return new Map<string, Difference>([
    ...without.map((id) => [id, 'no'] as const),
    ...added.map((id) => [id, 'added'] as const),
    ...extra.map((id) => [id, 'extra'] as const),
    ...onTheSide.map((id) => [id, 'side'] as const),
  ])
}

/** By the same rule as the mark: what it names is drawn solid and named, and nothing else is. */
export const stripOf = (station: StationDocument, choice: BuildChoice): Strip => {
  const differs = marked(station, choice)
  const isIn = (id: string) => choice.base === id || (choice.parts[id]?.placement ?? 'no') !== 'no'
  return {
    pans: pansOf(station).map(({ id, component }) => ({
      pan: id,
      is: differs.get(component) ?? (isIn(component) ? 'usual' : 'not'),
    })),
    named: [...differs].map(([component, is]) => {
      const short = shortOf(station, component)
      return { component, short, brief: writtenName(station, component), is }
    }),
  }
}

/**
 * As many of these as go on so many lines of so many letters, each on lines of its own; where not
 * all do, the last line is left free for how many more there are.
 */
export const withinLines = (
  texts: readonly string[],
  { lines, letters }: { readonly lines: number; readonly letters: number },
): { readonly shown: readonly string[]; readonly more: number } => {
  const linesOf = (text: string): number => {
    let [rows, at] = [1, 0]
    for (const word of text.split(' ')) {
      const joined = at === 0 ? word.length : at + 1 + word.length
      if (joined > letters) rows++
      at = joined > letters ? word.length : joined
    }
    return rows
  }
  const upTo = (count: number) =>
    texts.slice(0, count).reduce((sum, text) => sum + linesOf(text), 0)
  if (upTo(texts.length) <= lines) return { shown: texts, more: 0 }
  const fits = texts.findIndex((_, index) => upTo(index + 1) > lines - 1)
  return { shown: texts.slice(0, fits), more: texts.length - fits }
}
