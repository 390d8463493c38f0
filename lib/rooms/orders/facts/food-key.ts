import type { Finding } from '#lib/needs/judge.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { foodKey } from '#lib/service/events/food-key.ts'

/** A finding as one text, so that new ones are noticed, and those that got worse. */
const keyOf = ({ component, need, handling, why, touches, reached, states }: Finding): string => {
  const declared = [component, ...reached].map((one) => `${one} ${states[one]}`)
  return [component, need, handling, why, touches, ...declared].join(' ')
}

/** A build's food and its cautions as one text, whatever was accepted or agreed to since. */
export const foodAndCautions = (choice: BuildChoice, toAccept: readonly Finding[]): string =>
  JSON.stringify([foodKey(choice), choice.asked, choice.needs, toAccept.map(keyOf)])
