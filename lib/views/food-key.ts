import type { Finding } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'
import { foodKey } from '#lib/service/food-key.ts'

/** The findings of a build as one text, so that new ones are noticed. */
const keyOf = ({ component, need, handling, why, touches, reached }: Finding): string =>
  [component, need, handling, why, touches, ...reached].join(' ')

/** A build's food and its cautions as one text, whatever was accepted or agreed to since. */
export const foodAndCautions = (choice: BuildChoice, toAccept: readonly Finding[]): string =>
  JSON.stringify([foodKey(choice), choice.asked, choice.needs, toAccept.map(keyOf)])
