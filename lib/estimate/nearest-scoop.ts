import { portionMg, wholePortions } from '#lib/measure/portion.ts'
import { toolVolumeMl, type VolumeTool } from '#lib/measure/portion-tools.ts'
import { isInIt } from '#lib/needs/allergen-word.ts'
import { everyNeed, saysOf } from '#lib/needs/says.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface ToolAtHand {
  readonly id: string
  readonly tool: VolumeTool
  /** Components it has been in since it was washed. */
  readonly touched: readonly string[]
  /** Kept for allergen-free work only (a purple set): never lent to a pan. */
  readonly allergenOnly: boolean
}

export interface Missing {
  /** Whole milligrams of one portion as it should be. */
  readonly portionMg: number
  readonly gPerMl: number
  /** For which the tool is wanted. */
  readonly component: string
  /** What is left to sell, milligrams. */
  readonly remainingMg: number
}

export interface Measures {
  readonly id: string
  readonly count: number
}

export interface NearestScoop {
  readonly measures: readonly Measures[]
  readonly portionMg: number
  /** Against the portion as it should be: 0.05 is 5 percent heavy. */
  readonly error: number
  readonly portionsLeft: number
  readonly portionsBefore: number
}

export type NotLent =
  | { readonly id: string; readonly why: 'allergen-only' }
  | {
      readonly id: string
      readonly why: 'carries'
      readonly code: NeedCode
      /** Components: what it would carry out of, and into. */
      readonly from: string
      readonly into: string
    }

export interface Nearest {
  readonly best: NearestScoop | null
  readonly notLent: readonly NotLent[]
}

/** More than this many level measures a portion is no way to serve. Common practice, no source. */
export const MOST_MEASURES = 4

/** Errors that differ by less are as good as each other: the fewer measures win. */
const AS_GOOD = 0.01

/**
 * What a tool that has been in one component would carry into another: the first need, of all that
 * the station knows, that may be in the one while the other doesn't contain it itself.
 * May contain and unknown carry. Null where it carries nothing.
 * @throws where the document is damaged: a recipe or component that isn't there.
 */
export const carriedBy = (
  station: StationDocument,
  touched: string,
  into: string,
): NeedCode | null => {
  const from = saysOf(station, touched)
  const to = saysOf(station, into)
  return (
    everyNeed(station).find((code) => isInIt(from[code] ?? 'unknown') && to[code] !== 'contains') ??
    null
  )
}

const notLent = (station: StationDocument, tool: ToolAtHand, into: string): NotLent | null => {
  if (tool.allergenOnly) return { id: tool.id, why: 'allergen-only' }
  for (const component of tool.touched) {
    // It goes back to where it has been, and carries there what it took on the way.
    const ways = [
      [component, into],
      [into, component],
    ] as const
    for (const [out, to] of ways) {
      const code = carriedBy(station, out, to)
      if (code !== null) return { id: tool.id, why: 'carries', code, from: out, into: to }
    }
  }
  return null
}

const combinations = (ids: readonly string[]): readonly (readonly Measures[])[] => {
  const all: Measures[][] = []
  ids.forEach((id, place) => {
    for (let count = 1; count <= MOST_MEASURES; count++) {
      all.push([{ id, count }])
      for (const second of ids.slice(place + 1))
        for (let more = 1; count + more <= MOST_MEASURES; more++)
          all.push([
            { id, count },
            { id: second, count: more },
          ])
    }
  })
  return all
}

const effort = (measures: readonly Measures[]): number =>
  measures.reduce((sum, { count }) => sum + count, 0) * 2 + measures.length

interface Way {
  readonly measures: readonly Measures[]
  readonly mg: number
  readonly error: number
  readonly effort: number
}

const waysWith = (missing: Missing, volumes: ReadonlyMap<string, number>): readonly Way[] =>
  combinations([...volumes.keys()].sort())
    .map((measures) => {
      const ml = measures.reduce((sum, { id, count }) => sum + (volumes.get(id) ?? 0) * count, 0)
      const mg = portionMg(ml, missing.gPerMl, 1)
      return { measures, mg, error: mg / missing.portionMg - 1, effort: effort(measures) }
    })
    .filter(({ mg }) => mg > 0)

const said = (missing: Missing, { measures, mg, error }: Way): NearestScoop => ({
  measures,
  portionMg: mg,
  error,
  portionsLeft: wholePortions(missing.remainingMg, mg),
  portionsBefore: wholePortions(missing.remainingMg, missing.portionMg),
})

/** Of the nearest ones the one with the fewest measures first, then the nearer, then the lighter. */
const bestOf = (ways: readonly Way[]): Way | undefined => {
  const nearest = ways.reduce((least, one) => Math.min(least, Math.abs(one.error)), Infinity)
  return ways
    .filter(({ error }) => Math.abs(error) <= nearest + AS_GOOD)
    .sort(
      (one, other) =>
        one.effort - other.effort ||
        Math.abs(one.error) - Math.abs(other.error) ||
        one.mg - other.mg,
    )[0]
}

const toolsOf = ({ measures }: Pick<Way, 'measures'>): string =>
  measures.map(({ id }) => id).join(' ')

const lentFor = (station: StationDocument, missing: Missing, tools: readonly ToolAtHand[]) => {
  if (!(missing.portionMg > 0)) throw new RangeError('a portion is more than nothing')
  const refused = tools.map((one) => notLent(station, one, missing.component))
  const volumes = new Map<string, number>()
  tools.forEach((one, place) => {
    if (refused[place] === null) volumes.set(one.id, toolVolumeMl(one.tool))
  })
  return { ways: waysWith(missing, volumes), notLent: refused.filter((one) => one !== null) }
}

/**
 * For a missing scoop, the best of each set of one or two tools, as `nearestScoop` would choose it:
 * that one first, then the nearest, `most` at the most.
 * @throws as nearestScoop
 */
export const nearestScoops = (
  station: StationDocument,
  missing: Missing,
  tools: readonly ToolAtHand[],
  most: number,
): readonly NearestScoop[] => {
  const { ways } = lentFor(station, missing, tools)
  const best = bestOf(ways)
  if (!best) return []
  const sets = [...new Set(ways.map(toolsOf))].filter((one) => one !== toolsOf(best))
  const others = sets
    .flatMap((set) => bestOf(ways.filter((one) => toolsOf(one) === set)) ?? [])
    .sort(
      (one, other) =>
        Math.abs(one.error) - Math.abs(other.error) ||
        one.effort - other.effort ||
        one.mg - other.mg,
    )
  return [best, ...others].slice(0, most).map((one) => said(missing, one))
}

/**
 * For a missing scoop: the combination of level measures, of one or two tools at hand and four
 * measures at most, that comes nearest to the portion by weight; of those within 1 percent of the
 * nearest the one with the fewest measures, then the lighter. A tool that would carry an allergen,
 * or what a diet leaves out, into the component or back from it is never lent.
 * @throws RangeError unless the portion and the density are above 0, and for tools that can't be.
 * @throws where the document is damaged: a recipe or component that isn't there.
 */
export const nearestScoop = (
  station: StationDocument,
  missing: Missing,
  tools: readonly ToolAtHand[],
): Nearest => {
  const lent = lentFor(station, missing, tools)
  const best = bestOf(lent.ways)
  return { best: best ? said(missing, best) : null, notLent: lent.notLent }
}

export interface ScoopChoice extends NearestScoop {
  /** The same tool of the same size as its own, and nothing else is taken with it. */
  readonly isSpare: boolean
}
