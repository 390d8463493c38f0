import type { AdviceReason, SafetyReason } from '#lib/estimate/advice-reason.ts'

/** Whether a reason is a duty about food, which is told always and can't be put off. */
export const isDuty = (reason: AdviceReason): reason is SafetyReason => reason.why === 'safety'
