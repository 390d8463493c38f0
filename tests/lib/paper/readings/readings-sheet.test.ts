import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heightMm } from '#lib/paper/page/fit-text.ts'
import { widthEm } from '#lib/paper/page/letter-widths.ts'
import { type Box, frameOf, MM_PER_PT, PAPERS } from '#lib/paper/page/papers.ts'
import { readingsFacts } from '#lib/paper/readings/readings-facts.ts'
import { type AskedReading, readingsPages } from '#lib/paper/readings/readings-layout.ts'
import { readingsSheetEn as words } from '#lib/paper/words/readings-sheet-en.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { demoStation } from '#server/demo-station.ts'

const HOUR = 3_600_000
const OPENS = Date.parse('2026-12-04T17:00:00Z')
const plan = { opensAt: OPENS, closesAt: OPENS + HOUR }

const asked = (rows: readonly AskedReading[], rounds: number) => ({
  rows,
  heads: words.heads,
  rounds: Array.from({ length: rounds }, (_, at) =>
    words.round(at + 1, OPENS + at * HOUR, 'America/Chicago'),
  ),
})

const overlap = (one: Box, other: Box): boolean =>
  one.x < other.x + other.width - 1e-6 &&
  other.x < one.x + one.width - 1e-6 &&
  one.y < other.y + other.height - 1e-6 &&
  other.y < one.y + one.height - 1e-6

describe('a log of readings on paper', () => {
  it('[PA51] every pan and back-up that is read is on it in line order with its limit; dry food isn’t', () => {
    const { rows } = readingsFacts(demoStation, plan)
    const pans = rows.flatMap((row) => (row.what === 'pan' ? [words.name(row)] : []))
    const read = demoStation.line.wells
      .flatMap((well) => well.pans)
      .flatMap(({ component }, at) => {
        const found = demoStation.components.find(({ id }) => id === component)
        return found === undefined || found.held === 'dry' ? [] : [`${at + 1} ${found.name}`]
      })
    expect(read.length).toBeGreaterThan(5)
    expect(pans).toEqual(read)
    const backups = rows.filter(({ what }) => what === 'backup')
    expect(backups).toHaveLength(demoStation.backups.filter(({ kept }) => kept !== 'boxed').length)
    const rice = rows.find((row) => row.what === 'pan' && row.name === 'Brown rice')
    expect(rice && words.limit(rice, 'F')).toBe('135 °F or above')
    expect(rows.filter(({ what }) => what === 'sanitizer')).toHaveLength(1)
  })

  it('[PA51] by time alone its hour is written, no temperature', () => {
    const byTime = stationSchema.parse({
      ...demoStation,
      line: {
        wells: demoStation.line.wells.map((well, at) =>
          at === 1 ? { ...well, held: 'time' } : well,
        ),
      },
    })
    const times = readingsFacts(byTime, plan).rows.filter(({ what }) => what === 'time')
    expect(times.length).toBeGreaterThan(0)
    expect(times.every((row) => words.unit(row, 'F') === null)).toBe(true)
  })

  it('[PA51] a round each time that a reading falls due, none after the close', () => {
    const every = demoStation.safety.readings.everyMin
    const due = (hours: number) =>
      readingsFacts(demoStation, { opensAt: OPENS, closesAt: OPENS + hours * HOUR }).rounds
    const told = due(3).filter((by) => by !== null)
    expect(told).toHaveLength(Math.ceil(180 / every))
    expect(told[0]).toBe(OPENS + every * 60_000)
    expect(told.at(-1)).toBe(OPENS + 3 * HOUR)
    expect(due(0.01).filter((by) => by !== null)).toHaveLength(1)
    // Three stand beside one another: what isn't due is there to write in.
    for (const hours of [0.01, 1, 3, 9]) expect(due(hours).length % 3).toBe(0)
  })

  it('[PA51] each thing has in each round a blank for its time, what was read and initials', () => {
    const rows = [
      { id: 'a', name: 'Brown rice', limit: setUpSheetEn.title, unit: '°F' },
      { id: 'b', name: 'Eggs', limit: 'by time', unit: null },
      { id: 'c', name: '', limit: '', unit: '°F' },
    ]
    const pages = readingsPages('letter', asked(rows, 5))
    expect(pages).toHaveLength(1)
    const blanks = (id: string) =>
      (pages[0]?.rows ?? []).flatMap((row) =>
        row.id === id ? [row.blanks.map(({ of }) => of).join(' ')] : [],
      )
    const round = 'time read initials'
    expect(blanks('a')).toEqual([[round, round, round].join(' '), [round, round].join(' ')])
    expect(blanks('b')[1]).toBe('time initials time initials')
    expect(blanks('c')[1]).toBe(`what ${round} ${round}`)
  })

  it('[PA2] [PA51] whatever is read and however often, nothing is outside the page or on anything else', () => {
    const anyRow = fc
      .record({
        name: fc.string({ unit: 'grapheme-ascii', maxLength: 40 }),
        limit: fc.constantFrom('135 °F or above', 'By time alone: when it is thrown out', ''),
        unit: fc.constantFrom('°F', 'ppm', null),
      })
      // What is written in by hand has no limit printed.
      .map((row) => (row.name.trim() === '' ? { ...row, name: '', limit: '' } : row))
    fc.assert(
      fc.property(
        fc.array(anyRow, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 1, max: 12 }),
        fc.constantFrom(...PAPERS),
        (all, rounds, paper) => {
          const rows = all.map((row, at) => ({ ...row, id: `row-${at}` }))
          const { body } = frameOf(paper)
          const pages = readingsPages(paper, asked(rows, rounds))
          const drawn = pages.flatMap((page) => page.rows)
          for (const { id } of rows)
            expect(drawn.filter((row) => row.id === id)).toHaveLength(Math.ceil(rounds / 3))
          for (const page of pages)
            for (const [at, row] of page.rows.entries()) {
              const below = page.rows[at + 1]
              if (below) expect(row.box.y + row.box.height).toBeLessThanOrEqual(below.box.y + 1e-6)
              expect(row.box.y + row.box.height).toBeLessThanOrEqual(body.y + body.height + 1e-6)
              const inks = row.texts.map((text) => ({
                ...text,
                height: heightMm(text),
                width: Math.max(
                  ...text.lines.map((line) => widthEm(line, text.weight) * text.pt * MM_PER_PT),
                ),
              }))
              const boxes = [...inks, ...row.blanks]
              for (const [nth, one] of boxes.entries()) {
                expect(one.x + one.width).toBeLessThanOrEqual(body.x + body.width + 0.1)
                expect(one.y + one.height).toBeLessThanOrEqual(row.box.y + row.box.height + 1e-6)
                for (const other of boxes.slice(nth + 1)) expect(overlap(one, other)).toBe(false)
              }
            }
        },
      ),
      { numRuns: 60 },
    )
  })
})
