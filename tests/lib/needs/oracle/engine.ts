/** The engine as it is, behind what the comparison asks for. */
import { judgeComponent, judgeTaken } from '#lib/needs/judge.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { Checker } from '#tests/lib/needs/oracle/checker.ts'
import { verdictsFor } from '#tests/support/counter-verdicts.ts'

export const engine: Checker = { taken: takenComponents, judgeComponent, judgeTaken, verdictsFor }
