import { describe, expect, it } from 'vitest'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { demoStation } from '#server/demo-station.ts'

const pansOf = (station: StationDocument) => setUpFacts(station).wells.flatMap(({ pans }) => pans)
const panOf = (station: StationDocument, name: string) => {
  const found = pansOf(station).find((pan) => pan.name === name)
  if (found === undefined) throw new Error(`no pan of ${name}`)
  return found
}

/** The demo, changed as text says it. */
const changed = (
  change: (station: ReturnType<typeof structuredClone<StationDocument>>) => object,
) => stationSchema.parse({ ...demoStation, ...change(structuredClone(demoStation)) })

describe('the line’s set-up sheet', () => {
  it('[PA3] every pan of the line is on it once, in the order in which they stand', () => {
    const pans = pansOf(demoStation)
    expect(pans.map(({ pan }) => pan)).toEqual(
      demoStation.line.wells.flatMap((well) => well.pans.map(({ id }) => id)),
    )
    expect(pans.map(({ number }) => number)).toEqual(pans.map((_, at) => at + 1))
  })

  it('[PA3] portion × portions = total, as the recipe’s page says it', () => {
    for (const pan of pansOf(demoStation))
      expect(recipeEn.portionTotal(null, 1, pan.load), pan.name).toBe(words.load(pan).join(' '))
    expect(words.load(panOf(demoStation, 'Brown rice'))).toEqual(['24 × 1/2 cup', '= 3 qt'])
    expect(words.load(panOf(demoStation, 'Pita'))).toEqual(['24 × 1', '= 24 pieces'])
  })

  it('[PA3] what it weighs is what the line is loaded with as usual, to the milligram', () => {
    const loads = openingCommands(demoStation, 0).flatMap((one) =>
      one.type === 'load' ? [one] : [],
    )
    expect(loads.length).toBeGreaterThan(0)
    for (const pan of pansOf(demoStation).filter(({ totalMg }) => totalMg !== null))
      expect(loads.find((one) => one.pan === pan.pan)?.amount, pan.name).toBe(pan.totalMg)
  })

  it('[PA3] a scoop is its number with its handle’s colour as a word', () => {
    expect(words.tool(panOf(demoStation, 'Brown rice').rule)).toEqual(['#16 blue scoop', '2 level'])
    expect(
      words.tool({ tool: 'scoop', number: 14, level: 1, gPerCup: 200, source: 'here' }),
    ).toEqual(['#14 scoop', '1 level'])
  })

  it('[PA4] each has its limit; dry food has none, and by time alone it says how long at most', () => {
    expect(panOf(demoStation, 'Pita').limit).toBeNull()
    expect(words.limit(panOf(demoStation, 'Herb chicken'), 'F')).toBe('135 °F or above')
    expect(words.limit(panOf(demoStation, 'Tuna salad'), 'F')).toBe('41 °F or below')
    expect(pansOf(demoStation).every(({ within }) => within === null)).toBe(true)
    const byTime = changed((station) => {
      const [first, second, ...rest] = station.line.wells
      if (first === undefined || second === undefined) throw new Error('too few wells')
      return { line: { wells: [first, { ...second, held: 'time' }, ...rest] } }
    })
    expect(panOf(byTime, 'Herb chicken').within?.withinMs).toBe(4 * 3_600_000)
    expect(panOf(byTime, 'Herb chicken').limit).not.toBeNull()
    expect(panOf(byTime, 'Pita').within).toBeNull()
    expect(panOf(byTime, 'Brown rice').within).toBeNull()
  })

  it('[PA4] a roast that is held from 130 °F goes into a well by time alone at 135 °F, as loading asks', () => {
    const roast = (held: 'hot' | 'time') =>
      changed((station) => ({
        components: station.components.map((one) =>
          one.name === 'Herb chicken'
            ? { ...one, food: { ...one.food, kind: 'fish-or-meat', roast: true } }
            : one,
        ),
        line: {
          wells: station.line.wells.map((well) =>
            well.pans.some(({ component }) => component === 'chicken') ? { ...well, held } : well,
          ),
        },
      }))
    expect(words.limit(panOf(roast('hot'), 'Herb chicken'), 'F')).toBe('130 °F or above')
    expect(words.limit(panOf(roast('time'), 'Herb chicken'), 'F')).toBe('135 °F or above')
  })

  it('[PA4] local code’s limit stands in place of the model code’s', () => {
    const local = changed(({ safety }) => ({
      safety: {
        ...safety,
        limits: {
          hotHolding: {
            bound: 'at-least',
            tenths: { F: 1400, C: 600 },
            document: 'A county code, invented',
            paragraph: '4',
            certainty: 'seen',
          },
        },
      },
    }))
    expect(words.limit(panOf(local, 'Herb chicken'), 'F')).toBe('140 °F or above')
  })

  it('[PA5] what touches what and what stands behind is said; that nobody has said it, too', () => {
    const peppers = panOf(demoStation, 'Roast peppers')
    expect(words.touches(peppers.touches)).toBe(
      'Touches: same griddle as pita; beside herb chicken and black beans.',
    )
    expect(peppers.behind).toHaveLength(1)
    const unsaid = changed(() => ({ contacts: null }))
    expect(setUpFacts(unsaid).contactsSaid).toBe(false)
    expect(pansOf(unsaid).every(({ touches }) => touches.length === 0)).toBe(true)
    const twice = changed((station) => {
      const [first, ...rest] = station.line.wells
      const pita = first?.pans[0]
      if (first === undefined || pita === undefined) throw new Error('no pita')
      const third = { ...pita, size: 'third' as const }
      const pans = [
        third,
        { ...third, id: 'second' },
        ...first.pans.slice(1).map((pan) => ({ ...pan, size: 'third' as const })),
      ]
      return { line: { wells: [{ ...first, pans }, ...rest] } }
    })
    expect(
      pansOf(twice)
        .filter(({ name }) => name === 'Pita')
        .map(({ behind }) => behind.length),
    ).toEqual([1, 0])
  })

  it('[PA3] a usual load that the pan doesn’t hold is told, by how many it holds', () => {
    const over = changed((station) => ({
      line: {
        wells: station.line.wells.map((well) => ({
          ...well,
          pans: well.pans.map((pan) => ({ ...pan, usualPortions: 400 })),
        })),
      },
    }))
    // 208 fl oz in a half pan 4 in deep, and 4 fl oz a portion.
    expect(panOf(over, 'Brown rice').overfull).toBe(52)
    expect(panOf(over, 'Pita').overfull).toBeNull()
    expect(panOf(demoStation, 'Brown rice').overfull).toBeNull()
  })
})
