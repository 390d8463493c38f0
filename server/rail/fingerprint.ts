import { hashOf } from '#lib/service/state-hash.ts'
import type { Command } from '#lib/spine/registry.ts'
import { STANDS_FOR_SOMEBODY, setApart } from '#server/rail/apart.ts'

/** Without who said it; that there was somebody counts. */
const nobody = (command: Command): object => {
  if (command.type === 'send') {
    const { name, ...rest } = command
    return { ...rest, named: name !== undefined }
  }
  if (command.type === 'changeLabel') {
    const { initials, label, ...rest } = command
    return {
      ...rest,
      label: { ...label, readBy: null },
      initialled: (initials ?? label.readBy) !== null,
    }
  }
  if (command.type === 'plan')
    return {
      ...command,
      crew: command.crew.map((one) => ({ ...one, initials: STANDS_FOR_SOMEBODY })),
    }
  if (!('initials' in command)) return command
  const { initials, ...rest } = command
  return { ...rest, initialled: initials !== undefined }
}

/**
 * What makes two commands the same, without name, initials and reasons that one may carry.
 * @throws where it isn't a command at all
 */
export const fingerprintOf = (command: Command): string => hashOf(nobody(setApart(command).command))

/**
 * Whether a command is the one that an answer was kept for. An answer of before counted reasons: who
 * sends the same again after the program was renewed gets the same answer.
 */
export const isSameAs = (fingerprint: string, command: Command): boolean =>
  fingerprint === fingerprintOf(command) || fingerprint === hashOf(nobody(command))
