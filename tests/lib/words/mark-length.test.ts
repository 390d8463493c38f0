/** Marks are written by hand: how many letters they take. */
import { describe, expect, it } from 'vitest'
import type { BuildChoice, Placement } from '#lib/service/events/build-choice.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import { markOf } from '#lib/service/mark.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Item, Part, StationDocument } from '#lib/station/station-document.ts'
import { markLines } from '#lib/words/service-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { generatedStation } from '#tests/lib/needs/oracle/generated-stations.ts'

/** Letters that a hand writes in a moment, after the number. */
const SHORT = 25

const placements = (station: StationDocument, { component, required, usual }: Part) => {
  const cup = station.components.find(({ id }) => id === component)?.side
  const all: readonly Placement[] = ['in', ...(cup ? (['side'] as const) : []), 'no']
  return all.filter((one) => one !== usual && !(required && one === 'no'))
}

type Change = (choice: BuildChoice) => BuildChoice

/** Each single thing that a guest can have otherwise than usual. */
const changesOf = (station: StationDocument, item: Item): readonly Change[] => [
  ...(item.base?.choices ?? [])
    .filter((base) => base !== item.base?.usual)
    .map(
      (base): Change =>
        (choice) => ({ ...choice, base }),
    ),
  ...item.parts.flatMap((part) =>
    placements(station, part).map(
      (placement): Change =>
        (choice) =>
          ({
            ...choice,
            parts: {
              ...choice.parts,
              [part.component]: {
                placement,
                portions: placement === 'no' ? 0 : 1,
                because: 'asked',
              },
            },
          }) as BuildChoice,
    ),
  ),
]

/** The mark of every build of a station with at most two things otherwise. */
const marksOf = (station: StationDocument): readonly (readonly string[])[] =>
  station.items.flatMap((item) => {
    const usual = usualChoice(item)
    const ones = changesOf(station, item)
    const builds = [
      usual,
      ...ones.map((one) => one(usual)),
      ...ones.flatMap((one, at) => ones.slice(at + 1).map((other) => other(one(usual)))),
    ]
    return builds.map((choice) => markLines(markOf({ station } as RunningState, 21, 'A', choice)))
  })

const lengthOf = (lines: readonly string[]): number => lines.join(' · ').length

const shareOf = (marks: readonly (readonly string[])[]): number =>
  marks.filter((lines) => lengthOf(lines) <= SHORT).length / marks.length

describe('how long marks are', () => {
  const generated = Array.from({ length: 200 }, (_, seed) => generatedStation(seed))

  it('[W9] a line never takes more than 25 letters for what a build is made of', () => {
    for (const marks of [demoStation, ...generated].map(marksOf))
      expect(marks.flat().filter((line) => line.length > SHORT)).toEqual([])
  })

  it('[W9] of builds with up to two things otherwise most take at most 25 letters in all', () => {
    expect(shareOf(marksOf(demoStation))).toBeGreaterThan(0.82)
    expect(shareOf(generated.flatMap(marksOf))).toBeGreaterThan(0.66)
  })

  it('[W9] two components with one word for wraps are written by their short names', () => {
    const alike = demoStation.components.map((one) =>
      one.id === 'almonds' || one.id === 'slaw' ? { ...one, mark: 'mix' } : one,
    )
    const station = { ...demoStation, components: alike }
    const lines = marksOf(station).flat()
    expect(lines).toContain('NO SESAME SLAW')
    expect(lines.filter((line) => line.includes('MIX'))).toEqual([])
    expect(marksOf(demoStation).flat()).toContain('NO SLAW')
  })

  it('[W9] a word for wraps that is another one’s name is not written of either', () => {
    const named = (id: string, names: object) => ({
      ...demoStation,
      components: demoStation.components.map((one) => (one.id === id ? { ...one, ...names } : one)),
    })
    const called = marksOf(named('cheddar', { short: ['SLAW'], name: 'Cheddar slaw' })).flat()
    expect(called).toContain('NO SESAME SLAW')
    expect(called).toContain('NO CHEDDAR SLAW')
    expect(called).not.toContain('NO SLAW')
    const alike = marksOf(named('cheddar', { short: ['Sesame', 'slaw'], mark: 'slaw' })).flat()
    expect(alike).toContain('NO CHEDDAR')
    expect(alike).toContain('NO SESAME SLAW')
    expect(alike).not.toContain('NO SLAW')
  })
})
