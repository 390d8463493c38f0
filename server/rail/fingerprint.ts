import type { Command } from '#lib/service/decide.ts'
import { hashOf } from '#lib/service/state-hash.ts'

/** A guest's name or somebody's initials, which lie in a file of their own and in no log. */
export const keptApart = (command: Command): string | undefined => {
  if (command.type === 'send') return command.name
  return 'initials' in command ? command.initials : undefined
}

/** What makes two commands the same, without the name or the initials that one may carry. */
export const fingerprintOf = (command: Command): string => {
  if (command.type === 'send') {
    const { name, ...rest } = command
    return hashOf({ ...rest, named: name !== undefined })
  }
  if (!('initials' in command)) return hashOf(command)
  const { initials, ...rest } = command
  return hashOf({ ...rest, initialled: initials !== undefined })
}
