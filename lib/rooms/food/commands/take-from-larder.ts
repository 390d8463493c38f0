import { z } from 'zod'
import { NOT_THE_OLDEST } from '#lib/larder/event.ts'
import { takenFromLarder } from '#lib/rooms/food/facts/larder/from-larder.ts'
import { freeBatchId } from '#lib/service/batch-loads.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { amountField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'

/** What was set aside comes into the service as a batch, with all that is known of it. */
export const takeFromLarder = defineCommand({
  type: 'takeFromLarder',
  who: [],
  stages: ['planned', 'open'],
  schema: {
    lot: z.string().min(1).max(200),
    /** In its component's unit; at most what the lot holds. */
    amount: amountField,
    /** Why it isn't the one that goes first. */
    why: z.enum(NOT_THE_OLDEST).optional(),
    initials: initialsField,
  },
  decide: (state, { lot, amount, why }, { now, larder }) => {
    if (!larder) return refuse({ code: 'cannot-take-lot', lot, problem: { code: 'no-such-lot' } })
    const saysWhy = why !== undefined
    const taken = takenFromLarder(state, larder, lot, { amount, now, saysWhy })
    if ('problem' in taken) return refuse({ code: 'cannot-take-lot', lot, problem: taken.problem })
    const { food } = taken
    return happened({
      type: 'foodTaken',
      batch: freeBatchId(state),
      lot,
      amount,
      food,
      ...(why === undefined ? {} : { why }),
    })
  },
  // Nothing is known here of what lies in a larder.
  sample: () => [],
  rules: ['LA30', 'LA31', 'LA8'],
  example: { lot: 'lot-5f1c', amount: 2_400_000 },
  tells:
    ': its batch is the next of b1, b2 …; another lot than the one that goes first only with `"why": "not-found"`, `still-cooling` or `for-another-day`; else `cannot-take-lot` with its problem',
})
