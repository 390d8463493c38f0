import { hashOf } from '#lib/service/state-hash.ts'
import type { Command } from '#lib/spine/registry.ts'

/** A guest's name or somebody's initials, which lie in a file of their own and in no log. */
export const keptApart = (command: Command): string | undefined => {
  if (command.type === 'send') return command.name
  // A page of before says who read a label in the label itself.
  if (command.type === 'changeLabel') return command.initials ?? command.label.readBy ?? undefined
  return 'initials' in command ? command.initials : undefined
}

/** What makes two commands the same, without the name or the initials that one may carry. */
export const fingerprintOf = (command: Command): string => {
  if (command.type === 'send') {
    const { name, ...rest } = command
    return hashOf({ ...rest, named: name !== undefined })
  }
  if (command.type === 'changeLabel') {
    const { initials, label, ...rest } = command
    return hashOf({
      ...rest,
      label: { ...label, readBy: null },
      initialled: (initials ?? label.readBy) !== null,
    })
  }
  if (!('initials' in command)) return hashOf(command)
  const { initials, ...rest } = command
  return hashOf({ ...rest, initialled: initials !== undefined })
}
