/** What is kept of people, over http: shown, forgotten and set by those whom it concerns. */
import { z } from 'zod'
import { FEWEST_DAYS, MOST_DAYS } from '#lib/access/believed-time.ts'
import type { AccessRefusal } from '#lib/access/http.ts'
import { MOST_PASSPHRASE_UNITS } from '#lib/protocol/wire.ts'
import type { Access } from '#server/access/access.ts'
import type { Caller } from '#server/access/caller.ts'
import { type AccessRoute, takes } from '#server/http/access.ts'
import type { Keeping } from '#server/privacy/keeping.ts'

const service = z.string().min(1).max(80)
const ticket = z.int().min(1)
const passphrase = z.string().max(MOST_PASSPHRASE_UNITS)

const BODIES = {
  forget: z.strictObject({ service, ticket }),
  reasons: z.strictObject({ service, passphrase, ticket: ticket.optional() }),
  retention: z.strictObject({ days: z.int().min(FEWEST_DAYS).max(MOST_DAYS), passphrase }),
}

type Refused = { readonly code: AccessRefusal; readonly again?: number }

/** Rows below /access of what is kept. */
export const privacyRoutes = (
  access: Pick<Access, 'adults' | 'from'>,
  keeping: Pick<Keeping, 'now' | 'setDays' | 'forget' | 'reasonsOf'>,
): readonly AccessRoute[] => {
  /** Why not, or null where it is the passphrase of somebody in charge. */
  const refusal = async (proof: string, request: Caller): Promise<Refused | null> => {
    const tried = await access.adults.proveInCharge(proof, access.from(request))
    if (tried.code === 'right') return null
    return tried.code === 'too-many-tries' ? tried : { code: 'not-it' }
  }
  return [
    {
      path: '/access/privacy',
      method: 'GET',
      by: 'lead',
      act: async () => ({ code: 'done', ...(await keeping.now()) }),
    },
    takes('/access/forget', 'lead', BODIES.forget, async ({ service, ticket }) => ({
      code: 'done',
      gone: await keeping.forget(service, ticket),
    })),
    takes('/access/reasons', 'counter', BODIES.reasons, async (body, request) => {
      const refused = await refusal(body.passphrase, request)
      if (refused) return refused
      return { code: 'done', reasons: await keeping.reasonsOf(body.service, body.ticket) }
    }),
    takes('/access/retention', 'lead', BODIES.retention, async ({ days, passphrase }, request) => {
      const refused = await refusal(passphrase, request)
      if (refused) return refused
      await keeping.setDays(days)
      return { code: 'done' }
    }),
  ]
}
