import { z } from 'zod'
import { type Measures, MOST_MEASURES } from '#lib/estimate/nearest-scoop.ts'
import { portionMg } from '#lib/measure/portion.ts'
import { toolVolumeMl } from '#lib/measure/portion-tools.ts'
import { isFarOff, percentOff, scoopChoices } from '#lib/rooms/pans/facts/scoop-choices.ts'
import { lendersOf, missingOf, standInFor, toolsAtHand } from '#lib/rooms/pans/facts/stand-in.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'

const decideMeasures = (
  state: RunningState,
  component: string,
  measures: readonly Measures[],
  yes: boolean,
): Decision => {
  const missing = missingOf(state, component)
  const tools = toolsAtHand(state, component)
  if (!missing) return refuse({ code: 'no-scoop', component })
  for (const { id } of measures) {
    const tool = tools.find((one) => one.id === id)
    if (!tool) return refuse({ code: 'unknown', what: 'tool', id })
    const [not] = standInFor(state, component, [tool])?.notLent ?? []
    if (not?.why === 'carries')
      return refuse({
        code: 'scoop-carries',
        tool: id,
        component,
        need: not.code,
        from: not.from,
        into: not.into,
      })
    if (not) return refuse({ code: 'unknown', what: 'tool', id })
  }
  const count = measures.reduce((sum, one) => sum + one.count, 0)
  if (count > MOST_MEASURES) return refuse({ code: 'too-many-measures', most: MOST_MEASURES })
  const ml = measures.reduce((sum, { id, count: times }) => {
    const tool = tools.find((one) => one.id === id)
    return tool ? sum + toolVolumeMl(tool.tool) * times : sum
  }, 0)
  const amount = portionMg(ml, missing.gPerMl, 1)
  if (amount < 1) return refuse({ code: 'no-scoop-fits', component })
  const error = amount / missing.portionMg - 1
  if (isFarOff(error) && !yes)
    return refuse({ code: 'scoop-far-off', component, percent: percentOff(error) })
  const lentBy = lendersOf(state, component, measures)
  return happened({
    type: 'scoopMissed',
    component,
    measures,
    portion: { unit: 'mg', amount },
    ...(lentBy.length > 0 ? { lentBy } : {}),
  })
}

const everyComponent = ({ station }: RunningState) =>
  station.components.map(({ id }) => ({ component: id }))

/** A component's scoop is missing: tools at hand stand in, never one that carries an allergen into it. */
export const missScoop = defineCommand({
  type: 'missScoop',
  who: [],
  stages: ['open'],
  schema: {
    component: idField,
    /** Level measures of tools at hand; an identical spare, else the nearest, where left away. */
    measures: z
      .array(z.strictObject({ id: idField, count: z.int().min(1).max(20) }))
      .min(1)
      .max(4)
      .readonly()
      .optional(),
    /** The lead's own yes to a portion that is far off; no where left away. */
    yes: z.boolean().optional(),
  },
  decide: (state, { component, measures, yes = false }) => {
    if (!findComponent(state.station, component))
      return refuse({ code: 'unknown', what: 'component', id: component })
    if (measures) return decideMeasures(state, component, measures, yes)
    const offered = scoopChoices(state, component)
    if (!offered) return refuse({ code: 'no-scoop', component })
    const [first] = offered.choices
    return first
      ? decideMeasures(state, component, first.measures, yes)
      : refuse({ code: 'no-scoop-fits', component })
  },
  sample: everyComponent,
  rules: ['U10', 'K30', 'K31', 'F35', 'F36'],
  example: { component: 'rice' },
  tells:
    ': its scoop is missing; `"measures": [{ "id": "scoop-12", "count": 1 }]` says with what; where they are left away an identical spare is taken, else the nearest. `"yes": true` where the portion is 20 % off or more',
})

export const scoopBack = defineCommand({
  type: 'scoopBack',
  who: [],
  stages: ['open'],
  schema: {
    component: idField,
    /** Whether the tools that stood in were washed; no where left away. */
    washed: z.boolean().default(false),
  },
  decide: (state, { component, washed }) => {
    const standIn = state.standIns[component]
    if (!findComponent(state.station, component))
      return refuse({ code: 'unknown', what: 'component', id: component })
    return standIn
      ? happened({ type: 'scoopFound', component, portion: standIn.usual, washed })
      : refuse({ code: 'already-so' })
  },
  sample: (state) => everyComponent(state).map((one) => ({ ...one, washed: true })),
  rules: ['U11', 'U12'],
  example: { component: 'rice', washed: true },
  tells: ' (`washed`: the tools that stood in)',
})
