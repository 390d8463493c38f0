import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'

/** Refused for the first thing that stands in its way. */
export const close = defineCommand({
  type: 'close',
  who: [],
  stages: ['open'],
  schema: {},
  decide: (state, _, { now }) => {
    const [first] = notYetClosed(state, now)
    return first ? refuse(first) : happened({ type: 'serviceClosed', why: 'by-hand' })
  },
  sample: () => [{}],
  rules: ['S5', 'S93', 'B22', 'Z65'],
  example: {},
})

export const confirmClock = defineCommand({
  type: 'confirmClock',
  who: [],
  stages: ['planned', 'open'],
  schema: {},
  decide: ({ clockJump }) =>
    clockJump === null ? refuse({ code: 'already-so' }) : happened({ type: 'clockConfirmed' }),
  sample: () => [{}],
  rules: ['S9', 'B23'],
  example: {},
  tells: ': after a jump of the server’s clock',
})
