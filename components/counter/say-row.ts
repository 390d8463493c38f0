import { nameIn } from '#lib/menu/name-in.ts'
import type { Finding } from '#lib/needs/judge.ts'
import type { ItemRow } from '#lib/views/counter.ts'
import { tellFinding } from '#lib/views/finding-told.ts'
import type { Offer } from '#lib/views/offer.ts'
import { counter } from '#lib/words/counter-en.ts'
import { sayFinding, shortFinding } from '#lib/words/findings-en.ts'

export interface RowSaid {
  readonly kind: 'fits' | 'change' | 'ask' | 'no'
  /** Down to the ingredient. */
  readonly text: string
  /** No more than what it is about. */
  readonly short: string
}

const sayNo = (
  offer: Offer,
  { component, standing }: NonNullable<ItemRow['blocked']>,
): Pick<RowSaid, 'text' | 'short'> => {
  const { station } = offer.state
  if (standing.kind === 'need')
    return {
      text: counter.rowDoesNot(sayFinding(tellFinding(station, standing.finding))),
      short: counter.rowDoesNot(sayShort(offer, standing.finding)),
    }
  const text =
    standing.kind === 'unchecked'
      ? counter.pan.unchecked
      : component === null
        ? counter.itemNotSold
        : counter.rowNo(nameIn(station)(component))
  return { text, short: text }
}

const sayShort = (offer: Offer, { component, need, why, touches }: Finding): string => {
  const name = nameIn(offer.state.station)
  return counter.rowShort(name(component), shortFinding(need, why, touches && name(touches)))
}

/** Whether an item fits this guest now, with which change, or why not. */
export const sayRow = (offer: Offer, row: ItemRow): RowSaid => {
  const { station } = offer.state
  const name = nameIn(station)
  if (row.blocked) return { kind: 'no', ...sayNo(offer, row.blocked) }
  if (row.asks)
    return {
      kind: 'ask',
      text: counter.rowAsk(sayFinding(tellFinding(station, row.asks))),
      short: counter.rowAskShort(sayShort(offer, row.asks)),
    }
  const changes = [
    ...(row.insteadBase === null ? [] : [counter.rowBase(name(row.insteadBase))]),
    ...(row.bases.length === 0 ? [] : [counter.rowBases(row.bases.map(name))]),
    ...(row.without.length === 0 ? [] : [counter.rowWithout(row.without.map(name))]),
  ].join(', ')
  const fits = changes === '' ? counter.rowFits : counter.rowFitsWith(changes)
  const text = offer.needs.length === 0 ? changes : fits
  return { kind: changes === '' ? 'fits' : 'change', text, short: text }
}
