import { describe, expect, it } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { followedDocument, planFollows } from '#lib/rooms/day/facts/followed.ts'
import type { RunningState } from '#lib/service/state.ts'
import { labelOf } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { OPEN_PLANNED, plannedService, RICE } from '#tests/support/plans.ts'
import {
  demoStation,
  eventsOf,
  type Given,
  happening,
  onward,
  running,
  when,
} from '#tests/support/service.ts'

const SLAW: Given = { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1 }

/** The slaw without its dressing, which has soy and sesame in it. */
const plainSlaw: StationDocument = {
  ...demoStation,
  recipes: demoStation.recipes.filter(({ id }) => id !== 'sesame-dressing'),
  components: demoStation.components.map((one) =>
    one.id === 'slaw' ? { ...one, recipes: [], ingredients: ['cabbage'] } : one,
  ),
  ingredients: demoStation.ingredients.filter(({ id }) => id !== 'sesame-oil'),
}

const newest = (document: StationDocument, labels = {}) => ({ revision: 4, document, labels })

const takenBy = (state: RunningState, document: StationDocument, labels = {}): StationDocument => {
  const followed = followedDocument(state, newest(document, labels))
  if ('foodOf' in followed) throw new Error(`there is food of ${followed.foodOf}`)
  return followed.station
}

const word = (station: StationDocument, component: string, code: 'sesame' | 'soy' | 'peanut') =>
  declaredBy(station, component, code).state

describe('a planned service and a newer document', () => {
  it('[PL5] follows it as it is, where nothing is prepared', () => {
    const state = running(plannedService())
    expect(takenBy(state, plainSlaw)).toEqual({
      ...plainSlaw,
      ingredients: plainSlaw.ingredients.map((one) => ({ ...one, readBy: null })),
    })
    expect(planFollows(state, newest(plainSlaw)).map(({ revision }) => revision)).toEqual([4])
    expect(planFollows(state, { ...newest(plainSlaw), revision: 3 })).toEqual([])
    expect(planFollows(state, null)).toEqual([])
  })

  it('[PL5] what its food was made of goes on counting: who keeps sesame apart isn’t told that it fits', () => {
    const before = running(plannedService(SLAW))
    expect(word(before.station, 'slaw', 'sesame')).toBe('contains')
    expect(word(plainSlaw, 'slaw', 'sesame')).not.toBe('contains')
    const station = takenBy(before, plainSlaw)
    expect(word(station, 'slaw', 'sesame')).toBe('contains')
    expect(word(station, 'slaw', 'soy')).toBe('contains')
    // It is a document that the program takes.
    expect(stationSchema.safeParse(station).success).toBe(true)
    // Of what was never prepared nothing stays.
    expect(takenBy(running(plannedService(RICE)), plainSlaw).ingredients).toHaveLength(
      plainSlaw.ingredients.length,
    )
  })

  it('[PL5] once it is thrown out it counts no more', () => {
    const out: Given = {
      type: 'throwOut',
      what: 'batch',
      id: 'b1',
      reason: 'quality',
      initials: 'KT',
    }
    expect(word(takenBy(running(plannedService(SLAW, out)), plainSlaw), 'slaw', 'sesame')).not.toBe(
      'contains',
    )
  })

  it('[PL5] what it touched goes on counting', () => {
    const apart = {
      ...demoStation,
      contacts: (demoStation.contacts ?? []).filter(({ id }) => id !== 'cold-well'),
    }
    const ids = (state: RunningState) => takenBy(state, apart).contacts?.map(({ id }) => id)
    expect(ids(running(plannedService(SLAW)))).toContain('cold-well--before')
    expect(ids(running(plannedService(RICE)))).toEqual(apart.contacts.map(({ id }) => id))
    // Followed again, it is there once.
    const [event] = planFollows(running(plannedService(SLAW)), newest(apart))
    if (!event) throw new Error('it followed nothing')
    const again = running(happening(plannedService(SLAW), [event], null))
    expect(ids(again)?.filter((id) => id.startsWith('cold-well'))).toEqual(['cold-well--before'])
  })

  it('[PL5] a label that the house changed comes by its own event, not with the document', () => {
    const state = running(plannedService(RICE))
    const rice = demoStation.ingredients.find(({ id }) => id === 'brown-rice')
    if (!rice) throw new Error('the station has no rice')
    const label = { ...labelOf(rice), declarations: { ...rice.declarations, peanut: 'contains' } }
    const relabelled: StationDocument = {
      ...demoStation,
      ingredients: demoStation.ingredients.map((one) =>
        one.id === 'brown-rice' ? { ...one, ...label, declarations: { peanut: 'contains' } } : one,
      ),
    }
    const followed = followedDocument(state, newest(relabelled, { 'brown-rice': 1 }))
    if ('foodOf' in followed) throw new Error('it can’t be followed')
    expect(word(followed.station, 'rice', 'peanut')).not.toBe('contains')
    expect(followed.labels).toEqual({})
  })

  it.each([
    ['doesn’t have it', { components: demoStation.components.filter(({ id }) => id !== 'rice') }],
    [
      'counts it in pieces',
      {
        components: demoStation.components.map((one) =>
          one.id === 'rice' ? { ...one, portion: { tool: 'piece', pieces: 1 } as const } : one,
        ),
      },
    ],
  ])('[PL5] a document that %s isn’t followed while there is food of it', (_, over) => {
    const document = { ...demoStation, ...over } as StationDocument
    const state = running(plannedService(RICE))
    expect(followedDocument(state, newest(document))).toEqual({ foodOf: 'rice' })
    expect(planFollows(state, newest(document))).toEqual([])
    expect(planFollows(running(plannedService()), newest(document))).toHaveLength(1)
  })

  it('[PL5] [PL4] it opens on the newest document with what its food was made of', () => {
    const station = () => ({ revision: 7, document: plainSlaw })
    const [opened] = eventsOf(when(plannedService(SLAW), OPEN_PLANNED, { station }))
    if (opened?.type !== 'serviceOpened') throw new Error('it wasn’t opened')
    expect(opened.revision).toBe(7)
    expect(word(opened.station as StationDocument, 'slaw', 'sesame')).toBe('contains')
    expect(Object.keys(onward(plannedService(SLAW), OPEN_PLANNED).state.batches)).toEqual(['b1'])
  })
})
