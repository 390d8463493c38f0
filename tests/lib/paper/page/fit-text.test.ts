import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  fitted,
  heightMm,
  inBox,
  lineMm,
  stacked,
  unbroken,
  wrapped,
} from '#lib/paper/page/fit-text.ts'
import { widthEm } from '#lib/paper/page/letter-widths.ts'
import { LEAST_PT, MM_PER_PT } from '#lib/paper/page/papers.ts'

const anyName = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 60 })
const anyWidth = fc.double({ min: 8, max: 120, noNaN: true })
const bare = (text: string): string => text.replace(/\s+/g, '')

describe('text on paper', () => {
  it('[PA1] nothing of it is left away, and no line is wider than its column unless one sign is', () => {
    fc.assert(
      fc.property(anyName, anyWidth, (text, width) => {
        const { lines, pt, weight } = fitted({ text, pt: 12, weight: 'bold', lines: 2 }, width)
        expect(bare(lines.join(''))).toBe(bare(text))
        for (const line of lines)
          if ([...line].length > 1)
            expect(widthEm(line, weight) * pt * MM_PER_PT).toBeLessThanOrEqual(width)
      }),
    )
  })

  it('[PA1] it shrinks by half points to the least size, and then takes more lines', () => {
    const name = 'Sweet potato'
    expect(fitted({ text: name, pt: 11 }, 60)).toMatchObject({ pt: 11, lines: [name] })
    expect(fitted({ text: name, pt: 11 }, 22)).toMatchObject({ pt: 10.5, lines: [name] })
    expect(fitted({ text: name, pt: 11 }, 16)).toMatchObject({
      pt: LEAST_PT,
      lines: ['Sweet', 'potato'],
    })
    expect(fitted({ text: name, pt: 11, lines: 2 }, 22)).toMatchObject({ pt: 11 })
    fc.assert(
      fc.property(anyName, anyWidth, (text, width) => {
        expect(fitted({ text, pt: 20 }, width).pt).toBeGreaterThanOrEqual(LEAST_PT)
      }),
    )
  })

  it('[PA1] a word is broken only where it is wider than the column at the least size', () => {
    const long = 'Marinatedsmokedpaprikachickenthighs'
    expect(wrapped(long, 20, LEAST_PT).length).toBeGreaterThan(1)
    expect(fitted({ text: `${long} a`, pt: 12, lines: 9 }, 50).lines[0]).toBe(long)
  })

  it('[PA1] an amount stays with what it is of where a line is wide enough for both, else it breaks as words do', () => {
    const said = `${unbroken('Dressed mayonnaise 2 cups')} · ${unbroken('Pickle relish 1 cup')}`
    expect(wrapped(said, 50, 10)).toEqual(['Dressed mayonnaise 2 cups ·', 'Pickle relish 1 cup'])
    expect(wrapped(unbroken('Dressed mayonnaise 2 cups'), 34, 10)).toEqual([
      'Dressed mayonnaise',
      '2 cups',
    ])
  })

  it('[PA1] a box takes lines that fit it, and says where none do', () => {
    expect(inBox(['Herb', 'chicken'], { width: 26, height: 12 }, 9.5)?.pt).toBe(9.5)
    expect(inBox(['Toasted', 'almonds'], { width: 12, height: 12 }, 9.5)?.pt).toBeLessThan(9.5)
    expect(inBox(['Toasted', 'almonds'], { width: 7, height: 12 }, 9.5)).toBeNull()
    expect(inBox(['Toasted', 'almonds'], { width: 30, height: lineMm(8) }, 9.5)).toBeNull()
  })

  it('texts stand below one another, and an empty one takes no room', () => {
    const asked = ['one', '', 'two'].map((text) => ({ text, pt: 10 }))
    const { texts, height } = stacked(asked, { x: 3, y: 5, width: 40 })
    expect(texts.map(({ y }) => y)).toEqual([5, 5 + lineMm(10)])
    expect(height).toBeCloseTo(texts.reduce((sum, one) => sum + heightMm(one), 0))
  })

  it('an unknown sign counts as wider than any that is known, an accent as its letter', () => {
    expect(widthEm('鶏', 'regular')).toBeGreaterThan(widthEm('W', 'bold'))
    expect(widthEm('é', 'regular') - widthEm('e', 'regular')).toBeLessThan(0.03)
  })
})
