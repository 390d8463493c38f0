'use client'

import { ListBody } from '#components/print/list/list-body.tsx'
import { PlanPaper, PlanPaperScreen, type PlanShown } from '#components/print/list/plan-paper.tsx'
import { usePaperWords } from '#components/print/words.tsx'
import type { Paper } from '#lib/paper/page/papers.ts'
import { readingsFacts } from '#lib/paper/readings/readings-facts.ts'
import { readingsPages } from '#lib/paper/readings/readings-layout.ts'

function Sheet({ shown }: { readonly shown: PlanShown }) {
  const words = usePaperWords()
  const { state, plan } = shown
  const { timeZone, safety } = state.station
  const { scale } = safety
  const { readings } = words
  const facts = readingsFacts(state.station, plan)
  const asked = {
    heads: readings.heads,
    rounds: facts.rounds.map((by, at) => readings.round(at + 1, by, timeZone)),
    rows: facts.rows.map((row) => ({
      ...{ id: row.id, name: readings.name(row), limit: readings.limit(row, scale) },
      unit: readings.unit(row, scale),
    })),
  }
  const make = (paper: Paper) => ({
    title: readings.title,
    sub: words.prep.sub(plan.on, plan.doorsOpen, state.expected),
    signed: [readings.readBy],
    foot: `${readings.foot} ${words.lists.decides}`,
    bodies: readingsPages(paper, asked).map((page, at) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
      <ListBody key={at} page={page} />
    )),
  })
  return <PlanPaper shown={shown} make={make} />
}

/** A log of readings by hand, for when no screen is there: printed from the browser. */
export function ReadingsSheetScreen() {
  return (
    <PlanPaperScreen
      titleOf={(words) => words.readings.title}
      render={(shown) => <Sheet shown={shown} />}
    />
  )
}
