/** What stands on the line while a guest is asked, and with what is read back, in English. */
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { foodOf, needName } from '#lib/words/service-en.ts'

export const overTheLine = {
  line: 'The line, for this guest',
  /** On a pan, in a word: what the guest keeps from in it. */
  contains: (code: NeedCode) => foodOf(code) ?? `not ${needName(code)}`,
  mayContain: (code: NeedCode) => `maybe ${foodOf(code) ?? `not ${needName(code)}`}`,
  unknown: (code: NeedCode) => `${foodOf(code) ?? needName(code)} ?`,
  touches: 'touches',
  touchesUnknown: 'touches ?',
  backup: 'back-up',
  /** The first, and how many more of the guest's needs there are in it. */
  andMore: (word: string, more: number) => (more > 0 ? `${word} +${more}` : word),
  /** Of an item's row, where there is no room for their names: they are struck out below. */
  withoutMany: (count: number) => `${count} not in it`,
  payToggle: (price: string, paid: boolean) =>
    paid ? `${price} Paid: change to unpaid` : `${price} Unpaid: change to paid`,
  payTap: (paid: boolean) => (paid ? 'tap: unpaid' : 'tap: paid'),
  readLarge: 'Read it large',
  backToMenu: 'Back to the menu',
} as const
