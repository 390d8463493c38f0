import { expect, it } from 'vitest'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import type { InAnyLanguage } from '#lib/words/in-any-language.ts'

/** An invented language; that it is one is for the type checker to find. */
const other: InAnyLanguage<typeof pickUpWords> = {
  title: 'Ambor',
  place: { waiting: 'Loma', making: 'Fareli', made: 'Tavo', called: 'Veni al banco' },
  more: (count) => `+ ${count} plu`,
  notYet: ' ankor ne',
  none: { made: 'Ankor nenio' },
  closed: 'Klosa',
  notOpen: 'Ankor klosa',
}

it('a second language is an object of the same shape with other texts', () => {
  const shape = (words: object): unknown =>
    Object.fromEntries(
      Object.entries(words).map(([key, value]) => [
        key,
        typeof value === 'object' ? shape(value) : typeof value,
      ]),
    )
  expect(shape(other)).toEqual(shape(pickUpWords))
  // @ts-expect-error a text is missing
  const lacking: InAnyLanguage<typeof pickUpWords> = { ...other, closed: undefined }
  expect(shape(lacking)).not.toEqual(shape(pickUpWords))
})
