/** Fields that commands share. Shapes only: what a number may mean is decided, not parsed. */
import { z } from 'zod'
import { REASONS } from '#lib/station/codes/codes.ts'

export const idField = z.string().min(1).max(60)

/** A number, minus zero made plain: JSON doesn't keep its sign. */
const plainNumber = z.number().transform((value) => value + 0)

/** Milligrams or pieces; refused as absurd where it makes no sense. */
export const amountField = plainNumber

/** Any number: one that no ticket has is refused by its name. */
export const ticketField = plainNumber

export const buildFields = { ticket: ticketField, letter: z.string().min(1).max(2) }

const needSchema = z.strictObject({
  code: idField,
  handling: z.enum(['keep-apart', 'leave-out']),
  reason: z.enum(REASONS).nullable(),
})

export const askedField = z.enum(['none', 'needs', 'not-sure'])

export const needsField = z.array(needSchema).max(20).readonly()

/** Whether the order was read back to the guest; no where left away. */
export const readBackField = z.boolean().default(false)

/** What was said of one build's needs: `saidOf` as the sender worked it out. */
export const saidField = z.array(z.string().max(300)).max(2_000).readonly()

export const choiceSchema = z.strictObject({
  item: idField,
  base: idField.nullable(),
  parts: z
    .record(
      idField,
      z.strictObject({
        placement: z.enum(['in', 'side', 'no']),
        portions: plainNumber,
        because: z.enum(['asked', 'gone', 'need']).default('asked'),
      }),
    )
    .readonly(),
  /** Whether the guest was asked, and what they said. There is no default: silence isn't an answer. */
  asked: askedField,
  needs: needsField,
  /** The guest agreed on the turned screen; no where left away. */
  agreed: z.boolean().default(false),
  /** Number of the acceptance of its cautions. */
  caution: z.int().min(1).nullable().default(null),
})

/** "HH:MM" */
export const clockField = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/)

/** What is known of the day: each may be left away, and null says that it isn't known. */
export const dayFields = {
  guestsExpected: z.int().min(0).max(20_000).nullable().optional(),
  /** Closing time, 'HH:MM' in the station's zone: the next one. */
  closesAt: clockField.nullable().optional(),
  assemblers: z.int().min(1).max(20).optional(),
}
