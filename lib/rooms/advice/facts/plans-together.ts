/** What is planned of all components, so that loads which are started together make whole builds. */

import type { BatchPlan } from '#lib/estimate/batch-timing.ts'
import { portionSpread } from '#lib/estimate/count-chances.ts'
import type { Forecast, Stocked } from '#lib/estimate/forecast.ts'
import { type JointItem, type JointPlan, jointLoads } from '#lib/estimate/joint-loads.ts'
import { type Moment, planOf } from '#lib/rooms/advice/facts/component-forecast.ts'

const itemsOf = ({ state, toCome }: Moment): readonly JointItem[] =>
  state.station.items.map(({ id, heart, parts }) => ({
    components: [
      heart,
      ...parts
        .filter(({ component, usual }) => component !== heart && usual !== 'no')
        .map(({ component }) => component),
    ],
    builds: toCome[id] ?? { mean: 0, variance: 0 },
  }))

/** By component that can be made again today. */
export const plansTogether = (
  found: Readonly<Record<string, Forecast>>,
  stocked: Readonly<Record<string, Stocked>>,
  moment: Moment,
): Readonly<Record<string, BatchPlan>> => {
  const all = Object.entries(found).flatMap(([component, of]): readonly JointPlan[] => {
    const there = stocked[component]
    const plan = there && planOf(component, of, there, moment)
    const remake = moment.remakes.get(component)
    if (!plan || !there || !remake) return []
    const { supply } = there
    const arriving = supply.arriving.reduce((sum, { portions }) => sum + portions, 0)
    const wanted = portionSpread(of.demand.until(moment.closes), of.demand.perTaking).mean
    const { portionsPerLoad } = remake
    return [{ component, plan, portionsPerLoad, there: supply.mean + arriving, wanted }]
  })
  const loads = jointLoads(all, itemsOf(moment))
  return Object.fromEntries(
    all.map(({ component, plan }) => {
      const joint = loads[component] ?? plan.loads
      return [component, joint === plan.loads ? plan : plan.withLoads(joint)]
    }),
  )
}
