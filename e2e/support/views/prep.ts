/** The crew's tasks of a planned day: to come, passed on, late, and a reading that falls due. */
import { packEn } from '#lib/rooms/prep/words/pack-en.ts'
import { prepEn as words } from '#lib/rooms/prep/words/prep-en.ts'
import { SCHOOL } from '#tests/support/school-line.ts'
import { on, type View } from './view.ts'

const prep = on(`/prep?station=${SCHOOL.id}`, 'prep')

export const prepViews: readonly View[] = [
  prep('nothing planned', 'school, nothing planned', words.none, [], { asksOnly: true }),
  prep('not taken', 'school, planned', words.notTaken),
  prep('at work', 'school, at work', words.far[2]),
  prep('one person’s', 'school, at work', words.far[2], ['AB']),
  prep('passing on', 'school, at work', words.howFar, [/^Sesame slaw \d+:/, words.pass]),
  prep('to pack', 'school, at work', packEn.groups.tools, [packEn.toPack], { long: true }),
  prep('late', 'school, late', /tasks are late/),
  prep('starting to cool', 'school, to cool', words.reading, [/^Start cooling black beans: 135/]),
  prep('a reading due', 'school, cooling', words.reading, [/^Read black beans: 70/]),
]
