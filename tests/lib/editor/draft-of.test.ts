import { describe, expect, test } from 'vitest'
import alderHall from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { draftOf } from '#lib/editor/draft-of.ts'
import { assembleDocument, problemsOf } from '#lib/editor/problems-of.ts'
import { layDocument } from '#lib/editor/raw-document.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { labelsOf } from '#tests/support/labels-of.ts'

const document = stationSchema.parse(alderHall)
const written = JSON.parse(JSON.stringify(document))

describe('a document taken apart and laid together', () => {
  test('[ED2] is the same document, with its labels from beside it', () => {
    const draft = draftOf(written)
    const labels = labelsOf(written)
    expect(layDocument(draft, labels).document).toEqual(written)
    expect(problemsOf(draft, labels)).toEqual([])
    const assembled = assembleDocument(draft, labels)
    expect(assembled).toEqual({ ok: true, document })
  })
})
