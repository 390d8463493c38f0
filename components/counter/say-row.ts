import type { CounterWords } from '#components/counter/words.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Finding } from '#lib/needs/judge.ts'
import type { Offer } from '#lib/rooms/orders/facts/offer.ts'
import type { ItemRow } from '#lib/rooms/orders/views/counter.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'

export interface RowSaid {
  readonly kind: 'fits' | 'change' | 'ask' | 'no'
  readonly text: string
}

/** The longest of what can be said that has room, else the last, which is the shortest. */
const fitting = (room: number, ...texts: readonly string[]): string =>
  texts.find((text) => text.length <= room) ?? texts.at(-1) ?? ''

/** Down to the ingredient where there is room, else no more than what it is about. */
const said = (
  words: CounterWords,
  offer: Offer,
  finding: Finding,
  room: number,
  ...ways: readonly ((why: string) => string)[]
): string => {
  const { station } = offer.state
  const name = nameIn(station)
  const { component, need, why, touches } = finding
  const long = words.sayFinding(tellFinding(station, finding))
  const short = words.rowFinding(
    name(component),
    isPluralIn(station)(component),
    need,
    why,
    touches && name(touches),
  )
  return fitting(room, ...ways.flatMap((say) => [say(long), say(short)]))
}

const sayNo = (
  words: CounterWords,
  offer: Offer,
  { component, standing }: NonNullable<ItemRow['blocked']>,
  room: number,
): string =>
  standing.kind === 'need'
    ? said(words, offer, standing.finding, room, words.rowDoesNot)
    : whyNot(words, offer, component, standing)

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

/**
 * Whether an item fits this guest now, with which change, or why not.
 * @param room how many letters stand on its line; what is longer is said shorter
 */
export const sayRow = (words: CounterWords, offer: Offer, row: ItemRow, room: number): RowSaid => {
  const name = nameIn(offer.state.station)
  if (row.blocked) return { kind: 'no', text: sayNo(words, offer, row.blocked, room) }
  if (row.asks)
    return {
      kind: 'ask',
      text: said(words, offer, row.asks, room, words.rowAsk, words.rowAskShort),
    }
  const { insteadBase, bases, without } = row
  const changes = (left: (names: readonly string[]) => string): string => {
    const all = [
      ...(insteadBase === null ? [] : [words.rowBase(name(insteadBase))]),
      ...(bases.length === 0 ? [] : [words.rowBases(bases.map(name))]),
      ...(without.length === 0 ? [] : [left(without.map(name))]),
    ].join(', ')
    if (offer.needs.length === 0) return all
    return all === '' ? words.rowFits : words.rowFitsWith(all)
  }
  const isUsual = insteadBase === null && bases.length === 0 && without.length === 0
  return {
    kind: isUsual ? 'fits' : 'change',
    text: fitting(
      room,
      changes(words.rowWithout),
      changes((names) => words.over.withoutMany(names.length)),
    ),
  }
}
