import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'
import { fitPath, fitShelf, openEm, tileEm } from '#lib/rooms/shelf/views/pick-up-fit.ts'
import { arcMinutesOf } from '#tests/support/legible-sizes.ts'

const GUEST_M = 4

/** The shelf's box as the style sheet leaves it, px: of a tablet, and of a 24-inch television. */
const TABLET = { width: 698, height: 692, pxPerMm: DEFAULT_PX_PER_MM }
const TELEVISION = { width: 1069, height: 937, pxPerMm: 3.6 }

const singles = (count: number, figures = 2): number[] =>
  Array.from({ length: count }, () => tileEm(figures, 1))

const arc = (widths: readonly number[], { width, height, pxPerMm }: typeof TABLET): number =>
  arcMinutesOf(fitShelf(widths, width / height).size * height, pxPerMm, GUEST_M)

const someWidths = fc.array(
  fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 8 })),
  { maxLength: 24 },
)
const someShape = fc.double({ min: 0.4, max: 2.5, noNaN: true })

describe('the shelf', () => {
  test('[PU7] on a television one, four, eight and fifteen tickets are read from four metres', () => {
    for (const [count, least] of [
      [1, 45],
      [4, 30],
      [8, 23],
      [15, 19],
    ] as const)
      expect(arc(singles(count), TELEVISION), `${count}`).toBeGreaterThanOrEqual(least)
    expect(arc(singles(15, 3), TELEVISION)).toBeGreaterThanOrEqual(15)
  })

  test('[PU7] on a tablet one is read from four metres, and fifteen fill half of that angle', () => {
    for (const [count, least] of [
      [1, 20],
      [4, 12],
      [8, 10.5],
      [15, 8.3],
    ] as const)
      expect(arc(singles(count), TABLET), `${count}`).toBeGreaterThanOrEqual(least)
  })

  test('[PU7] every tile stands once and in order, within the box, and no plank is longer than it', () => {
    fc.assert(
      fc.property(someWidths, someShape, (tickets, shape) => {
        const widths = tickets.map(([figures, letters]) => tileEm(figures, letters))
        const { size, compartments } = fitShelf(widths, shape)
        const stands = compartments.flatMap(({ tile }) => tile ?? [])
        expect(stands).toEqual(widths.map((_, at) => at))
        // As the browser breaks the row: the next one where it no longer fits.
        const planks: number[] = []
        for (const { em } of compartments) {
          const last = planks.at(-1)
          if (last === undefined || last + em > shape / size + 1e-9) planks.push(em)
          else planks[planks.length - 1] = last + em
        }
        expect(Math.max(...planks) * size).toBeLessThanOrEqual(shape + 1e-9)
        expect(planks.length).toBeGreaterThanOrEqual(2)
        expect(planks.length * 1.48 * size).toBeLessThanOrEqual(1 + 1e-9)
      }),
    )
  })

  test('[PU7] no size that is 5 % larger would hold the same tickets', () => {
    const holds = (widths: readonly number[], shape: number, size: number): boolean => {
      let planks = 1
      let used = 0
      for (const em of widths) {
        if (used + em > shape / size) {
          planks += 1
          used = 0
        }
        used += em
      }
      return Math.max(planks, 2) * 1.48 * size <= 1 && Math.max(...widths) * size <= shape
    }
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 24 }), someShape, (count, shape) => {
        const { size } = fitShelf(singles(count), shape)
        expect(holds(singles(count), shape, size)).toBe(true)
        expect(holds(singles(count), shape, size * 1.05)).toBe(false)
      }),
    )
  })
})

describe('the path', () => {
  test('[PU8] the queue goes up from the line’s end, then along the top, and back above', () => {
    const places = (queued: number) =>
      fitPath(queued, 2, [], { aspect: 0.7, most: 1 }).places.map((one) => one.join(' '))
    const short = fitPath(4, 2, [], { aspect: 0.7, most: 1 })
    expect(short.along).toBe(0)
    expect(places(4)).toEqual(['0', '1', '2', '3'].map((up) => `${short.rows - Number(up)} 1`))
    const long = fitPath(18, 2, [], { aspect: 0.7, most: 1 })
    expect(long.along).toBe(2)
    const turn = long.rows - 1
    expect(places(18)[turn]).toBe('2 2')
    expect(places(18)[turn + long.columns - 1]).toBe(`1 ${long.columns}`)
  })

  test('[PU8] each number has a place of its own beside the next, clear of the wraps over the line', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 18 }),
        fc.integer({ min: 2, max: 3 }),
        fc.integer({ min: 0, max: 6 }),
        someShape,
        fc.double({ min: 0.02, max: 0.3, noNaN: true }),
        (queued, figures, making, shape, most) => {
          const open = Array.from({ length: making }, () => openEm(figures))
          const { size, places, cell, columns, along, riding } = fitPath(queued, figures, open, {
            aspect: shape,
            most,
          })
          expect(Math.max(size, riding.size)).toBeLessThanOrEqual(most)
          expect(new Set(places.map(String)).size).toBe(queued)
          for (const [at, [row, column]] of places.entries()) {
            expect(row <= along || column === 1).toBe(true)
            expect(column).toBeLessThanOrEqual(columns)
            const [nextRow, nextColumn] = places[at + 1] ?? [row, column + 1]
            expect(Math.abs(nextRow - row) + Math.abs(nextColumn - column)).toBe(1)
          }
          expect(columns * cell[0]).toBeLessThanOrEqual(shape)
          const high = riding.rows.length * riding.size * 1.85
          expect(along * cell[1] + high).toBeLessThanOrEqual(0.7 + 1e-9)
          for (const count of riding.rows)
            expect(cell[0] + count * openEm(figures) * riding.size).toBeLessThanOrEqual(
              shape + 1e-9,
            )
        },
      ),
    )
  })
})
