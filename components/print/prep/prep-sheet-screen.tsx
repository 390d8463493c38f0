'use client'

import { ListBody, Strip } from '#components/print/list/list-body.tsx'
import { PlanPaper, PlanPaperScreen, type PlanShown } from '#components/print/list/plan-paper.tsx'
import { prepSections } from '#components/print/prep/prep-texts.ts'
import { usePaperWords } from '#components/print/words.tsx'
import { cardsOf } from '#lib/paper/lists/made-of.ts'
import type { Paper } from '#lib/paper/page/papers.ts'
import { prepFacts } from '#lib/paper/prep/prep-facts.ts'
import { prepPages } from '#lib/paper/prep/prep-layout.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { crewNames } from '#lib/rooms/prep/views/plan-entry.ts'

function Sheet({ shown }: { readonly shown: PlanShown }) {
  const words = usePaperWords()
  const { state, plan, prep, ahead, told } = shown
  const { station } = state
  const prepared = preparedOf(state) ?? { tasks: [], unready: [], idle: [] }
  const facts = prepFacts({ cards: cardsOf(station, ahead.answer.yields), plan, prep, prepared })
  const rows = new Map(
    facts.sections.flatMap((section) => section.rows.map((row) => [row.task.id, row] as const)),
  )
  const said = {
    ...{ words, timeZone: station.timeZone, scale: station.safety.scale },
    names: crewNames(plan.crew, told, words.prep.person),
  }
  const sections = prepSections(said, facts)
  const make = (paper: Paper) => {
    const { strip, pages } = prepPages(paper, facts.wells, sections)
    return {
      title: words.prep.title,
      sub: words.prep.sub(plan.on, plan.doorsOpen, state.expected),
      signed: [words.prep.inCharge],
      foot: `${words.prep.foot} ${words.lists.decides}`,
      bodies: pages.map((page, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
        <div key={at}>
          {at === 0 && <Strip strip={strip} black={[]} />}
          <ListBody page={page} wells={facts.wells} blackOf={(row) => rows.get(row)?.pans ?? []} />
        </div>
      )),
    }
  }
  return <PlanPaper shown={shown} make={make} />
}

/** The prep sheet of a plan, printed from the browser. */
export function PrepSheetScreen() {
  return (
    <PlanPaperScreen
      titleOf={(words) => words.prep.title}
      render={(shown) => <Sheet shown={shown} />}
    />
  )
}
