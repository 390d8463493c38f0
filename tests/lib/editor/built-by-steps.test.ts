import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Draft } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { assembleDocument } from '#lib/editor/problems-of.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { acts, builtBySteps } from '#tests/support/built-by-steps.ts'
import { labelsOf } from '#tests/support/labels-of.ts'
import { happening, NOTHING, OPENED_AT, when } from '#tests/support/service.ts'

const assembled = (draft: Draft): StationDocument => {
  const made = assembleDocument(draft, {})
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return made.document
}

/** Opened, and every pan and back-up pan loaded: what was refused of it. */
const refusals = (document: StationDocument): readonly unknown[] => {
  let told = NOTHING
  const refused: unknown[] = []
  for (const command of [
    { type: 'open', station: document.id, kind: 'real' } as const,
    ...openingCommands(document, OPENED_AT),
  ]) {
    const decision = when(told, command, {
      by: 'in-charge',
      station: () => ({ revision: 1, document, labels: {} }),
    })
    if ('refusal' in decision) refused.push([command, decision.refusal])
    else told = happening(told, decision.events)
  }
  return refused
}

describe('a station that is set up by steps', () => {
  test('[ED8] is taken by the schema, opened and loaded as usual, whatever was done on the way', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const document = assembled(builtBySteps(done))
        expect(stationSchema.parse(JSON.parse(JSON.stringify(document)))).toEqual(document)
        expect(refusals(document)).toEqual([])
      }),
      { numRuns: 40 },
    )
  })

  test('[ED2] comes out the same when it is taken apart and laid together again', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const document = assembled(builtBySteps(done))
        const written: WrittenDocument = JSON.parse(JSON.stringify(document))
        expect(assembleDocument(draftOf(written), labelsOf(written))).toEqual({
          ok: true,
          document,
        })
      }),
      { numRuns: 40 },
    )
  })
})
