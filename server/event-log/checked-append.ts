import type { LogEntry, LoggedAnswer } from '#server/event-log/port.ts'

/** What an append writes, as JSON text. */
export interface CheckedAppend {
  readonly entries: readonly { readonly position: number; readonly body: string }[]
  readonly answers: readonly {
    readonly command: string
    readonly fingerprint: string
    readonly body: string
  }[]
}

const encode = (value: unknown): string => {
  const body = JSON.stringify(value)
  if (body === undefined) throw new TypeError('The log keeps JSON only')
  return body
}

/**
 * Encodes what an append hands over, before anything is written.
 * @throws {RangeError} a position other than `after + 1` onwards, or a command id twice.
 * @throws {TypeError} what is not JSON.
 */
export const checkedAppend = (
  after: number,
  entries: readonly LogEntry[],
  answers: readonly LoggedAnswer<unknown>[],
): CheckedAppend => {
  if (!Number.isSafeInteger(after) || after < 0) {
    throw new RangeError(`An append after position ${after}`)
  }
  entries.forEach((entry, index) => {
    if (entry.position !== after + 1 + index) {
      throw new RangeError(`Position ${entry.position} where ${after + 1 + index} belongs`)
    }
  })
  if (new Set(answers.map((answer) => answer.command)).size !== answers.length) {
    throw new RangeError('Two answers to one command in an append')
  }
  return {
    entries: entries.map((entry) => ({ position: entry.position, body: encode(entry) })),
    answers: answers.map(({ command, fingerprint, answer }) => ({
      command,
      fingerprint,
      body: encode(answer),
    })),
  }
}
