/** What Pans says of the items: how many can still be sold, and why not. */

import type { StopEffect, WhyNone } from '#lib/rooms/pans/views/items-left.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import type { NameOf } from '#lib/words/said-here.ts'

const allOf = (names: readonly string[]): string => list(names, 'and')

const WHY_NONE: Readonly<Record<WhyNone, string>> = {
  'not-served': 'don’t serve',
  short: 'short',
  'not-loaded': 'not loaded yet',
  'sold-out': 'sold out',
}

/** Sentences on the items that go without a component, or can't be sold for want of it. */
const sayEffect = (effect: StopEffect, component: string, name: NameOf): readonly string[] => [
  ...(effect.cannot.length > 0 ? [`${allOf(effect.cannot.map(name))} can’t be sold.`] : []),
  ...(effect.otherBase.length > 0
    ? [`${allOf(effect.otherBase.map(name))}: sold in another base.`]
    : []),
  ...(effect.without.length > 0
    ? [`Sold without ${inSentence(name(component))}: ${allOf(effect.without.map(name))}.`]
    : []),
  ...(effect.cannot.length + effect.otherBase.length + effect.without.length === 0
    ? ['No item usually has it.']
    : []),
]

export const itemWords = {
  effect: sayEffect,
  noneFor: (name: string, why: WhyNone) => `${inSentence(name)}: ${WHY_NONE[why]}`,
  noBaseYet: 'no base loaded yet',
  noBase: 'every base sold out',
  without: (names: readonly string[]) => `without ${allOf(names.map(inSentence))}`,
} as const
