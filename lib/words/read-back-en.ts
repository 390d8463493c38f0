/** The sentence that is said to the guest before sending, in English. */
import { isDiet, type NeedCode } from '#lib/needs/codes.ts'
import type { Statement } from '#lib/views/read-back.ts'
import type { NameOf } from '#lib/words/refusals-en.ts'
import { needName } from '#lib/words/service-en.ts'

/** A name inside a sentence: "Herb chicken" becomes "herb chicken", "BBQ pork" stays. */
export const inSentence = (name: string): string =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name

export const isPlural = (name: string): boolean => /[^s]s$/.test(name)

export const list = (names: readonly string[], word: 'and' | 'or'): string =>
  names.length < 2
    ? names.join('')
    : `${names.slice(0, -1).join(', ')} ${word} ${names[names.length - 1]}`

/** What a label says against a need, of one or more components. */
export const since = (
  need: NeedCode,
  declared: 'contains' | 'unknown' | 'may-contain',
  many: boolean,
): string => {
  const [it, is, contains] = many ? ['they', 'aren’t', 'contain'] : ['it', 'isn’t', 'contains']
  if (declared === 'unknown')
    return isDiet(need)
      ? `since we don’t know that ${it} ${many ? 'are' : 'is'} ${needName[need]}`
      : `since we don’t know whether ${it} ${contains} ${needName[need]}`
  if (isDiet(need)) return `since ${it} ${is} ${needName[need]}`
  return declared === 'contains'
    ? `since ${it} ${contains} ${needName[need]}`
    : `since ${it} may contain ${needName[need]}`
}

/** A sentence in up to three stretches, the middle one said with stress. */
export interface Said {
  readonly before: string
  readonly strong: string
  readonly rest: string
}

const said = (before: string, strong: string, rest: string): Said => ({ before, strong, rest })

const noneOf = (names: readonly string[]): string => `No ${list(names.map(inSentence), 'or')}`

const allOf = (names: readonly string[]): string => list(names.map(inSentence), 'and')

const startingWith = (names: readonly string[]): string => {
  const all = allOf(names)
  return all.charAt(0).toUpperCase() + all.slice(1)
}

const sayStatement = (one: Statement, name: NameOf, price: (cents: number) => string): Said => {
  const names = 'components' in one ? one.components.map(name) : []
  switch (one.say) {
    case 'item':
      return said(
        '',
        `One ${inSentence(name(one.item))}${one.base === null ? '' : ` with ${inSentence(name(one.base))}`}`,
        one.asItComes ? ', as it comes.' : '.',
      )
    case 'other-base': {
      const wanted = inSentence(name(one.wanted))
      if (one.standing.kind === 'need')
        return said(
          '',
          `Not with ${wanted}`,
          `, ${since(one.standing.need, one.standing.declared, isPlural(wanted))}.`,
        )
      return one.standing.kind === 'gone'
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
        `, ${since(one.need, one.declared, names.length > 1 || isPlural(names[0] ?? ''))}.`,
      )
    case 'added':
      return said('', `With ${allOf(names)}`, '.')
    case 'in-it':
      return said(`${startingWith(names)} `, 'in it', ', not on the side.')
    case 'side':
      return said(`${startingWith(names)} `, 'on the side', '.')
    case 'portions':
      return said(
        '',
        `${one.portions} portions of ${inSentence(name(one.component))}`,
        one.moreCents > 0 ? `, ${price(one.moreCents)} more.` : '.',
      )
    case 'fewer':
      return said(
        'Only ',
        `${one.portions} ${one.portions === 1 ? 'portion' : 'portions'} of ${inSentence(name(one.component))}`,
        ' left.',
      )
    case 'keep-apart':
      return said(
        'It’s made on a shared line: ',
        `we can’t promise that no ${list(
          one.codes.map((code) => needName[code]),
          'or',
        )} gets in`,
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
): readonly Said[] => statements.map((one) => sayStatement(one, name, price))

/** The read-back as one string, as a screen reader or a test reads it. */
export const readBackText = (sentences: readonly Said[]): string =>
  sentences.map(({ before, strong, rest }) => before + strong + rest).join(' ')
