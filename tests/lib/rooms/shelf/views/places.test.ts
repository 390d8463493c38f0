import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boardsOf, type Places, settle, type Together } from '#lib/rooms/shelf/views/places.ts'

const plain = (...names: string[]): Together => ({ names, atEnd: false })
const end = (...names: string[]): Together => ({ names, atEnd: true })
const cells = (places: Places) =>
  Object.fromEntries(
    Object.entries(places).map(([name, { row, column }]) => [name, `${row}/${column}`]),
  )

describe('where parcels stand', () => {
  test('[H32] who leaves leaves a gap, which the next that fits takes', () => {
    const full = settle({}, [plain('1A'), plain('2A', '2B'), plain('3A')], 5)
    expect(cells(full)).toEqual({ '1A': '0/0', '2A': '0/1', '2B': '0/2', '3A': '0/3' })
    const gap = settle(full, [plain('2A', '2B'), plain('3A')], 5)
    expect(cells(gap)).toEqual({ '2A': '0/1', '2B': '0/2', '3A': '0/3' })
    const pair = settle(gap, [plain('2A', '2B'), plain('3A'), plain('4A', '4B')], 5)
    expect(cells(pair)).toMatchObject({ '4A': '1/0', '4B': '1/1' })
    const one = settle(gap, [plain('2A', '2B'), plain('3A'), plain('5A')], 5)
    expect(cells(one)).toMatchObject({ '5A': '0/0' })
  })

  test('[H31] a ticket isn’t broken over two boards where it fits on one', () => {
    const places = settle({}, [plain('1A', '1B', '1C', '1D'), plain('2A', '2B'), plain('3A')], 5)
    expect(cells(places)).toMatchObject({ '2A': '1/0', '2B': '1/1', '3A': '0/4' })
    const long = settle({}, [plain('1A', '1B', '1C', '1D')], 3)
    expect(cells(long)).toEqual({ '1A': '0/0', '1B': '0/1', '1C': '0/2', '1D': '1/0' })
  })

  test('[H33] what stands at the end has the last places, and as many boards as all need', () => {
    const places = settle({}, [plain('1A'), end('2A'), end('3A'), plain('4A')], 5)
    expect(cells(places)).toEqual({ '1A': '0/0', '2A': '0/4', '3A': '0/3', '4A': '0/1' })
    const moved = settle(places, [end('1A'), end('2A'), end('3A'), plain('4A')], 5)
    expect(cells(moved)).toEqual({ '1A': '0/2', '2A': '0/4', '3A': '0/3', '4A': '0/1' })
    const all = Array.from({ length: 15 }, (_, index) => end(`${index + 1}A`))
    expect(boardsOf(settle({}, all, 5))).toBe(3)
  })

  test('[H32] a board that nothing stands on is taken away', () => {
    const six = ['1A', '2A', '3A', '4A', '5A', '6A'].map((name) => plain(name))
    const places = settle({}, six, 5)
    expect(boardsOf(places)).toBe(2)
    expect(cells(settle(places, [plain('6A')], 5))).toEqual({ '6A': '0/0' })
    expect(boardsOf({})).toBe(0)
  })

  test('[R35] fifteen stand on three boards, two of them at the end', () => {
    const thirteen = Array.from({ length: 13 }, (_, at) => plain(`${at + 1}A`))
    expect(boardsOf(settle({}, [...thirteen, end('14A'), end('15A')], 5))).toBe(3)
  })

  test('[R35] so do fifteen of tickets that leave gaps: one is parted before there is a fourth board', () => {
    const triple = (number: number) => plain(`${number}A`, `${number}B`, `${number}C`)
    const stands = [1, 2, 3, 4].map(triple)
    const places = settle({}, [...stands, plain('5A'), plain('6A'), end('7A')], 5)
    expect(boardsOf(places)).toBe(3)
    expect(boardsOf(settle({}, [...stands, ...[5, 6].map(triple)], 5))).toBe(4)
  })

  test('[H32] whatever comes and goes, all have a place of their own and nobody else moves', () => {
    const ticket = fc.record({ span: fc.integer({ min: 1, max: 8 }), atEnd: fc.boolean() })
    const shelf = fc.uniqueArray(fc.integer({ min: 1, max: 20 }), { maxLength: 12 })
    fc.assert(
      fc.property(
        fc.array(ticket, { minLength: 20, maxLength: 20 }),
        fc.array(shelf, { minLength: 2, maxLength: 6 }),
        fc.integer({ min: 1, max: 6 }),
        (tickets, steps, columns) => {
          let places: Places = {}
          for (const step of steps) {
            const stands = step.map((number): Together => {
              const { span, atEnd } = tickets[number - 1] ?? { span: 1, atEnd: false }
              const names = [...'ABCDEFGH'].slice(0, span).map((letter) => `${number}${letter}`)
              return { names, atEnd }
            })
            const before = places
            places = settle(before, stands, columns)
            const names = stands.flatMap((one) => one.names).sort()
            expect(Object.keys(places).sort()).toEqual(names)
            const taken = Object.values(cells(places))
            expect(new Set(taken).size).toBe(taken.length)
            for (const { column } of Object.values(places)) expect(column).toBeLessThan(columns)
            const stayed = names.filter((name) => before[name])
            for (const name of stayed) expect(places[name]?.column, name).toBe(before[name]?.column)
            const order = (all: Places) =>
              stayed
                .map((name) => all[name]?.row ?? 0)
                .map((row, _, rows) => Math.sign(row - (rows[0] ?? 0)))
            expect(order(places)).toEqual(order(before))
          }
        },
      ),
      { numRuns: 150 },
    )
  })
})
