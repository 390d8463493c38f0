import type { PaperWords } from '#components/print/words.tsx'
import type { RowTexts } from '#lib/paper/set-up/row-layout.ts'
import type { SetUpFacts, SetUpPan } from '#lib/paper/set-up/set-up-facts.ts'
import type { WellTexts } from '#lib/paper/set-up/set-up-layout.ts'

const rowTexts = (
  { setUp: words }: PaperWords,
  { scale, contactsSaid }: SetUpFacts,
  pan: SetUpPan,
): RowTexts => ({
  number: pan.number,
  name: pan.name,
  short: pan.short,
  pan: words.pan(pan),
  tool: words.tool(pan.rule),
  load: [
    ...words.load(pan),
    pan.totalMg === null || pan.load.total.kind === 'count' ? '' : words.weighs(pan.totalMg),
    pan.overfull === null ? '' : words.overfull(pan.overfull),
  ],
  limit: words.limit(pan, scale),
  isRead: pan.limit !== null,
  notes: [
    ...(pan.within === null ? [] : [words.within(pan.within.withinMs)]),
    ...(contactsSaid
      ? [pan.touches.length > 0 ? words.touches(pan.touches) : words.touchesNone]
      : []),
    ...(pan.behind.length > 0 ? [words.behind(pan.behind)] : []),
  ],
  outBy: pan.within === null ? null : words.outBy,
})

/** What is said of each well and pan of the sheet. */
export const wellTexts = (words: PaperWords, facts: SetUpFacts): readonly WellTexts[] =>
  facts.wells.map((well) => {
    const label = words.setUp.well(well)
    return {
      label,
      again: words.setUp.continued(label),
      pans: well.pans.map((pan) => ({ stand: pan.stand, texts: rowTexts(words, facts, pan) })),
    }
  })
