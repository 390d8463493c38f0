/** A checker against the oracle, for whole stations: every answer that it gives is asked for. */

import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import type { Handling, Need } from '#lib/station/codes/codes.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'
import { type Asking, createAsking } from '#tests/lib/needs/oracle/asked.ts'
import type { Checker } from '#tests/lib/needs/oracle/checker.ts'
import { compareComponents } from '#tests/lib/needs/oracle/compare-components.ts'
import { compareVerdicts, searchesOf } from '#tests/lib/needs/oracle/compare-verdicts.ts'
import { createFound, type Found } from '#tests/lib/needs/oracle/found.ts'
import { placesOf } from '#tests/lib/needs/oracle/generated-stations.ts'
import { askedCodes } from '#tests/lib/needs/oracle/laws.ts'
import { CLASSES, type Place } from '#tests/lib/needs/oracle/oracle.ts'
import { createRandom } from '#tests/lib/needs/oracle/random.ts'
import { sayCase, wrongWay } from '#tests/lib/needs/oracle/said-case.ts'
import { tableOf } from '#tests/lib/needs/oracle/table.ts'

export interface Extent {
  /** Needs drawn for pairs at each state of the line; every pair of them is asked. */
  readonly pairedNeeds: number
  /** Every state of the line, or one that the seed chooses. */
  readonly states: 'all' | 'one'
  /** Stop after the first disagreement. */
  readonly first: boolean
}

const MOST_OPTIONAL = 8
const HANDLINGS: readonly Handling[] = ['keep-apart', 'leave-out']

const needsOf = (station: StationDocument): readonly Need[] =>
  askedCodes(station).flatMap((code) =>
    HANDLINGS.map((handling) => ({ code, handling, reason: null })),
  )

const sorted = (ids: readonly string[]): string => [...ids].sort().join(' ')

/** Every base with every subset of the optional parts, in the pan's place and in cups. */
const buildsOf = (station: StationDocument, item: Item, checker: Checker, found: Found) => {
  const optional = item.parts
    .filter((part) => !part.required && part.component !== item.heart)
    .slice(0, MOST_OPTIONAL)
  const usual = usualChoice(item)
  const hasCups = new Set(station.components.filter((one) => one.side).map((one) => one.id))
  const builds: (readonly string[])[] = []
  for (const base of item.base?.choices ?? [null])
    for (let mask = 0; mask < 2 ** optional.length; mask += 1) {
      const isTaken = (component: string): boolean => {
        const at = optional.findIndex((part) => part.component === component)
        return at < 0 ? usual.parts[component]?.placement !== 'no' : (mask & (1 << at)) !== 0
      }
      const choice = (isOnTheSide: boolean): BuildChoice => ({
        ...usual,
        base,
        parts: Object.fromEntries(
          item.parts.map(({ component }) => {
            const placed = isOnTheSide && hasCups.has(component) ? 'side' : 'in'
            return [
              component,
              isTaken(component)
                ? { placement: placed, portions: 1, because: 'asked' as const }
                : { placement: 'no' as const, portions: 0, because: 'asked' as const },
            ]
          }),
        ),
      })
      const expected = [
        ...(base === null ? [] : [base]),
        ...item.parts.map((part) => part.component).filter(isTaken),
      ]
      const taken = checker.taken(choice(false))
      for (const one of [taken, checker.taken(choice(true))])
        if (sorted(one) !== sorted(expected))
          found.disagree('unsafe accepted', () => `${item.id} takes ${expected}, counted ${one}`)
      builds.push(expected)
    }
  return builds
}

const compareBuild = (
  place: Place,
  item: string,
  taken: readonly string[],
  asking: Asking,
  checker: Checker,
  found: Found,
): void => {
  let expected = 4
  let backups = 0
  for (const one of taken) {
    expected = Math.min(expected, asking.rank(one))
    if (asking.isFromBackup(one)) backups += 1
  }
  const about = () => sayCase(place, asking.needs, `${item} of ${taken}`)
  const judged = checker.judgeTaken(place, taken, asking.needs)
  const rank = CLASSES.indexOf(judged.level)
  if (rank !== expected)
    found.disagree(
      wrongWay(rank, expected),
      () => `${about()}: ${judged.level}, the oracle ${CLASSES[expected]}`,
    )
  const misnamed = asking.misnamed(taken, judged.findings)
  if (misnamed !== null) found.disagree('named otherwise', () => `${about()}: ${misnamed}`)
  const { fromBackup } = judged
  if (
    fromBackup.length !== backups ||
    new Set(fromBackup).size !== backups ||
    !fromBackup.every((one) => taken.includes(one) && asking.isFromBackup(one))
  )
    found.disagree('back-up otherwise', () => `${about()}: [${fromBackup}], the oracle ${backups}`)
  const { counts } = found
  if (asking.needs.length === 1) counts.singles += 1
  else counts.pairs += 1
  if (expected === 0) counts.no += 1
  else if (expected === 1) counts.caution += 1
  else if (expected === 2) counts.ask += 1
  else counts.fine += 1
  if (backups > 0) counts.fromBackup += 1
}

/**
 * Every single need; every pair of some needs drawn by the seed; and of the first of them both ways
 * to handle it, which stand side by side.
 */
const askings = (needs: number, paired: number, seed: number): readonly (readonly number[])[] => {
  const all = Array.from({ length: needs }, (_, index) => index)
  const drawn = paired >= needs ? all : createRandom(seed + 2_000_000).some(all, paired)
  return [
    ...all.map((one) => [one]),
    ...drawn.flatMap((one, at) => drawn.slice(at + 1).map((other) => [one, other])),
    ...(drawn.length < all.length ? drawn.slice(0, 1).map((one) => [one, one ^ 1]) : []),
  ]
}

/** Compares everything at one station; `seed` draws the states of its line and the pairs. */
export const compareStation = (
  station: StationDocument,
  seed: number,
  checker: Checker,
  extent: Extent,
  found: Found,
): void => {
  const needs = needsOf(station)
  const items = station.items.map((item) => ({
    id: item.id,
    builds: buildsOf(station, item, checker, found),
  }))
  const searches = searchesOf(station)
  found.counts.stations += 1
  found.counts.items += items.length
  for (const { builds } of items) found.counts.builds += builds.length
  const isDone = (): boolean => extent.first && found.told.length > 0
  const places = placesOf(station, seed)
  for (const [nth, place] of places.entries()) {
    if (extent.states === 'one' && nth !== seed % places.length) continue
    found.counts.places += 1
    const table = tableOf(place, needs)
    for (const indexes of askings(needs.length, extent.pairedNeeds, seed * 3 + nth)) {
      if (isDone()) return
      const asking = createAsking(table, needs, indexes, station.cautions === 'block')
      try {
        if (indexes.length === 1) compareComponents(place, asking, checker, found)
        compareVerdicts(place, asking, searches, checker, found)
        for (const { id, builds } of items)
          for (const taken of builds) compareBuild(place, id, taken, asking, checker, found)
      } catch (problem) {
        found.disagree('thrown', () => `${sayCase(place, asking.needs, 'all')}: ${String(problem)}`)
      }
    }
  }
}

export const compareAll = (
  stations: readonly (readonly [StationDocument, number])[],
  checker: Checker,
  extent: Extent,
): Found => {
  const found = createFound()
  for (const [station, seed] of stations) {
    compareStation(station, seed, checker, extent, found)
    if (extent.first && found.told.length > 0) break
  }
  return found
}
