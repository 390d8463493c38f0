/** What an open service takes of what touches what, as a later revision of its station says it. */
import type { ContactsChanged } from '#lib/service/events/line-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Contact, StationDocument } from '#lib/station/station-document.ts'

export interface LaterContacts {
  readonly revision: number
  readonly document: Pick<StationDocument, 'contacts' | 'components'>
  /** Who published it said that what it no longer names never touched in this service. */
  readonly neverTouched: boolean
  /** What the revision before it names, of which that was said; null: nobody had confirmed any. */
  readonly before: readonly Contact[] | null
}

const isWithin = (one: Contact, other: Contact): boolean =>
  one.kind === other.kind && one.components.every((id) => other.components.includes(id))

/** Contacts that none of the others says already, with ids that none of them has. */
const beside = (all: readonly Contact[], more: readonly Contact[]): Contact[] => {
  const sofar = [...all]
  for (const one of more) {
    if (sofar.some((other) => isWithin(one, other))) continue
    let { id } = one
    while (sofar.some((other) => other.id === id)) id = `${id}--before`
    sofar.push({ ...one, id })
  }
  return sofar
}

const saysSame = (one: readonly Contact[], other: readonly Contact[]): boolean =>
  beside(one, other).length === one.length && beside(other, one).length === other.length

/** As far as components of the service's own line are in them; a contact of one alone is none. */
const amongOwn = (state: RunningState, contacts: readonly Contact[]): readonly Contact[] => {
  const own = new Set(state.station.components.map(({ id }) => id))
  return contacts.flatMap((one) => {
    const components = one.components.filter((id) => own.has(id))
    return components.length < 2 ? [] : [{ ...one, components }]
  })
}

/**
 * What it touches more counts at once. What the revision no longer names goes on counting until the
 * close, unless it is said that it never touched. That word is of what this revision took away: what
 * an earlier one did goes on counting, and so does what it can't speak of, since it doesn't have the
 * component. That nobody has confirmed what touches what is taken as that, and ends only by the same word.
 */
const contactsFor = (
  state: RunningState,
  { document, neverTouched, before: named }: LaterContacts,
): Contact[] | null => {
  const before = state.station.contacts
  if (document.contacts === null) return null
  if (before === null && !neverTouched) return null
  const known = new Set(document.components.map(({ id }) => id))
  const stays = (before ?? []).filter(
    (one) =>
      !neverTouched ||
      !(named ?? []).some((other) => isWithin(one, other)) ||
      one.components.some((id) => !known.has(id)),
  )
  return beside(amongOwn(state, document.contacts), stays)
}

/** Nothing where the revision is none that came later, or tells it nothing new. */
export const contactsToTake = (
  state: RunningState,
  later: LaterContacts,
): readonly ContactsChanged[] => {
  if (later.revision <= (state.contactsRevision ?? state.revision)) return []
  const before = state.station.contacts
  const contacts = contactsFor(state, later)
  const isSame =
    contacts === null || before === null ? contacts === before : saysSame(before, contacts)
  return isSame ? [] : [{ type: 'contactsChanged', contacts, revision: later.revision }]
}
