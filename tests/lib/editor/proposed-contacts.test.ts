import { describe, expect, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { applyStep } from '#lib/editor/apply-step.ts'
import type { Draft, Row } from '#lib/editor/draft.ts'
import { draftOf } from '#lib/editor/draft-of.ts'
import { assembleDocument } from '#lib/editor/problems-of.ts'
import { confirmSteps, openContacts, proposedContacts } from '#lib/editor/proposed-contacts.ts'
import { layDocument } from '#lib/editor/raw-document.ts'
import { stationSchema } from '#lib/station/schema.ts'

const demo = draftOf(JSON.parse(JSON.stringify(stationSchema.parse(alderHall))))

const pan = (well: string, component: string, size: string, at: number): Row => ({
  well,
  component,
  size,
  at,
})
const scoop = (number: number): Row => ({ portion: { tool: 'scoop', number } })

/** Two wells: thirds and sixths in the first, a half in the second. */
const line: Draft = {
  station: 'a',
  rows: {
    'well:one': { at: 0 },
    'well:two': { at: 1 },
    'pan:a': pan('one', 'chives', 'sixth', 0),
    'pan:b': pan('one', 'seeds', 'sixth', 1),
    'pan:c': pan('one', 'cream', 'third', 2),
    'pan:d': pan('two', 'chili', 'half', 0),
    'component:chives': { ...scoop(16), warm: null },
    'component:seeds': { ...scoop(40), warm: { on: 'Panini press', seconds: 9 } },
    'component:cream': { ...scoop(16), warm: { on: 'panini press', seconds: 20 } },
    'component:chili': scoop(8),
    'component:beans': scoop(8),
    'tool:own': { usualFor: 'beans' },
  },
}

describe('what touches what', () => {
  test('[ED4] is proposed of neighbours, of reaching over, of one tool and of one place to warm', () => {
    expect(proposedContacts(line)).toEqual([
      { kind: 'reached-over', components: ['chives', 'seeds'], of: 'one' },
      { kind: 'beside', components: ['chives', 'cream'], of: 'one' },
      { kind: 'beside', components: ['cream', 'seeds'], of: 'one' },
      { kind: 'beside', components: ['chili', 'cream'], of: 'one two' },
      { kind: 'press', components: ['cream', 'seeds'], of: 'panini press' },
      { kind: 'scoop', components: ['chives', 'cream'], of: 'scoop 16 ' },
    ])
  })

  test('[ED4] is nothing before somebody confirmed it, and counts as touching where it is open since', () => {
    expect(layDocument(line, {}).document.contacts).toBeNull()
    const [first] = openContacts(line)
    const confirmed = confirmSteps(line, [first?.id ?? '']).reduce((draft, step) => {
      const stepped = applyStep(draft, step)
      return stepped.ok ? stepped.draft : draft
    }, line)
    expect(openContacts(confirmed)).toEqual([])
    expect(layDocument(confirmed, {}).document.contacts).toHaveLength(5)
    const moved = applyStep(confirmed, {
      do: 'put',
      entity: 'pan',
      id: 'new',
      fields: { well: 'two', component: 'beans', size: 'half' },
    })
    if (!moved.ok) throw new Error(moved.why)
    expect(openContacts(moved.draft)).toEqual([
      {
        id: 'beside-beans-chili',
        row: { kind: 'beside', components: ['beans', 'chili'] },
        of: 'two',
      },
    ])
    expect(layDocument(moved.draft, {}).document.contacts).toContainEqual({
      id: 'beside-beans-chili',
      kind: 'beside',
      components: ['beans', 'chili'],
    })
  })

  test('[ED4] asks anew where what doesn’t touch beside stands behind it since', () => {
    const said: Draft = {
      ...line,
      rows: {
        ...line.rows,
        house: { contactsSaid: true },
        'contact:no': {
          kind: 'beside',
          components: ['chives', 'seeds'],
          touches: false,
          of: 'one',
        },
        'contact:yes': { kind: 'reached-over', components: ['chives', 'cream'] },
      },
    }
    const open = openContacts(said).map(({ row: { kind, components } }) => ({ kind, components }))
    expect(open).toContainEqual({ kind: 'reached-over', components: ['chives', 'seeds'] })
    expect(open).not.toContainEqual({ kind: 'beside', components: ['chives', 'cream'] })
  })

  test('[ED4] asks anew of what was apart by another tool, place to warm or well', () => {
    const apart = confirmSteps(
      line,
      openContacts(line).map(({ id }) => id),
    ).reduce((draft, step) => {
      const stepped = applyStep(draft, step)
      if (!stepped.ok) throw new Error(stepped.why)
      return stepped.draft
    }, line)
    expect(layDocument(apart, {}).document.contacts).toEqual([])
    const kindsWith = (rows: Draft['rows']) => {
      const draft = { ...apart, rows: { ...apart.rows, ...rows } }
      const all = layDocument(draft, {}).document.contacts as readonly Row[]
      return all.map(({ kind, components }) => ({ kind, components }))
    }
    expect(
      kindsWith({
        'component:chives': scoop(30),
        'component:cream': { ...scoop(30), warm: apart.rows['component:cream']?.warm ?? null },
      }),
    ).toEqual([{ kind: 'scoop', components: ['chives', 'cream'] }])
    expect(
      kindsWith({
        'component:seeds': { ...scoop(40), warm: { on: 'press by the door', seconds: 9 } },
        'component:cream': { ...scoop(16), warm: { on: 'press by the door', seconds: 9 } },
      }),
    ).toEqual([{ kind: 'press', components: ['cream', 'seeds'] }])
    const moved = kindsWith({
      'pan:c': pan('two', 'cream', 'third', 0),
      'pan:d': pan('two', 'chili', 'half', 1),
    })
    expect(moved).toContainEqual({ kind: 'beside', components: ['chili', 'cream'] })
    const again = draftOf(layDocument(apart, {}).document as Parameters<typeof draftOf>[0])
    expect(openContacts(again)).toEqual([])
  })

  test('[ED4] of a document that says it is all of it: what else the drawing proposes is apart', () => {
    expect(openContacts(demo)).toEqual([])
    expect(assembleDocument({ ...demo, rows: { ...demo.rows } }, {})).toMatchObject({ ok: true })
    const { house, ...others } = demo.rows
    const unsaid = { ...demo, rows: { ...others, house: { ...house, contactsSaid: false } } }
    expect(layDocument(unsaid, {}).document.contacts).toBeNull()
  })
})
