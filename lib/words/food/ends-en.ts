/** Why food doesn't come to an end, and by which paragraph. */

import type { End, EndOf, EndWhy } from '#lib/safety/ends.ts'

/** What the end does, as it follows "Not offered:". */
export const endWords: Readonly<Record<End, string>> = {
  cold: 'Set it aside cold',
  dry: 'Set it aside dry',
  cool: 'Cool it',
  freeze: 'Freeze it',
  crew: 'The crew eats it',
  'throw-out': 'Throw it out',
}

const WHY: Readonly<Record<EndWhy, string>> = {
  'handed-over': 'a guest had it in hand',
  'not-cooked': 'it isn’t cooked to its limit',
  unknown: 'nobody knows how it was held',
  'out-of-limits': 'it was read out of its limits',
  'cooling-missed': 'it missed a stage of its cooling',
  'past-time': 'its time is over',
  'past-date': 'it is past its last day',
  'being-made': 'it is still being made',
  unread: 'nobody read it in time',
  made: 'it was made for a guest',
  'on-clock': 'it was on time alone',
  'not-cold-yet': 'it isn’t cold yet',
  'no-date': 'nobody said its first day',
  'no-days-left': 'thawed again, it would have no day left',
  'cooled-once': 'it was cooled and reheated once already',
  'is-cold': 'it is cold already',
  'is-dry': 'it is dry food',
  'not-dry': 'it is held hot or cold',
  'crew-not-allowed': 'your house settings don’t allow it',
}

/** The paragraph, or that it is a rule of the house: local code decides on both. */
export const sayParagraph = (paragraph: string | null): string => paragraph ?? 'house rule'

/** "it was on time alone (3-501.19(B))" */
export const sayWhy = (why: EndWhy, paragraph: string | null): string =>
  `${WHY[why]} (${sayParagraph(paragraph)})`

/** An end that isn't offered, with its reason. */
export const sayNotOffered = ({
  end,
  why,
  paragraph,
}: Pick<EndOf, 'end' | 'paragraph'> & { readonly why: EndWhy }): string =>
  `${endWords[end]}: ${sayWhy(why, paragraph)}.`
