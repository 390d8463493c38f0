import { describe, expect, test } from 'vitest'
import { COMMON } from '#lib/access/common-passphrases.ts'
import { nameKept, nameKey, passphraseForm, passphraseProblem } from '#lib/access/passphrase.ts'

describe('what a passphrase may be', () => {
  test('[D4] 8 to 200 characters, counted as people do', () => {
    expect(passphraseProblem('7 chars')).toBe('too-short')
    expect(passphraseProblem('🥗🍅🥬🧀🌶🥙🥗')).toBe('too-short')
    expect(passphraseProblem('🥗🍅🥬🧀🌶🥙🥗🍋')).toBeNull()
    expect(passphraseProblem(`left of ${'the grill '.repeat(20)}`)).toBe('too-long')
    expect(passphraseProblem('left of the grill')).toBeNull()
  })

  test('[D4] the same however a keyboard composes its letters', () => {
    const forms = [
      'crème brûlée'.normalize('NFD'),
      'crème brûlée'.normalize('NFC'),
      'ｃｒème brûlée',
    ]
    expect(new Set(forms.map(passphraseForm)).size).toBe(1)
    expect(passphraseForm('creme brulee')).not.toBe(passphraseForm('crème brûlée'))
  })

  test.each([
    'password',
    'Password123',
    'P-a-s-s-w-o-r-d!',
    'chocolate2026',
    'basketball',
    'aaaaaaaa',
    'abababab',
    '12345678',
    '87654321',
    'qwertyuiop',
    'abcdefgh',
    '!!!!!!!!!',
  ])('[D4] none that is tried first, such as %s', (one) => {
    expect(passphraseProblem(one)).toBe('too-common')
  })

  test('[D4] a list of our own, each in the form in which it is compared', () => {
    expect(COMMON.size).toBeGreaterThan(250)
    expect([...COMMON].filter((one) => !/^[a-z0-9]+$/.test(one))).toEqual([])
    for (const good of ['walnut harbour mitten', 'two scoops, not three', 'Grüne Soße im Mai'])
      expect(passphraseProblem(good), good).toBeNull()
  })
})

describe('a name', () => {
  test('[D5] is kept with single spaces, up to 40 characters, and without what isn’t seen', () => {
    expect(nameKept('  Ms.   Park ')).toBe('Ms. Park')
    expect(nameKept('Counter\u202e\n2')).toBe('Counter 2')
    for (const none of ['', '   ', '\u0000', 'x'.repeat(41)]) expect(nameKept(none)).toBeNull()
  })

  test('[D5] is another’s where only capitals, width or spaces differ', () => {
    expect(new Set(['Ms. Park', 'ms.  park', 'ＭＳ. Park '].map(nameKey)).size).toBe(1)
    expect(nameKey('Ms. Park')).not.toBe(nameKey('Mr. Park'))
  })
})
