import type { Command } from '#lib/service/decide.ts'
import { hashOf } from '#lib/service/state-hash.ts'

/** What makes two commands the same, without the name that one may carry. */
export const fingerprintOf = (command: Command): string => {
  if (command.type !== 'send') return hashOf(command)
  const { name, ...rest } = command
  return hashOf({ ...rest, named: name !== undefined })
}
