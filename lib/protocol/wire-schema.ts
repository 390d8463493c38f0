/** What comes from a screen, parsed before anything else looks at it. */
import { z } from 'zod'
import { MOST_COMMAND_BYTES, MOST_PASSPHRASE_UNITS, PROTOCOL } from '#lib/protocol/wire.ts'
import type { NotTaken } from '#lib/service/refusal.ts'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { type Command, commandSchema, mayDo } from '#lib/spine/registry.ts'

const name = z.string().regex(/^[\w-]{1,80}$/)

export const helloSchema = z.object({
  protocol: z.int().min(0),
  role: z.enum(ROLES),
  token: z.string().max(200).optional(),
  house: z.enum(['own', 'demo']).optional(),
  station: name.optional(),
})

export const followSchema = z.object({ service: name, position: z.int().min(0) })

const envelopeSchema = z.object({
  protocol: z.int().min(0),
  id: name,
  /** Empty where the screen follows none yet. */
  service: name.or(z.literal('')),
  command: z.unknown(),
  passphrase: z.string().max(MOST_PASSPHRASE_UNITS).optional(),
})

export type Taken =
  | {
      readonly taken: true
      readonly id: string
      readonly service: string
      readonly command: Command
      /** Whose command it is, once the passphrase is verified where there is one. */
      readonly by: Role
      readonly passphrase: string | null
    }
  | { readonly taken: false; readonly id: string | null; readonly because: NotTaken }

/** The id of a message that may not be one; null where it has none. */
export const idOf = (message: unknown): string | null => {
  const found = z.object({ id: name }).safeParse(message)
  return found.success ? found.data.id : null
}

/** Bytes of a value's JSON in UTF-8; beyond all bounds where it is nested too deeply to be written. */
const bytesOf = (value: unknown): number => {
  try {
    return new TextEncoder().encode(JSON.stringify(value) ?? '').length
  } catch {
    return Number.POSITIVE_INFINITY
  }
}

/**
 * With a passphrase a command is the person in charge's, or nobody's. A device of theirs without one
 * has the lead's rights.
 */
const byOf = (role: Role, passphrase: string | undefined): Role => {
  if (passphrase !== undefined) return 'in-charge'
  return role === 'in-charge' ? 'lead' : role
}

/**
 * Takes a command message from a role, or says why not. A passphrase is handed on unverified: what
 * comes with one counts only when it is right. Never throws.
 */
export const takeCommand = (message: unknown, role: Role): Taken => {
  const not = (because: NotTaken): Taken => ({ taken: false, id: idOf(message), because })
  const envelope = envelopeSchema.safeParse(message)
  if (!envelope.success) return not({ code: 'not-the-protocol' })
  const { protocol, id, service } = envelope.data
  if (protocol > PROTOCOL) return not({ code: 'newer-version' })
  if (protocol < PROTOCOL) return not({ code: 'older-version' })
  if (bytesOf(envelope.data.command) > MOST_COMMAND_BYTES) return not({ code: 'too-large' })
  const command = commandSchema.safeParse(envelope.data.command)
  if (!command.success) return not({ code: 'not-the-protocol' })
  const { passphrase } = envelope.data
  const by = byOf(role, passphrase)
  if (!mayDo(by, command.data.type))
    return not({ code: 'role-may-not', role: by, command: command.data.type })
  return { taken: true, id, service, command: command.data, by, passphrase: passphrase ?? null }
}
