import fc from 'fast-check'
import { expect, test } from 'vitest'
import { frameTexts } from '#lib/paper/page/head-layout.ts'
import { frameOf, LEAST_PT, PAPERS } from '#lib/paper/page/papers.ts'
import { allergenPaperEn } from '#lib/paper/words/allergen-paper-en.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { listsEn } from '#lib/paper/words/lists-en.ts'
import { prepSheetEn } from '#lib/paper/words/prep-sheet-en.ts'
import { purchaseListEn } from '#lib/paper/words/purchase-list-en.ts'
import { recipeCardEn } from '#lib/paper/words/recipe-card-en.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import { sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { areApart, isInside } from '#tests/support/paper-boxes.ts'
import { demoStation } from '#tests/support/service.ts'

const AT = Date.parse('2026-12-24T18:45:00Z')
const sheet = (asOf: number | null) =>
  sheetOf({ station: demoStation, revision: 1_234, soiled: [], lent: [], asOf })

const aFrame = fc.record({
  // As long as a station's and a recipe's name may be.
  title: fc.constantFrom('Prep sheet', 'Slowroasted paprika chicken thighs boned'),
  station: fc.constantFrom(
    'Line',
    `${'Slowroasted paprika chicken thighs line'}. ${prepSheetEn.sub('2026-12-24', '11:20 AM', 1_240)}`,
  ),
  facts: fc.constantFrom(
    [listsEn.revision(1_234), listsEn.printed(AT, 'America/Chicago')],
    allergenPaperEn.facts(sheet(null), AT),
    allergenPaperEn.facts(sheet(AT), AT),
  ),
  demo: fc.constantFrom(null, listsEn.demo, setUpSheetEn.demo),
  signed: fc.constantFrom([], [prepSheetEn.inCharge], [purchaseListEn.boughtBy, 'Date']),
  foot: fc.constantFrom(
    `${prepSheetEn.foot} ${listsEn.decides}`,
    purchaseListEn.foot,
    recipeCardEn.foot,
    allergenPaperEn.foot,
  ),
  page: fc.constant(frameEn.page(28, 88)),
})

test('[PA48] head and foot of every paper: nothing on anything else, nothing outside, whatever its names', () => {
  fc.assert(
    fc.property(aFrame, fc.constantFrom(...PAPERS), (frame, paper) => {
      const placed = frameTexts(paper, frame)
      const { head, foot } = frameOf(paper)
      const { title, station, facts, demo, signed } = placed
      const above = [title, station, ...facts, ...(demo ? [demo] : [])]
      const blanks = signed.flatMap(({ text, line }) => [text, line])
      for (const one of [...above, ...blanks])
        expect(isInside(one, head), JSON.stringify(one)).toBe(true)
      expect(areApart([...above, ...blanks])).toBe(true)
      for (const one of [placed.foot, placed.page])
        expect(isInside(one, foot), JSON.stringify(one)).toBe(true)
      expect(areApart([placed.foot, placed.page])).toBe(true)
      for (const { pt } of [...above, placed.foot, placed.page])
        expect(pt).toBeGreaterThanOrEqual(LEAST_PT)
    }),
    { numRuns: 200 },
  )
})
