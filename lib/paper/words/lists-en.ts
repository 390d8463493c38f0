/** What the papers of a plan say alike. */
import type { NotReckoned } from '#lib/paper/lists/made-of.ts'
import type { ScaledLine } from '#lib/recipes/scaled-card.ts'
import { sayDate, sayMoment } from '#lib/words/day-en.ts'
import { sayMeasure } from '#lib/words/recipe/measures-en.ts'
import { typedProblem } from '#lib/words/recipe/typed-problems-en.ts'

const notReckoned = ({ code, at }: { readonly code: NotReckoned; readonly at: string }): string => {
  if (code === 'no-card') return 'No card says how much of it. Type that on the set-up.'
  if (code === 'circle') return 'The recipe contains itself. Mend it on the set-up.'
  if (code === 'empty') return 'The card says no amount of it. Type that on the set-up.'
  return typedProblem({ code, at })
}

/** "soy sauce 1/2 cup", "salt to taste"; of what isn't understood the words of the card. */
const line = ({ name, amount, line: { typed } }: ScaledLine): string => {
  if (amount.kind === 'measured') {
    const { exact, shown } = amount.measure
    return `${name} ${sayMeasure(shown, exact.kind)}`
  }
  if (amount.kind === 'to-taste') return `${name} to taste`
  return `${name}: ${typed === '' ? 'no amount on the card' : `“${typed}” isn’t understood`}`
}

export const listsEn = {
  notReckoned,
  line,
  revision: (revision: number) => `Revision ${revision}`,
  printed: (at: number, timeZone: string) => `Printed ${sayMoment(at, timeZone)}`,
  demo: 'DEMO: invented, nobody is served by it',
  practice: 'PRACTICE',
  date: (on: string) => sayDate(on),
  toPlan: 'To the plan',
  noPlan: 'No plan is in the address: open this paper from a plan.',
  notTaken: 'This plan has no loads yet: “Take this plan” first.',
  connecting: 'Asking the laptop …',
  notLead: 'A plan’s papers are shown to the lead and to the person in charge.',
  draftLost: 'Where things lie can’t be read now: what is shown of it may be old.',
  decides: 'Local code and the certified person in charge decide.',
} as const
