/** What Pans says in its panels and forms, with what the board says of the same. */
import { pansEnglish } from '#components/pans/words.tsx'
import { sayDateOver, sayDateProblem } from '#lib/words/date-problems-en.ts'
import { dateWords } from '#lib/words/dates-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import { formWords } from '#lib/words/food-forms-en.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import { sayDegrees } from '#lib/words/reading-en.ts'
import { readingWords } from '#lib/words/reading-pad-en.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { keptForName, stateName } from '#lib/words/service-en.ts'
import { shelfWords } from '#lib/words/shelf-en.ts'

export const foodEnglish = {
  forms: formWords,
  waitingShelf: shelfWords,
  readings: readingWords,
  safety: safetyWords,
  dates: dateWords,
  panRules: panRuleWords,
  sayDegrees,
  sayDay,
  sayDate,
  sayDateOver,
  sayDateProblem,
  keptForName,
  stateName,
  sayRefusal,
  ...pansEnglish,
}
