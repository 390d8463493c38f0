import type { Finding } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/build-choice.ts'

/** The findings of a build as one text, so that new ones are noticed. */
const keyOf = ({ component, need, handling, why, touches }: Finding): string =>
  [component, need, handling, why, touches].join(' ')

/** A build's food and its cautions as one text, whatever was accepted or agreed to since. */
export const foodKey = (choice: BuildChoice, toAccept: readonly Finding[]): string =>
  JSON.stringify([{ ...choice, agreed: false, caution: null }, toAccept.map(keyOf)])
