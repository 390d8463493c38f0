/** The set-up sheet of a plan: its loads in place of what is usual. */
import type { PlannedFood, SetUpFacts, SetUpPan } from '#lib/paper/set-up/set-up-facts.ts'
import { componentOf } from '#lib/station/find.ts'
import { portionOf } from '#lib/station/portion.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** By the id of each component; of one that isn't named nothing is planned. */
export type PlannedFoods = Readonly<Record<string, PlannedFood | undefined>>

const NOTHING: PlannedFood = { loads: 0, portions: 0, inLarder: 0 }

/** Every pan with all that the plan has of its food: loads aren't divided among pans that share them. */
export const withPlan = (
  facts: SetUpFacts,
  station: StationDocument,
  foods: PlannedFoods,
): SetUpFacts => {
  const all = facts.wells.flatMap(({ pans }) => pans)
  const planned = (pan: SetUpPan): SetUpPan => {
    const component = componentOf(station, pan.component)
    const food = foods[component.id] ?? NOTHING
    const { unit, amount } = portionOf(component)
    const same = all.filter((one) => one.component === component.id)
    const { holds } = pan
    return {
      ...pan,
      planned: food,
      load: loadTotal(component, food.portions),
      totalMg: unit === 'mg' ? amount * food.portions : null,
      shares: same.length > 1 && food.loads > 0 ? same.map(({ number }) => number) : [],
      overfull: holds !== null && holds * food.loads < food.portions ? holds : null,
    }
  }
  return {
    ...facts,
    wells: facts.wells.map((well) => ({ ...well, pans: well.pans.map(planned) })),
  }
}
