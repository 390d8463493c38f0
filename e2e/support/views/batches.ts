/** What is made for a planned day: nothing yet, a batch that is started, and one that cools. */

import { aheadWords as words } from '#lib/rooms/food/words/ahead-en.ts'
import { batchWords as said } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { SCHOOL } from '#tests/support/school-line.ts'
import { FRIDAY } from '#tests/support/school-scenes.ts'
import { on, type View } from './view.ts'

const batches = on(`/batches?station=${SCHOOL.id}&service=${FRIDAY}`, 'batches')

export const batchesViews: readonly View[] = [
  batches('nothing made', 'school, taken', words.first),
  batches('starting one', 'school, taken', formWords.startOf, [formWords.startBatch], {
    main: [/^Planned for Fri, Dec 4/],
  }),
  batches('starting one early all the same', 'school, taken', /^Start \d+ load/, [
    formWords.startBatch,
    formWords.startEarly,
  ]),
  batches('cooked ahead', 'school, cooling', words.first),
  batches('a pot', 'school, cooling', /^Then cool it: 135/, [/^Black beans cooked/]),
  batches('a finished pot', 'school, to cool', said.coolNow, [/^Black beans cool it by/], {
    main: [/^Cool it: read 135 °F or above/],
  }),
]
