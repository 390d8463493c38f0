import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'

/** It is never opened: nothing is left in it, and nothing falls due in it any more. */
export const dropPlan = defineCommand({
  type: 'dropPlan',
  who: [],
  stages: ['planned'],
  schema: {},
  decide: (state, _, { now }) => {
    const [first] = notYetClosed(state, now)
    return first ? refuse(first) : happened({ type: 'planDropped' })
  },
  sample: () => [{}],
  rules: ['PL6'],
  example: {},
  tells: ': once its food is thrown out or set aside',
})
