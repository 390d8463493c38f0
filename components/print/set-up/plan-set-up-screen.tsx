import { PlanPaper, PlanPaperScreen, type PlanShown } from '#components/print/list/plan-paper.tsx'
import { wellTexts } from '#components/print/set-up/row-texts.ts'
import { SetUpBody } from '#components/print/set-up/set-up-page.tsx'
import { usePaperWords } from '#components/print/words.tsx'
import type { Paper } from '#lib/paper/page/papers.ts'
import { type PlannedFoods, withPlan } from '#lib/paper/set-up/planned-loads.ts'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { setUpPages } from '#lib/paper/set-up/set-up-layout.ts'
import { fromLarder } from '#lib/rooms/prep/views/par-told.ts'

const foodsOf = ({ state, prep, ahead }: PlanShown): PlannedFoods =>
  Object.fromEntries(
    state.station.components.map(({ id }) => {
      const { loads, portions } = prep.foods.find(({ component }) => component === id) ?? {
        ...{ loads: 0, portions: 0 },
      }
      const told = ahead.answer.wanted[id]
      return [id, { loads, portions, inLarder: told === undefined ? 0 : fromLarder(told) }]
    }),
  )

function Sheet({ shown }: { readonly shown: PlanShown }) {
  const words = usePaperWords()
  const { setUp } = words
  const { state, plan } = shown
  const facts = withPlan(setUpFacts(state.station), state.station, foodsOf(shown))
  const foot = [
    setUp.byPlan,
    setUp.scale,
    ...(facts.contactsSaid ? [] : [setUp.touchesUnsaid]),
    setUp.decides,
  ].join(' ')
  const make = (paper: Paper) => ({
    title: setUp.title,
    sub: words.prep.sub(plan.on, plan.doorsOpen, state.expected),
    signed: [setUp.setUpBy],
    foot,
    bodies: setUpPages(paper, wellTexts(words, facts)).map((page, at) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a page has no name but its number
      <SetUpBody key={at} {...{ paper, page }} />
    )),
  })
  return <PlanPaper shown={shown} make={make} />
}

/** The line's set-up sheet by the plan in the address: what goes in is the plan's. */
export function PlanSetUpScreen() {
  return (
    <PlanPaperScreen
      hasPar
      titleOf={(words) => words.setUp.title}
      render={(shown) => <Sheet shown={shown} />}
    />
  )
}
