/** What Pans says in its panels and forms, with what the board says of the same. */
import { pansEnglish } from '#components/pans/words.tsx'
import { endFormWords } from '#lib/rooms/day/words/ends-en.ts'
import { dateWords } from '#lib/rooms/food/words/dates-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { jobLackWords, padWords } from '#lib/rooms/food/words/job-lacks-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { roundWords } from '#lib/rooms/food/words/round-en.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { readHereWords } from '#lib/rooms/shelf/words/read-here-en.ts'
import { sayDateOver, sayDateProblem } from '#lib/words/date-problems-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'
import { centsIn } from '#lib/words/money.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { savedForName, stateName } from '#lib/words/service-en.ts'

export const foodEnglish = {
  forms: { ...formWords, ...jobLackWords },
  ends: endFormWords,
  readHere: readHereWords,
  round: roundWords,
  setUp: setUpWords,
  readings: { ...readingWords, ...padWords },
  safety: safetyWords,
  dates: dateWords,
  panRules: panRuleWords,
  centsIn,
  sayDay,
  sayDate,
  sayDateOver,
  sayDateProblem,
  savedForName,
  stateName,
  sayRefusal,
  ...pansEnglish,
}
