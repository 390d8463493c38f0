/** What a publish changes, in English. */

import type { Change } from '#lib/editor/change.ts'
import { type Entity, type Json, SINGLES } from '#lib/editor/draft.ts'
import { fieldName } from '#lib/editor/words/fields-en.ts'
import { sayCents } from '#lib/words/amounts-en.ts'

const OF: Readonly<Partial<Record<Entity, string>>> = {
  pan: 'the pan of ',
  backup: 'the back-up pan of ',
  well: 'well ',
}

const startingWith = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const named = ({ entity, name }: Change): string => `${OF[entity] ?? ''}${name}`

/** A value that is said in a word or a number; null where it takes more. */
const short = (field: string, value: Json): string | null => {
  if (value === null) return 'not said'
  if (typeof value === 'number') return /Cents$/.test(field) ? sayCents(value) : String(value)
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'string') return `“${value}”`
  return null
}

/** One change, as “Price of Garden bowl: 6.50, was 6.00.” */
export const sayChange = (change: Change): string => {
  const of = named(change)
  // Who keeps something apart is told by it: what is taken away is a touch, not the food.
  if (change.entity === 'contact' && change.what !== 'changed')
    return `${startingWith(of)}: ${change.what === 'removed' ? 'said to touch no more' : 'said to touch'}.`
  switch (change.what) {
    case 'added':
      return `${startingWith(of)} is new.`
    case 'removed':
      return `${startingWith(of)} is taken away.`
    case 'moved':
      return `${startingWith(of)} is moved.`
    case 'changed': {
      const { field, from, to, entity } = change
      const what = startingWith(fieldName(field))
      const head = SINGLES.some((one) => one === entity) ? what : `${what} of ${of}`
      const [now, before] = [short(field, to), short(field, from)]
      return now === null || before === null
        ? `${head} is otherwise.`
        : `${head}: ${now}, was ${before}.`
    }
  }
}
