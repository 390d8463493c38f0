import type { PaperWords } from '#components/print/words.tsx'
import type { RowTexts } from '#lib/paper/set-up/row-layout.ts'
import type { SetUpFacts, SetUpPan } from '#lib/paper/set-up/set-up-facts.ts'
import type { WellTexts } from '#lib/paper/set-up/set-up-layout.ts'

type Words = PaperWords['setUp']

const loadTexts = (words: Words, pan: SetUpPan): RowTexts['load'] => {
  const { planned, totalMg, load, overfull } = pan
  const isNone = planned !== null && planned.loads === 0
  const [times, total] = isNone ? ['', ''] : words.load(pan)
  return {
    ...{ times, total },
    loads: planned === null ? '' : words.loads(planned),
    weight: isNone || totalMg === null || load.total.kind === 'count' ? '' : words.weighs(totalMg),
    more: planned === null ? '' : words.inLarder(planned),
    wrong: overfull === null ? '' : words.overfull(overfull),
  }
}

const rowTexts = (words: Words, { scale, contactsSaid }: SetUpFacts, pan: SetUpPan): RowTexts => ({
  number: pan.number,
  name: pan.name,
  short: pan.short,
  pan: words.pan(pan),
  tool: words.tool(pan.rule),
  load: loadTexts(words, pan),
  limit: words.limit(pan, scale),
  isRead: pan.limit !== null,
  notes: [
    ...(pan.shares.length > 0 ? [words.shares(pan.shares)] : []),
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
      pans: well.pans.map((pan) => ({
        stand: pan.stand,
        texts: rowTexts(words.setUp, facts, pan),
      })),
    }
  })
