import type { CounterWords } from '#components/counter/words.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Finding } from '#lib/needs/judge.ts'
import type { Offer } from '#lib/rooms/orders/facts/offer.ts'
import type { ItemRow } from '#lib/rooms/orders/views/counter.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'

export interface RowSaid {
  readonly kind: 'fits' | 'change' | 'ask' | 'no'
  readonly text: string
  /** No more than what it is about. */
  readonly short: string
}

/** Characters that stand on one line of a row; what is longer is said short there. */
const ROOM = 72

/** Down to the ingredient where there is room, else no more than what it is about. */
const said = (
  words: CounterWords,
  offer: Offer,
  finding: Finding,
  say: (why: string) => string,
  sayShort: (why: string) => string,
): Pick<RowSaid, 'text' | 'short'> => {
  const { station } = offer.state
  const name = nameIn(station)
  const { component, need, why, touches } = finding
  const long = say(words.sayFinding(tellFinding(station, finding)))
  const short = words.rowFinding(
    name(component),
    isPluralIn(station)(component),
    need,
    why,
    touches && name(touches),
  )
  return { text: long.length <= ROOM ? long : say(short), short: sayShort(short) }
}

const sayNo = (
  words: CounterWords,
  offer: Offer,
  { component, standing }: NonNullable<ItemRow['blocked']>,
): Pick<RowSaid, 'text' | 'short'> => {
  if (standing.kind === 'need')
    return said(words, offer, standing.finding, words.rowDoesNot, words.rowDoesNot)
  const text = whyNot(words, offer, component, standing)
  return { text, short: text }
}

const whyNot = (
  words: CounterWords,
  offer: Offer,
  component: string | null,
  standing: Exclude<NonNullable<ItemRow['blocked']>['standing'], { readonly kind: 'need' }>,
): string => {
  if (standing.kind === 'unchecked') return words.pan.unchecked
  const name = nameIn(offer.state.station)
  if (component === null) return words.itemNotSold
  if (standing.kind === 'gone' && standing.notLoaded) return words.rowNotLoaded(name(component))
  return standing.kind === 'kept'
    ? words.rowSaved(name(component), words.savedFor(standing.for, name))
    : words.rowNo(name(component))
}

/** Whether an item fits this guest now, with which change, or why not. */
export const sayRow = (words: CounterWords, offer: Offer, row: ItemRow): RowSaid => {
  const { station } = offer.state
  const name = nameIn(station)
  if (row.blocked) return { kind: 'no', ...sayNo(words, offer, row.blocked) }
  if (row.asks)
    return { kind: 'ask', ...said(words, offer, row.asks, words.rowAsk, words.rowAskShort) }
  const changes = [
    ...(row.insteadBase === null ? [] : [words.rowBase(name(row.insteadBase))]),
    ...(row.bases.length === 0 ? [] : [words.rowBases(row.bases.map(name))]),
    ...(row.without.length === 0 ? [] : [words.rowWithout(row.without.map(name))]),
  ].join(', ')
  const fits = changes === '' ? words.rowFits : words.rowFitsWith(changes)
  const text = offer.needs.length === 0 ? changes : fits
  return { kind: changes === '' ? 'fits' : 'change', text, short: text }
}
