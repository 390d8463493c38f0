import type { Command } from '#lib/spine/registry.ts'

/**
 * The service that a command is for: the one that is followed, or for `open` and `plan` a new one
 * named after the command, so that the same command sent again opens or plans no second service.
 */
export const serviceFor = (command: Command, id: string, followed: string | null): string =>
  command.type === 'open' || command.type === 'plan' ? `s-${id}` : (followed ?? '')
