import { describe, expect, it } from 'vitest'
import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { SHELF } from '#lib/service/shelf.ts'

const reason = (what: SafetyReason['what']): SafetyReason => ({
  why: 'safety',
  what,
  of: 'shelf',
  id: SHELF,
  component: null,
  dueAt: 1,
})
const here = {
  name: (id: string) => id,
  time: () => '12:05',
  now: 1,
  making: () => null,
}

describe('words on the shelf of made food', () => {
  it('[F68] each duty has its own title, reason and short word, and none names the place’s key', () => {
    for (const what of ['reading-due', 'reading-missed', 'out-of-limits'] as const) {
      const one = reason(what)
      const said = [doNextWords.title(one, here), doNextWords.shortly(one, here)]
      for (const text of [...said, ...doNextWords.why(one, here)]) {
        expect(text).toMatch(/shelf|there/i)
        expect(text).not.toContain(SHELF)
        expect(text).not.toMatch(/off sale/)
      }
    }
    expect(doNextWords.why(reason('reading-due'), here).join(' ')).toContain('12:05')
  })

  it('[F67] what is held for it says so, and names the pans first where both are out', () => {
    const shelf = { reason: 'off-sale', components: [], shelf: true } as const
    expect(sayWhyHeld(shelf)).toBe('The shelf it is on is out of its limits.')
    expect(sayWhyHeld({ ...shelf, components: ['Rice'] })).toMatch(/^Rice: out of its limits/)
  })
})
