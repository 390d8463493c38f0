/** Words that misread in a kitchen don't come back. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filesBelow, root } from '#tests/support/source-tree.ts'

/** What isn't said any more, and why. */
const RETIRED: readonly (readonly [RegExp, string])[] = [
  [/\b(kept|keep|keeps|keeping) (?!apart|from|away)/i, 'keep is keep apart only'],
  [/\bkept for\b/i, 'portions are saved'],
  [/\b(on|off) sale\b/i, 'on sale means cheaper: don’t serve'],
  [/\bnone left\b|\bnot today\b|\bit is gone\b/i, 'sold out, or not selling'],
  [/\bstands?\b(?!-in| covered)|\bstood\b(?! in for)/i, 'made food is on the shelf'],
  [/\bthe usual\b/i, 'as it comes'],
  [/\bSaid\. /, 'I said it: …, so that nobody taps it unread'],
  [/\bAsked: none\b/, 'asked for what? They said: none'],
  [/\bAllergy told\b/, 'Add an allergy'],
  [/\bWrong\?/, 'Problem'],
  [/\bbehind the line\b/i, 'back-ups and batches: people stand behind the line'],
  [/\btime only\b/i, 'start a 4-hour clock'],
  [/\bas it came\b/i, 'straight from the pack'],
  [/\bwrit(?:e|ten) (?:it )?down\b/i, 'a reading is recorded, by its number'],
  [/\bother scoop\b|\banother scoop\b/i, 'stand-in scoop, or wrong scoop'],
  [/\bon side\b/i, 'on the side in full'],
  [/\bmade without\b/i, 'short enough for a wrap: without'],
]

/** Texts of a file: quoted strings and templates, without what is calculated in them. */
const textsOf = (code: string): readonly string[] =>
  (
    code
      .replaceAll(/\/\*\*?[\s\S]*?\*\/|(?:^|\s)\/\/ .*$|^import [\s\S]*? from .*$/gm, '')
      .match(/'(?:[^'\\\n]|\\.)*'|`(?:[^`\\]|\\.)*`/g) ?? []
  )
    // Codes of what is told apart are no texts.
    .filter((text) => !/^'[a-z]+(-[a-z]+)+'$/.test(text))
    .map((text) => text.replaceAll(/\$\{[^{}]*\}/g, '…'))

const retiredIn = (text: string): readonly string[] =>
  RETIRED.flatMap(([word, why]) => (word.test(text) ? [`${text}: ${why}`] : []))

describe('words that misread', () => {
  const files = filesBelow('lib').filter((path) => path.includes('/words/'))

  it.each(files)('[W10] are not said in %s', (file) => {
    expect(textsOf(readFileSync(join(root, file), 'utf8')).flatMap(retiredIn)).toEqual([])
  })

  it('would be found if they were', () => {
    expect(files.length).toBeGreaterThan(40)
    for (const said of ['’Keep some slaw’', 'It is off sale.', 'Said. Send', 'kept for vegans'])
      expect(retiredIn(said)).not.toEqual([])
    expect(textsOf("const one = 'Keep it here.' // 'Keep that.'")).toEqual(["'Keep it here.'"])
    expect(retiredIn('Keep apart: milk. KEEP FROM MILK. What you keep away from.')).toEqual([])
  })
})
