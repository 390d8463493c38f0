/** A command that is sent until it is answered, always under one id. */
import type { Answer } from '#lib/protocol/wire.ts'

const MOST_TRIES = 3

const isForLater = (answer: Answer): boolean =>
  answer.answer === 'not taken' && ['busy', 'closing'].includes(answer.because.code)

/**
 * The server's answer; null where none came, and nobody knows whether it was done. A send that throws
 * wasn't answered; `pause` is between two tries.
 */
export const untilAnswered = async (
  send: () => Promise<Answer>,
  pause: () => Promise<void>,
): Promise<Answer | null> => {
  for (let tries = 1; tries <= MOST_TRIES; tries += 1) {
    const answer = await send().catch(() => null)
    if (answer !== null && !isForLater(answer)) return answer
    if (tries < MOST_TRIES) await pause()
  }
  return null
}
