import { hotFood } from '#lib/rooms/day/facts/ends/hot-food.ts'
import { thrownOut } from '#lib/rooms/day/facts/ends/thrown-out.ts'
import { INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** All that is hot goes into the bin at once, under one person's initials, and nobody measured it. */
export const throwOutHot = defineCommand({
  type: 'throwOutHot',
  who: [],
  stages: ['planned', 'open'],
  schema: { initials: initialsField },
  decide: (state, { initials }, { now }) => {
    if (initials === undefined) return refuse({ code: 'not-initialled' })
    const builds = openBuilds(state).length
    if (builds > 0) return refuse({ code: 'builds-open', count: builds })
    const out = hotFood(state, now).map((place) =>
      thrownOut(state, place, { amount: place.amount, how: 'not-checked' }, now),
    )
    return out.length === 0 ? refuse({ code: 'already-so' }) : happened(...out)
  },
  sample: () => [{ initials: INVENTED_INITIALS }],
  rules: ['EN12'],
  example: { initials: 'KT' },
  tells: ': every hot pan, back-up pan and batch, their amounts not checked',
})
