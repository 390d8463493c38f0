/** What isn't there yet and what it costs, in English. */

import type { Draft } from '#lib/editor/draft.ts'
import type { Missing } from '#lib/editor/problem.ts'
import { fieldName, rowNamed } from '#lib/editor/words/fields-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { needName } from '#lib/words/service-en.ts'

const startingWith = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const codes = (field: string | null): string =>
  list(
    (field ?? '').split(' ').map((code) => needName(code as Parameters<typeof needName>[0])),
    'and',
  )

const SAID: Readonly<Record<string, (of: string, field: string | null) => string>> = {
  'no-well': () => 'A well',
  'no-pan': () => 'A pan in it',
  'no-component': () => 'Something in a pan',
  'no-item': () => 'An item to sell',
  missing: (of, field) => `${startingWith(fieldName(field))} of ${of}`,
  empty: (of, field) => `${startingWith(fieldName(field))} of ${of}`,
  'too-few': (of, field) => `${startingWith(fieldName(field))} of ${of}`,
  'made-of-nothing': (of) => `What ${of} is made of`,
  'no-heart': (of) => `What ${of} is named for`,
  'no-density': (of) => `What ${of} weighs`,
  'no-food-kind': (of) => `What kind of food ${of} is`,
  'takes-nothing': (of) => `What goes into ${of}`,
  'label-unread': (of) => `The label of ${of}`,
  'label-old': (of) => `The label of ${of}: read long ago`,
  'not-said': (of, field) => `${of}: nothing is said of ${codes(field)}`,
  'contacts-unsaid': () => 'What touches what: not confirmed',
  'contact-open': (of) => of,
  'no-protected-backup': (of) => `A protected back-up pan of ${of}`,
  'no-close': () => 'When the service closes',
  'no-yield': (of) => `What ${of} makes`,
  'no-amounts': (of) => `How much goes into ${of}`,
  'no-tare': (of) => `What ${of} weighs empty`,
  'no-capacity': (of) => `What ${of} holds`,
}

/** `amount-range`, `yield-zero`: the reason is told at the field. */
const notUnderstood = (code: string) => (of: string) =>
  code.startsWith('amount-')
    ? `How much goes into ${of}: an amount isn’t understood`
    : code.startsWith('yield-')
      ? `What ${of} makes: it isn’t understood`
      : code.startsWith('vessel-')
        ? 'What a pot or an oven holds: it isn’t understood'
        : code

/** What is missing, as the head of a row. */
export const sayMissing = (draft: Draft, { code, entity, id, field }: Missing): string =>
  (SAID[code] ?? notUnderstood(code))(rowNamed(draft, entity, id), field)

const COSTS: Readonly<Record<string, string>> = {
  'not-published': 'until then it can’t be published',
  'by-weight': 'until then it is portioned by weight or pieces only',
  'highest-limit': 'the highest cooking limit holds',
  unknown: 'counts as not known: not served to who keeps from it',
  'no-keep-apart': 'nothing can be kept apart',
  touches: 'counts as touching',
  caution: 'a caution for who keeps apart: the person in charge is asked',
  'no-run-out': 'nothing says what won’t last until the end',
  'not-scaled': 'the prep sheet can’t be scaled',
  'not-weighed': 'it can’t be weighed with food in it',
  'overfull-unseen': 'overfilling isn’t noticed',
}

export const sayCosts = (costs: string): string => COSTS[costs] ?? costs
