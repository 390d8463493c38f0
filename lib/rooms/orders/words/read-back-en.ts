/** The sentence that is said to the guest before sending, in English. */

import type { Statement } from '#lib/rooms/orders/facts/statement.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { inSentence, sayFinding, since, startingWith } from '#lib/words/findings-en.ts'
import type { NameOf, Said } from '#lib/words/said-here.ts'
import { foodOf, needName, savedForName } from '#lib/words/service-en.ts'

const said = (before: string, strong: string, rest: string): Said => ({ before, strong, rest })

const noneOf = (names: readonly string[]): string => `No ${list(names.map(inSentence), 'or')}`

const allOf = (names: readonly string[]): string => list(names.map(inSentence), 'and')

/** What can't be promised on a shared line, for each need that is kept apart. */
const notPromised = (codes: readonly NeedCode[]): string => {
  const foods = codes.flatMap((code) => foodOf(code) ?? [])
  const diets = codes.filter((code) => foodOf(code) === null).map(needName)
  return [
    ...(foods.length > 0 ? [`that no ${list(foods, 'or')} gets in`] : []),
    ...(diets.length > 0 ? [`that all it touches is ${list(diets, 'and')}`] : []),
  ].join(', or ')
}

/** What a shared line can bring to who only leaves it out. */
const noting = (codes: readonly NeedCode[]): string => {
  const foods = codes.flatMap((code) => foodOf(code) ?? [])
  const diets = codes.filter((code) => foodOf(code) === null).map(needName)
  return [
    ...(foods.length > 0 ? [`a little ${list(foods, 'or')} can get in`] : []),
    ...(diets.length > 0 ? [`it can touch what isn’t ${list(diets, 'or')}`] : []),
  ].join(', and ')
}

const sayStatement = (
  one: Statement,
  name: NameOf,
  price: (cents: number) => string,
  isPlural: (id: string) => boolean,
): Said => {
  const names = 'components' in one ? one.components.map(name) : []
  switch (one.say) {
    case 'item':
      return said(
        '',
        `One ${inSentence(name(one.item))}${one.base === null ? '' : ` with ${inSentence(name(one.base))}`}`,
        one.asItComes ? ', as it comes.' : '.',
      )
    case 'which-base':
      return said('', `With ${list(one.bases.map(name).map(inSentence), 'or')}`, '?')
    case 'not-this-base': {
      const { need, why, contact } = one.because
      const wanted = inSentence(name(one.wanted))
      return said(
        '',
        `Not with ${wanted}`,
        `, ${since(need, why, isPlural(one.wanted), contact?.component)}.`,
      )
    }
    case 'other-base': {
      const wanted = inSentence(name(one.wanted))
      return one.why === 'gone'
        ? said('We’re ', `out of ${wanted}`, ' today.')
        : said('We ', `aren’t serving ${wanted}`, ' now.')
    }
    case 'no-asked':
      return said('', noneOf(names), ', as you asked.')
    case 'out':
      return said('We’re ', `out of ${allOf(names)}`, ' today.')
    case 'not-selling':
      return said('We ', `aren’t serving ${list(names.map(inSentence), 'or')}`, ' now.')
    case 'need':
      return said(
        '',
        noneOf(names),
        `, ${since(one.need, one.why, names.length > 1 || one.components.some(isPlural), one.touches && name(one.touches))}.`,
      )
    case 'added':
      return said('', `With ${allOf(names)}`, '.')
    case 'in-it':
      return said(`${startingWith(allOf(names))} `, 'in it', ', not on the side.')
    case 'side':
      return said(`${startingWith(allOf(names))} `, 'on the side', '.')
    case 'portions':
      return said(
        '',
        `${one.portions} portions of ${inSentence(name(one.component))}`,
        one.moreCents > 0 ? `, ${price(one.moreCents)} more.` : '.',
      )
    case 'fewer':
      return said(
        'Only ',
        `${counted(one.portions, 'portion', 'portions')} of ${inSentence(name(one.component))}`,
        ' left.',
      )
    case 'backup':
      return said(`${startingWith(allOf(names))} `, 'from a covered pan', ' with its own scoop.')
    case 'caution':
      return said('', sayFinding(one.told), '.')
    case 'accepted':
      return said('', 'You accept that', ', with the person in charge.')
    case 'keep-apart':
      return said('It’s made on a shared line: ', `we can’t promise ${notPromised(one.codes)}`, '.')
    case 'as-told':
      return said(
        'As you told us: ',
        `${list(one.codes.map(needName), 'and')} left out only, not kept apart`,
        '.',
      )
    case 'not-listed':
      return said('Its labels ', `name no ${list(one.codes.map(needName), 'or')}`, '.')
    case 'noted':
      return said('Left out, not kept apart: ', noting(one.codes), '.')
    case 'kept':
      return said(
        `We’re saving the ${inSentence(name(one.component))} `,
        `for ${list(
          one.for.map((id) => inSentence(savedForName(id, name))),
          'and',
        )}`,
        '.',
      )
    case 'price':
      return said('That’s ', price(one.cents), '.')
  }
}

export const sayReadBack = (
  statements: readonly Statement[],
  name: NameOf,
  price: (cents: number) => string,
  isPlural: (id: string) => boolean,
): readonly Said[] => statements.map((one) => sayStatement(one, name, price, isPlural))

/** The read-back as one string, as a screen reader or a test reads it. */
export const readBackText = (sentences: readonly Said[]): string =>
  sentences.map(({ before, strong, rest }) => before + strong + rest).join(' ')
