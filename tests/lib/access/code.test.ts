import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  CODE_LENGTH,
  CODE_LETTERS,
  codeFrom,
  readCode,
  SECRET_LENGTH,
  shownCode,
} from '#lib/access/code.ts'

describe('a code', () => {
  test('[D1] is made of letters of which none is taken for another', () => {
    expect(new Set(CODE_LETTERS).size).toBe(25)
    expect([...'0O1IL2Z5S8B'].filter((one) => CODE_LETTERS.includes(one))).toEqual([])
    expect(Math.log2(CODE_LETTERS.length ** CODE_LENGTH)).toBeGreaterThan(37)
    expect(Math.log2(CODE_LETTERS.length ** SECRET_LENGTH)).toBeGreaterThan(74)
  })

  test('[D1] has every letter as often as another, whatever byte is drawn', () => {
    const bytes = Uint8Array.from({ length: 256 }, (_, byte) => byte)
    const all = codeFrom(() => bytes, 250)
    const counts = new Map<string, number>()
    for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1)
    expect(counts.size).toBe(CODE_LETTERS.length)
    expect(new Set(counts.values())).toEqual(new Set([10]))
  })

  test('[D1] is the same however it is typed', () => {
    const codes = fc
      .array(fc.constantFrom(...CODE_LETTERS), { minLength: CODE_LENGTH, maxLength: CODE_LENGTH })
      .map((letters) => letters.join(''))
    fc.assert(
      fc.property(codes, (code) => {
        const shown = shownCode(code)
        expect(shown).toMatch(/^.{4}-.{4}$/)
        const typed = [
          shown,
          shown.toLowerCase(),
          code,
          ` ${shown.replace('-', ' ')} `,
          shown.replace('-', ' – '),
          // Wide letters of another keyboard.
          [...code].map((one) => String.fromCharCode(one.charCodeAt(0) + 0xfee0)).join(''),
        ]
        for (const one of typed) expect(readCode(one, CODE_LENGTH)).toBe(code)
      }),
    )
  })

  test('[D1] of another length, or with another letter, is none', () => {
    for (const typed of ['', 'ACDE-347', 'ACDE-34799', 'ACDE-347O', 'ACDE-3470', 'ACDE\u0000-3479'])
      expect(readCode(typed, CODE_LENGTH), typed).toBeNull()
    expect(readCode(`ACDE-3479${' '.repeat(100)}`, CODE_LENGTH)).toBeNull()
  })
})
