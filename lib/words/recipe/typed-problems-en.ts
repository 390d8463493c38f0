/** Why an amount, a yield or what is wanted isn't understood, and how to mend it, in English. */
import type { NotWanted } from '#lib/recipes/wanted.ts'

const SAID: Readonly<Record<NotWanted['code'], (at: string) => string>> = {
  empty: () => 'Type an amount, as 2 qt or 1 lb 4 oz.',
  'no-number': () => 'Begin with a number, as 2 qt.',
  range: (at) => `${at === '' ? 'It' : `“${at}”`} is two amounts: type one.`,
  'decimal-comma': (at) => `“${at}”: type a point for parts, as 1.5.`,
  'unknown-word': (at) => `“${at}” is no measure that is known here.`,
  'unknown-can': (at) => `What a ${at} can holds isn’t known: type its weight or volume.`,
  'mixed-kinds': () => 'Weight and volume don’t add: type one of them.',
  zero: () => 'It is nothing: type more than 0.',
  'too-much': () => 'That is more than a kitchen makes.',
  'no-yield': () => 'The card doesn’t say what it makes: type that on the card, or x 2 here.',
  'no-portion-size': () =>
    'The card says portions and not of what size: type on the card what it makes, as 4 qt.',
  'no-portions': () => 'The card says an amount and no portions: type an amount, as 6 qt.',
  'no-depth': () => 'Say how deep the pan is, as 2 half pans, 4 in.',
  'no-capacity': () => 'What a pan of that size and depth holds isn’t known.',
  'weight-and-volume': () =>
    'The card has one by weight and the other by volume: weigh ten scoops on the pan’s page first.',
}

export const typedProblem = ({ code, at }: Omit<NotWanted, 'ok'>): string => SAID[code](at)
