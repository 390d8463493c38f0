import { nameIn } from '#lib/menu/name-in.ts'
import type { Finding } from '#lib/needs/judge.ts'
import type { ItemRow } from '#lib/views/counter.ts'
import { tellFinding } from '#lib/views/finding-told.ts'
import type { Offer } from '#lib/views/offer.ts'
import { counter } from '#lib/words/counter-en.ts'
import { rowFinding, sayFinding } from '#lib/words/findings-en.ts'

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
  offer: Offer,
  finding: Finding,
  say: (why: string) => string,
  sayShort: (why: string) => string,
): Pick<RowSaid, 'text' | 'short'> => {
  const { station } = offer.state
  const name = nameIn(station)
  const { component, need, why, touches } = finding
  const long = say(sayFinding(tellFinding(station, finding)))
  const short = rowFinding(name(component), need, why, touches && name(touches))
  return { text: long.length <= ROOM ? long : say(short), short: sayShort(short) }
}

const sayNo = (
  offer: Offer,
  { component, standing }: NonNullable<ItemRow['blocked']>,
): Pick<RowSaid, 'text' | 'short'> => {
  if (standing.kind === 'need')
    return said(offer, standing.finding, counter.rowDoesNot, counter.rowDoesNot)
  const text = whyNot(offer, component, standing)
  return { text, short: text }
}

const whyNot = (
  offer: Offer,
  component: string | null,
  standing: Exclude<NonNullable<ItemRow['blocked']>['standing'], { readonly kind: 'need' }>,
): string => {
  if (standing.kind === 'unchecked') return counter.pan.unchecked
  const name = nameIn(offer.state.station)
  if (component === null) return counter.itemNotSold
  if (standing.kind === 'gone' && standing.notLoaded) return counter.rowNotLoaded(name(component))
  return standing.kind === 'kept'
    ? counter.rowKept(name(component), counter.keptFor(standing.for, name))
    : counter.rowNo(name(component))
}

/** Whether an item fits this guest now, with which change, or why not. */
export const sayRow = (offer: Offer, row: ItemRow): RowSaid => {
  const { station } = offer.state
  const name = nameIn(station)
  if (row.blocked) return { kind: 'no', ...sayNo(offer, row.blocked) }
  if (row.asks)
    return { kind: 'ask', ...said(offer, row.asks, counter.rowAsk, counter.rowAskShort) }
  const changes = [
    ...(row.insteadBase === null ? [] : [counter.rowBase(name(row.insteadBase))]),
    ...(row.bases.length === 0 ? [] : [counter.rowBases(row.bases.map(name))]),
    ...(row.without.length === 0 ? [] : [counter.rowWithout(row.without.map(name))]),
  ].join(', ')
  const fits = changes === '' ? counter.rowFits : counter.rowFitsWith(changes)
  const text = offer.needs.length === 0 ? changes : fits
  return { kind: changes === '' ? 'fits' : 'change', text, short: text }
}
