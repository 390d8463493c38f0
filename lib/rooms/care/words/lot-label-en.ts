/** What the Larder screen says of food whose label changed since it was set aside. */
import type { Pack } from '#lib/larder/relabelled.ts'
import type { Label } from '#lib/station/label.ts'
import { list } from '#lib/words/counted-en.ts'
import { sayDateOfYear } from '#lib/words/day-en.ts'
import { needName } from '#lib/words/service-en.ts'

const PACK: Readonly<Record<Pack, string>> = {
  same: 'The pack with today’s label',
  before: 'A pack of before',
}

const COUNTS: Readonly<Record<Pack, string>> = {
  same: 'Today’s label counts alone.',
  before: 'What was read of it counts too, beside today’s label.',
}

const UNREAD = 'Nobody has read it: it counts as unknown.'

/** What a label names, in one line: never what it leaves out. */
const sayLabel = (label: Label | null): string => {
  if (label === null || label.readOn === null) return UNREAD
  const said = (word: 'contains' | 'may-contain') =>
    Object.entries(label.declarations).flatMap(([code, one]) =>
      one === word ? [needName(code)] : [],
    )
  const [contains, mayContain] = [said('contains'), said('may-contain')]
  const named = [
    ...(contains.length > 0 ? [`contains ${list(contains, 'and')}`] : []),
    ...(mayContain.length > 0 ? [`may contain ${list(mayContain, 'and')}`] : []),
  ]
  const what = named.length > 0 ? named.join('; ') : 'names none of the allergens asked for'
  return `${what} (read ${sayDateOfYear(label.readOn)})`
}

export const lotLabelWords = {
  title: (name: string) => `The label of ${name} changed since this was made.`,
  wasRead: (label: Label | null) => `Then: ${sayLabel(label)}`,
  isRead: (label: Label | null) => `Now: ${sayLabel(label)}`,
  /** To the class that has it: nobody said of which pack it was made. */
  isOpen: (name: string, label: Label | null) =>
    `The label of ${name} changed, and nobody said which pack this was made of. Now: ${sayLabel(label)}`,
  which: 'Which pack was it made of? The person in charge says it, with that pack in hand.',
  pack: PACK,
  counts: COUNTS,
  passphrase: 'Passphrase of the person in charge',
  send: 'It was made of that pack',
  lacksPack: 'Say which pack first',
  lacksPassphrase: 'With the passphrase',
  nobody: 'Nobody can tell? Throw it out.',
} as const
