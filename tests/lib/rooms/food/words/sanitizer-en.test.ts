import { describe, expect, it } from 'vitest'
import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { sanitizerWords } from '#lib/rooms/food/words/sanitizer-en.ts'

const reason = (what: SafetyReason['what']): SafetyReason => ({
  why: 'safety',
  what,
  of: 'sanitizer',
  id: '@sanitizer',
  component: null,
  dueAt: 1,
})
const here = { name: (id: string) => id, time: () => '12:05', now: 1, making: () => null }

describe('words on the sanitizer', () => {
  it('[F76] its duties name it, and neither a key nor a sale', () => {
    for (const what of ['reading-due', 'out-of-limits'] as const) {
      const one = reason(what)
      const all = [doNextWords.title(one, here), doNextWords.shortly(one, here)]
      for (const text of all) expect(text).toMatch(/sanitizer/)
      for (const text of [...all, ...doNextWords.why(one, here)])
        expect(text).not.toMatch(/@|off sale|safe\b/)
    }
    expect(doNextWords.why(reason('reading-due'), here).join(' ')).toContain('12:05')
    expect(doNextWords.button(reason('reading-due'))).toBe('Read it now')
    expect(doNextWords.button(reason('out-of-limits'))).toBe('Read it again')
  })

  it('[F76] out of its limit it is made anew, and who decides is named', () => {
    const [way] = doNextWords.why(reason('out-of-limits'), here)
    expect(way).toMatch(/Make it anew.*its label.*person in charge and local code decide/)
  })

  it('[F75] what is wrong is said once it was written down', () => {
    expect(sanitizerWords.done(100, null)).toBe('The sanitizer: 100 mg/L')
    expect(sanitizerWords.done(10, 'too-weak')).toBe('The sanitizer: 10 mg/L. It is too weak.')
    for (const unread of ['water-not-read', 'ph-not-read', 'label-not-read'] as const)
      expect(sanitizerWords.wayOut(unread)).toMatch(/^Until that is read .*in charge/)
    expect(sanitizerWords.wayOut('too-weak')).toMatch(/^Make it anew/)
    const read = { mgPerL: 50, water: null, ph: null }
    expect(sanitizerWords.newest(read, '12:05')).toBe(
      'Read 12:05: 50 mg/L, water not read, pH not read.',
    )
    const whole = { mgPerL: 50, water: { tenths: 755, scale: 'F' as const }, ph: 7.5 }
    expect(sanitizerWords.newest(whole, '12:05')).toBe(
      'Read 12:05: 50 mg/L, water 75.5 °F, pH 7.5.',
    )
  })
})
