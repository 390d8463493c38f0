import type { CounterWords } from '#components/counter/words.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import type { Blocked } from '#lib/rooms/orders/facts/draft.ts'
import type { NotFree } from '#lib/rooms/orders/facts/offer.ts'
import type { Note } from '#lib/rooms/orders/views/ordering.ts'
import { findItem } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const sayCannot = (
  words: CounterWords,
  station: StationDocument,
  id: string,
  standing: NotFree,
): string => {
  const name = nameIn(station)(id)
  switch (standing.kind) {
    case 'need':
      return words.cannot.need(words.sayFinding(tellFinding(station, standing.finding)))
    case 'unchecked':
      return words.cannot.unchecked
    case 'gone':
      return standing.notLoaded ? words.cannot.notLoaded(name) : words.cannot.gone(name)
    case 'not-selling':
      return standing.endsAt === undefined
        ? words.cannot.notSelling(name)
        : words.lacks.ends(name, words.sayClock(standing.endsAt, station.timeZone))
    case 'kept':
      return words.cannot.saved(name, words.savedFor(standing.for, nameIn(station)))
  }
}

/** Why an item can't be sold now, and what to do. */
export const sayBlocked = (
  words: CounterWords,
  station: StationDocument,
  item: string,
  blocked: Blocked,
): string => {
  const why = sayCannot(words, station, blocked.component ?? item, blocked.standing)
  return blocked.standing.kind === 'unchecked' ? why : `${why} ${words.offerAnother}`
}

/** Why a tap did nothing, or the order wasn't taken, and what to do. */
export const sayNote = (words: CounterWords, station: StationDocument, note: Note): string => {
  const name = nameIn(station)
  switch (note.kind) {
    case 'refused':
      return words.sayRefusal(note.refusal, name, (at) => words.sayClock(at, station.timeZone))
    case 'not-taken':
      return words.sayNotTaken(note.because)
    case 'cannot':
      return sayCannot(words, station, note.component, note.standing)
    case 'item-cannot':
      return sayBlocked(words, station, note.item, note.blocked)
    case 'kept':
      return words.needsIt(name(note.item), name(note.component))
    case 'base':
      return words.isBase(
        (findItem(station, note.item)?.base?.choices ?? []).map((one) => name(one)),
      )
    case 'not-of-item':
      return words.notOfItem(name(note.item), name(note.component))
  }
}
