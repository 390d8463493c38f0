import { z } from 'zod'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const answerAdviceSchema = z.strictObject({
  type: z.literal('answerAdvice'),
  key: z.string().min(1).max(160),
  answer: z.enum(['done', 'put-off', 'declined']),
})

/** The lead's answer to what was told and is open. */
export const decideAnswerAdvice = (
  state: ServiceState,
  { key, answer }: z.infer<typeof answerAdviceSchema>,
): Decision =>
  whenOpen(state, (running) =>
    running.adviceLog.some((one) => one.key === key && one.answer === 'open')
      ? happened({ type: 'adviceAnswered', key, answer })
      : refuse({ code: 'no-such-advice' }),
  )
