import type { Answer } from '#lib/protocol/wire.ts'
import type { NotTakenCode } from '#lib/service/refusal.ts'

/** Not-taken answers that won't get better by sending the same again. */
const FINAL: ReadonlySet<NotTakenCode> = new Set<NotTakenCode>([
  'not-the-protocol',
  'too-large',
  'newer-version',
  'older-version',
  'role-may-not',
  'wrong-passphrase',
  'no-passphrase',
  'too-many-tries',
  'not-proved',
  'no-such-service',
])

/** Whether a command needn't be sent again. */
export const isSettled = (answer: Answer): boolean =>
  answer.answer !== 'not taken' || FINAL.has(answer.because.code)
