/** What is said of each thing that a station reads beside its food. */
import { sanitizerWords } from '#lib/rooms/food/words/sanitizer-en.ts'
import { shelfWords } from '#lib/rooms/shelf/words/shelf-en.ts'
import type { ReadHere } from '#lib/station/read-here.ts'
import type { DutyWords } from '#lib/words/duty-words.ts'

export const readHereWords = {
  shelf: shelfWords,
  sanitizer: sanitizerWords,
} as const satisfies Record<ReadHere, { readonly title: string; readonly duty: DutyWords }>
