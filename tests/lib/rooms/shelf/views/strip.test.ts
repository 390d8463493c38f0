import { describe, expect, test } from 'vitest'
import { stripOf, withinLines } from '#lib/rooms/shelf/views/strip.ts'
import { linesOfParts, markOf } from '#lib/service/mark.ts'
import { pansOf } from '#lib/station/find.ts'
import { choose, demoStation, loadedService, running } from '#tests/support/service.ts'

const state = running(loadedService())
const stripFor = (...given: Parameters<typeof choose>) => stripOf(demoStation, choose(...given))
const inPans = (...given: Parameters<typeof choose>) =>
  Object.fromEntries(stripFor(...given).pans.map(({ pan, is }) => [pan.replace('pan-', ''), is]))

describe('the line on a wrap', () => {
  test('[H30] has every pan in its place, the usual ones pale', () => {
    expect(stripFor('garden-chicken').pans.map(({ pan }) => pan)).toEqual(
      pansOf(demoStation).map(({ id }) => id),
    )
    expect(inPans('garden-chicken')).toEqual({
      pita: 'usual',
      rice: 'not',
      chicken: 'usual',
      beans: 'not',
      peppers: 'usual',
      tuna: 'not',
      slaw: 'usual',
      cheddar: 'usual',
      almonds: 'not',
      'yogurt-sauce': 'usual',
    })
    expect(stripFor('garden-chicken').named).toEqual([])
  })

  test('[H30] what differs is solid and named, by its short name', () => {
    const choice = {
      ...choose('garden-chicken', {
        cheddar: 'no',
        'yogurt-sauce': 'side',
        almonds: 'in',
        slaw: 2,
      }),
      base: 'rice',
    }
    const { pans, named } = stripOf(demoStation, choice)
    const is = Object.fromEntries(pans.map((one) => [one.pan, one.is]))
    expect(is).toMatchObject({
      'pan-pita': 'not',
      'pan-rice': 'added',
      'pan-cheddar': 'no',
      'pan-almonds': 'added',
      'pan-slaw': 'extra',
      'pan-yogurt-sauce': 'side',
      'pan-chicken': 'usual',
    })
    expect(named.map(({ short, is: how }) => [short, how])).toEqual([
      ['Cheddar', 'no'],
      ['Brown rice', 'added'],
      ['Toasted almonds', 'added'],
      ['Sesame slaw', 'extra'],
      ['Yogurt sauce', 'side'],
    ])
  })

  test('[H30] it names what the mark names, of every item and each of its parts', () => {
    for (const item of demoStation.items)
      for (const { component } of item.parts)
        for (const word of ['no', 'side', 'in', 2] as const) {
          const choice = choose(item.id, { [component]: word })
          const mark = markOf(state, 1, 'A', choice)
          const names = new Set([...mark.without, ...mark.added, ...mark.extra, ...mark.onTheSide])
          const { named } = stripOf(demoStation, choice)
          expect(
            new Set(named.map(({ brief }) => brief)),
            `${item.id} ${component} ${word}`,
          ).toEqual(names)
          expect(linesOfParts(mark)).toBeGreaterThanOrEqual(named.length)
        }
  })
})

describe('what a wrap has room for', () => {
  const texts = ['no cheddar', 'with brown rice', 'yogurt sauce on the side']

  test('[H34] all of it where it fits', () => {
    expect(withinLines(texts, { lines: 6, letters: 13 })).toEqual({ shown: texts, more: 0 })
    expect(withinLines([], { lines: 1, letters: 13 })).toEqual({ shown: [], more: 0 })
  })

  test('[H34] else what fits over the line that says how many more', () => {
    expect(withinLines(texts, { lines: 2, letters: 13 })).toEqual({
      shown: ['no cheddar'],
      more: 2,
    })
    expect(withinLines(texts, { lines: 1, letters: 13 })).toEqual({ shown: [], more: 3 })
    expect(withinLines(['no cheddar'], { lines: 1, letters: 13 })).toMatchObject({ more: 0 })
    expect(withinLines(['with brown rice'], { lines: 1, letters: 13 })).toMatchObject({ more: 1 })
  })
})
