import { describe, expect, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { applyStep } from '#lib/editor/apply-step.ts'
import { begun, emptyStation } from '#lib/editor/begin.ts'
import { changesBetween } from '#lib/editor/changes-between.ts'
import { type Draft, rowsOf } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { missingFor } from '#lib/editor/missing-for.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import type { DraftLabels } from '#lib/editor/raw-document.ts'
import type { Step } from '#lib/editor/step.ts'
import { sayChange } from '#lib/editor/words/changes-en.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { labelsOf } from '#tests/support/labels-of.ts'

const written: WrittenDocument = JSON.parse(JSON.stringify(stationSchema.parse(alderHall)))
const demo = draftOf(written)
const labels = labelsOf(written)
const HERE = { timeZone: 'America/Chicago', locale: 'en-US' }

const stepped = (from: Draft, ...steps: readonly Step[]): Draft =>
  steps.reduce((draft, step) => {
    const taken = applyStep(draft, step)
    if (!taken.ok) throw new Error(taken.why)
    return taken.draft
  }, from)

const missing = (draft: Draft, read: DraftLabels = labels, today = '2026-11-29') =>
  missingFor(draft, read, problemsOf(draft, read), today)

const codes = (list: readonly { readonly code: string; readonly id: string }[]) =>
  list.map(({ code, id }) => `${code} ${id}`)

describe('what is missing', () => {
  test('[ED6] for a first order of an empty station: a well, a pan, a component and an item', () => {
    const { firstOrder, keepApart } = missing(emptyStation('a', 'A', HERE), {})
    expect(codes(firstOrder).slice(0, 4)).toEqual([
      'no-well house',
      'no-pan house',
      'no-component house',
      'no-item house',
    ])
    expect(codes(keepApart)).toEqual(['contacts-unsaid house'])
  })

  test('[ED6] for a first order of the demo: nothing', () => {
    expect(missing(demo).firstOrder).toEqual([])
  })

  test('[ED6] for keep apart: labels unread, too old, or silent of an allergen', () => {
    expect(codes(missing(demo, {}).keepApart)).toEqual(
      expect.arrayContaining(rowsOf(demo, 'ingredient').map(({ id }) => `label-unread ${id}`)),
    )
    const late = missing(demo, labels, '2027-03-01').keepApart
    expect(late).toContainEqual(
      expect.objectContaining({ code: 'label-old', id: 'tuna', costs: 'unknown' }),
    )
    const said = { ...labels.tuna, declarations: { fish: 'contains' } }
    expect(missing(demo, { ...labels, tuna: said }).keepApart).toContainEqual(
      expect.objectContaining({ code: 'not-said', entity: 'ingredient', id: 'tuna' }),
    )
  })

  test('[ED6] for keep apart: what touches and has no protected back-up pan', () => {
    const left = stepped(demo, { do: 'remove', entity: 'backup', id: 'back-up-chicken' })
    const found = codes(missing(left).keepApart)
    expect(found).toContain('no-protected-backup chicken')
    expect(codes(missing(demo).keepApart)).not.toContain('no-protected-backup chicken')
  })

  test('[ED6] without a density: it is counted by weight', () => {
    const draft = stepped(demo, {
      do: 'put',
      entity: 'component',
      id: 'rice',
      fields: { portion: { tool: 'scoop', number: 16, level: 2, source: 'none yet' } },
    })
    expect(missing(draft).firstOrder).toEqual([
      {
        code: 'no-density',
        costs: 'by-weight',
        entity: 'component',
        id: 'rice',
        field: 'portion.gPerCup',
      },
    ])
  })

  test('[ED6] for printing: amounts, yields and when it closes', () => {
    const draft = stepped(
      demo,
      { do: 'put', entity: 'day', id: 'day', fields: { closes: null } },
      { do: 'put', entity: 'recipe', id: 'tuna-mix', fields: {}, clear: ['lines', 'yields'] },
    )
    expect(codes(missing(demo).printing)).toEqual([])
    expect(codes(missing(draft).printing)).toEqual(
      expect.arrayContaining(['no-close day', 'no-amounts tuna-mix', 'no-yield tuna-mix']),
    )
  })
})

describe('what changed', () => {
  test('[ED7] is nothing between a draft and itself', () => {
    expect(changesBetween(demo, structuredClone(demo))).toEqual([])
  })

  test('[ED7] names what was added, removed, moved and changed, with both values', () => {
    const later = stepped(
      demo,
      { do: 'put', entity: 'item', id: 'garden-chicken', fields: { priceCents: 700 } },
      { do: 'put', entity: 'well', id: 'more', fields: { held: 'cold' } },
      { do: 'remove', entity: 'item', id: 'bean-and-pepper' },
      { do: 'move', entity: 'pan', id: 'pan-peppers', before: null, well: 'finish' },
      { do: 'move', entity: 'well', id: 'finish', before: 'bases' },
    )
    expect(changesBetween(demo, later)).toEqual([
      { what: 'moved', entity: 'well', id: 'finish', name: 'finish' },
      { what: 'added', entity: 'well', id: 'more', name: 'more' },
      { what: 'moved', entity: 'pan', id: 'pan-almonds', name: expect.any(String) },
      { what: 'moved', entity: 'pan', id: 'pan-yogurt-sauce', name: expect.any(String) },
      { what: 'moved', entity: 'pan', id: 'pan-peppers', name: expect.any(String) },
      expect.objectContaining({ what: 'removed', entity: 'item', id: 'bean-and-pepper' }),
      {
        what: 'changed',
        entity: 'item',
        id: 'garden-chicken',
        name: 'Garden chicken',
        field: 'priceCents',
        from: 650,
        to: 700,
      },
    ])
  })

  test('[ED7] a touch that nobody says any more is told as that, never as food that is gone', () => {
    const of = { entity: 'contact', id: 'a', name: 'Lime cream, Cabbage' } as const
    expect(sayChange({ what: 'removed', ...of })).toBe(
      'Lime cream, Cabbage: said to touch no more.',
    )
    expect(sayChange({ what: 'added', ...of })).toBe('Lime cream, Cabbage: said to touch.')
  })

  test('[ED7] is no label: those are the house’s', () => {
    const relabelled = draftOf({
      ...written,
      ingredients: (written.ingredients as (typeof written)[]).map((one) => ({
        ...one,
        declarations: {},
      })),
    })
    expect(changesBetween(demo, relabelled)).toEqual([])
  })
})

describe('a station begins', () => {
  test('[ED12] as a copy under its own id and name, nobody’s invention, where the laptop stands', () => {
    const here = { timeZone: 'Europe/Dublin', locale: 'en-IE' }
    const copy = begun({ station: 'mine', name: 'Mine', here, from: demo })
    expect(copy.station).toBe('mine')
    expect(copy.rows.house).toMatchObject({
      name: 'Mine',
      invented: false,
      timeZone: 'Europe/Dublin',
    })
    expect(copy.rows.house?.contactsSaid).toBeUndefined()
    const confirmed = Object.entries(demo.rows).filter(([, row]) => row?.touches !== false)
    expect({ ...copy.rows, house: demo.rows.house }).toEqual(Object.fromEntries(confirmed))
  })

  test('[ED12] from nothing with the settings of where it stands, and no answer about food', () => {
    const { rows } = emptyStation('a', 'A', { timeZone: 'Europe/London', locale: 'en-GB' })
    expect(rows.house).toMatchObject({ currency: 'GBP', allergenSet: 'eu-14', name: 'A' })
    expect(rows.safety).toMatchObject({ scale: 'C', timeProcedure: false })
    expect(Object.keys(rows)).toEqual(['house', 'safety', 'day'])
  })
})
