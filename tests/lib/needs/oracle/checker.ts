/** What the comparison asks of an engine, right or wrong. */

import type { JudgedComponent, JudgedTaken } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import type { Place } from '#tests/lib/needs/oracle/oracle.ts'
import type { Verdict } from '#tests/support/counter-verdicts.ts'

export interface Checker {
  readonly taken: (choice: BuildChoice) => readonly string[]
  readonly judgeComponent: (
    place: Place,
    component: string,
    needs: readonly Need[],
  ) => JudgedComponent
  readonly judgeTaken: (
    place: Place,
    taken: readonly string[],
    needs: readonly Need[],
  ) => JudgedTaken
  readonly verdictsFor: (place: Place, needs: readonly Need[]) => Readonly<Record<string, Verdict>>
}
