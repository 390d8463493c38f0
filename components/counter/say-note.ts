import { findItem } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import type { Blocked } from '#lib/views/draft.ts'
import { tellFinding } from '#lib/views/finding-told.ts'
import type { NotFree } from '#lib/views/offer.ts'
import type { Note } from '#lib/views/ordering.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { counter } from '#lib/words/counter-en.ts'
import { sayFinding } from '#lib/words/findings-en.ts'
import { lacksWords } from '#lib/words/lacks-en.ts'
import { sayNotTaken, sayRefusal } from '#lib/words/refusals-en.ts'

const sayCannot = (station: StationDocument, id: string, standing: NotFree): string => {
  const name = nameIn(station)(id)
  switch (standing.kind) {
    case 'need':
      return counter.cannot.need(sayFinding(tellFinding(station, standing.finding)))
    case 'unchecked':
      return counter.cannot.unchecked
    case 'gone':
      return standing.notLoaded ? counter.cannot.notLoaded(name) : counter.cannot.gone(name)
    case 'not-selling':
      return standing.endsAt === undefined
        ? counter.cannot.notSelling(name)
        : lacksWords.ends(name, sayClock(standing.endsAt, station.timeZone))
    case 'kept':
      return counter.cannot.kept(name, counter.keptFor(standing.for, nameIn(station)))
  }
}

/** Why an item can't be sold now, and what to do. */
export const sayBlocked = (station: StationDocument, item: string, blocked: Blocked): string => {
  const why = sayCannot(station, blocked.component ?? item, blocked.standing)
  return blocked.standing.kind === 'unchecked' ? why : `${why} ${counter.offerAnother}`
}

/** Why a tap did nothing, or the order wasn't taken, and what to do. */
export const sayNote = (station: StationDocument, note: Note): string => {
  const name = nameIn(station)
  switch (note.kind) {
    case 'refused':
      return sayRefusal(note.refusal, name, (at) => sayClock(at, station.timeZone))
    case 'not-taken':
      return sayNotTaken(note.because)
    case 'cannot':
      return sayCannot(station, note.component, note.standing)
    case 'item-cannot':
      return sayBlocked(station, note.item, note.blocked)
    case 'kept':
      return counter.kept(name(note.item), name(note.component))
    case 'base':
      return counter.isBase(
        (findItem(station, note.item)?.base?.choices ?? []).map((one) => name(one)),
      )
    case 'not-of-item':
      return counter.notOfItem(name(note.item), name(note.component))
  }
}
