import { z } from 'zod'
import { answeredPlace } from '#lib/rooms/advice/facts/advice-answered.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { minuteAt } from '#lib/service/minute.ts'

/** The lead's answer to what was told and is open, or lapsed a moment ago. */
export const answerAdvice = defineCommand({
  type: 'answerAdvice',
  who: [],
  stages: ['open'],
  schema: {
    key: z.string().min(1).max(160),
    answer: z.enum(['done', 'put-off', 'declined']),
  },
  decide: (state, { key, answer }, { now }) =>
    answeredPlace(state.adviceLog, key, minuteAt(state, now)) >= 0
      ? happened({ type: 'adviceAnswered', key, answer })
      : refuse({ code: 'unknown', what: 'advice', id: key }),
  sample: ({ adviceLog }) =>
    adviceLog
      .filter(({ answer }) => answer === 'open')
      .map(({ key }) => ({ key, answer: 'done' }) as const),
  rules: ['U13'],
  example: { key: 'start-batch rice', answer: 'done' },
  tells: ' (`done`, `put-off` or `declined`)',
})
