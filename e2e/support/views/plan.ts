/** A day that is planned: chosen, loaded, stopped by what falls to nobody, and taken. */
import { planEn as words } from '#lib/rooms/prep/words/plan-en.ts'
import { SCHOOL } from '#tests/support/school-line.ts'
import { FRIDAY } from '#tests/support/school-scenes.ts'
import { on, type View } from './view.ts'

const day = on(`/plan?station=${SCHOOL.id}`, 'plan')
const plan = on(`/plan?station=${SCHOOL.id}&service=${FRIDAY}`, 'plan')

export const planViews: readonly View[] = [
  day('nothing planned', 'school, nothing planned', words.anotherDay(0), [], {
    long: true,
    asksOnly: true,
  }),
  day('never opened', 'school, never opened', /never opened/, [], { long: true, asksOnly: true }),
  plan('loads', 'school, planned', words.takePlan, [], { main: [/^Take this plan/] }),
  plan('not ready', 'school, planned', /^Nobody is here at/, [/^Black beans:/, words.how.ahead], {
    main: [/^Cook it that day/],
  }),
  plan('the day', 'school, planned', words.form.crew, [words.dayAndCrew], { long: true }),
  plan('ready', 'school, taken', words.asTaken),
  plan('late', 'school, late', /ready .* doors 11:20/),
  plan('cooled ahead', 'school, cooling', words.asTaken),
]
