import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { reachOf } from '#lib/needs/contact.ts'
import { contactsToTake } from '#lib/rooms/care/facts/house-contacts.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Contact, StationDocument } from '#lib/station/station-document.ts'
import { given, running } from '#tests/support/service.ts'

const open = running(given())
const IDS = open.station.components.map(({ id }) => id)

const contactsOf = (ids: readonly string[]): fc.Arbitrary<Contact[]> =>
  fc
    .array(
      fc.record({
        kind: fc.constantFrom<Contact['kind']>('scoop', 'fryer', 'beside', 'board'),
        components: fc.uniqueArray(fc.constantFrom(...ids), { minLength: 2, maxLength: 3 }),
      }),
      { maxLength: 5 },
    )
    .map((all) => all.map((one, index) => ({ id: `c${index}`, ...one })))

const at = (contacts: Contact[] | null, revision = 1): RunningState => ({
  ...open,
  revision,
  station: { ...open.station, contacts },
})
const later = (contacts: Contact[] | null, over: object = {}) => ({
  revision: 2,
  document: { contacts, components: open.station.components },
  neverTouched: false,
  before: null,
  ...over,
})
const taken = (state: RunningState, told: ReturnType<typeof later>) => {
  const [event] = contactsToTake(state, told)
  return event ? event.contacts : state.station.contacts
}
const reached = (contacts: Contact[] | null) => {
  const station: Pick<StationDocument, 'contacts' | 'components'> = { ...open.station, contacts }
  const reach = reachOf(station, [], [])
  if (reach === null) throw new Error('nobody said')
  return [...reach].flatMap(([id, { line, backup }]) => [
    ...line.map((one) => `line ${id} ${one.component}`),
    ...backup.map((one) => `backup ${id} ${one.component}`),
  ])
}

describe('contacts that an open service takes', () => {
  test('[S192] never reach less than before, nor less than the revision says, unless it never touched', () => {
    fc.assert(
      fc.property(contactsOf(IDS), contactsOf(IDS), (before, after) => {
        const now = new Set(reached(taken(at(before), later(after))))
        for (const one of [...reached(before), ...reached(after)]) expect(now).toContain(one)
        const never = taken(at(before), later(after, { neverTouched: true, before }))
        expect(reached(never).toSorted()).toEqual(reached(after).toSorted())
      }),
    )
  })

  test('[S192] are each called by an id of their own, and taken once', () => {
    fc.assert(
      fc.property(contactsOf(IDS), contactsOf(IDS), (before, after) => {
        const state = at(before)
        const [event] = contactsToTake(state, later(after))
        if (!event) return
        const ids = event.contacts?.map(({ id }) => id) ?? []
        expect(new Set(ids).size).toBe(ids.length)
        const told = { ...at(event.contacts), contactsRevision: 2 }
        expect(contactsToTake(told, later(after))).toEqual([])
        expect(contactsToTake({ ...told, contactsRevision: 1 }, later(after))).toEqual([])
      }),
    )
  })

  test('[S193] are of its own line: what the revision added is left out, what it took away stays as it was', () => {
    const [one = '', other = '', third = ''] = IDS
    const before: Contact[] = [{ id: 'old', kind: 'board', components: [one, other] }]
    const said: Contact[] = [
      { id: 'a', kind: 'scoop', components: [third, 'a-new-one', other] },
      { id: 'b', kind: 'scoop', components: [third, 'a-new-one'] },
    ]
    const components = open.station.components.filter(({ id }) => id !== one)
    const document = { contacts: said, components }
    expect(taken(at(before), later(null, { document, neverTouched: true, before }))).toEqual([
      { id: 'a', kind: 'scoop', components: [third, other] },
      ...before,
    ])
  })

  test('[S192] that an earlier revision took away without that word stay, whatever is said of later ones', () => {
    const [one = '', other = '', third = ''] = IDS
    const fryer: Contact = { id: 'fryer', kind: 'fryer', components: [one, other] }
    const board: Contact = { id: 'board', kind: 'board', components: [other, third] }
    const carried = { ...at([fryer, board], 1), contactsRevision: 2 }
    const told = later([], { revision: 3, neverTouched: true, before: [board] })
    expect(taken(carried, told)).toEqual([fryer])
  })

  test('[S192] are unknown once nobody has confirmed them, until it is said that they never touched', () => {
    const some: Contact[] = [{ id: 'c', kind: 'board', components: IDS.slice(0, 2) }]
    expect(taken(at(some), later(null))).toBeNull()
    expect(taken(at(null), later(some))).toBeNull()
    expect(taken(at(null), later(some, { neverTouched: true }))).toEqual(some)
  })

  test('[S193] of an earlier revision, or of the same, are none to take', () => {
    const some: Contact[] = [{ id: 'c', kind: 'board', components: IDS.slice(0, 2) }]
    expect(contactsToTake(at([], 2), later(some))).toEqual([])
    expect(contactsToTake({ ...at([]), contactsRevision: 3 }, later(some))).toEqual([])
  })
})
