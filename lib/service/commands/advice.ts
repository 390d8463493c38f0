import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { answeredPlace } from '#lib/stock/advice-answered.ts'
import { minuteAt } from '#lib/stock/minute.ts'

export const answerAdviceSchema = z.strictObject({
  type: z.literal('answerAdvice'),
  key: z.string().min(1).max(160),
  answer: z.enum(['done', 'put-off', 'declined']),
})

/** The lead's answer to what was told and is open, or lapsed a moment ago. */
export const decideAnswerAdvice = (
  state: ServiceState,
  { key, answer }: z.infer<typeof answerAdviceSchema>,
  { now }: Pick<Circumstances, 'now'>,
): Decision =>
  whenOpen(state, (running) =>
    answeredPlace(running.adviceLog, key, minuteAt(running, now)) >= 0
      ? happened({ type: 'adviceAnswered', key, answer })
      : refuse({ code: 'no-such-advice' }),
  )
