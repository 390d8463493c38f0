/** Over http: whether the person in charge has a passphrase, and setting it. Answers are codes. */
import type { Logger } from 'pino'
import { z } from 'zod'
import { MOST_PASSPHRASE_UNITS, type PassphraseCode } from '#lib/protocol/wire.ts'
import { isFromHere } from '#server/http/peer.ts'
import { type Asked, type Route, reads } from '#server/http/routes.ts'
import { sendJson } from '#server/http/sending.ts'
import type { InCharge } from '#server/in-charge/in-charge.ts'

const MOST_BYTES = 16_384

const passphrase = z.string().max(MOST_PASSPHRASE_UNITS)
const bodySchema = z.strictObject({ passphrase, before: passphrase.optional() })

const STATUS = {
  set: 200,
  'not-json': 400,
  'not-as-asked': 400,
  'too-short': 400,
  'too-long': 400,
  'other-origin': 403,
  'only-on-this-machine': 403,
  'wrong-passphrase': 403,
  'before-missing': 403,
  'no-passphrase': 409,
  'too-large': 413,
  'too-many-tries': 429,
  failed: 500,
} as const satisfies Readonly<Record<PassphraseCode, number>>

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

const setPassphrase = async (
  inCharge: InCharge,
  { request, body, from }: Asked,
): Promise<PassphraseCode> => {
  const json = parseJson(body.toString('utf8'))
  if (json === undefined) return 'not-json'
  const parsed = bodySchema.safeParse(json)
  if (!parsed.success) return 'not-as-asked'
  const { passphrase: wanted, before } = parsed.data
  if (before !== undefined) return inCharge.change(wanted, before, from)
  if (await inCharge.isSet()) return 'before-missing'
  if (!isFromHere(request)) return 'only-on-this-machine'
  const answer = await inCharge.setFirst(wanted)
  return answer === 'set-already' ? 'before-missing' : answer
}

export const inChargeRoutes = ({
  inCharge,
  log,
}: {
  readonly inCharge: InCharge
  readonly log: Logger
}): readonly Route[] => [
  reads('/in-charge', async ({ response }) =>
    sendJson(response, 200, { set: await inCharge.isSet() }),
  ),
  {
    path: '/in-charge/passphrase',
    method: 'POST',
    body: { types: ['application/json'], mostBytes: MOST_BYTES },
    answer: async (asked) => {
      try {
        const code = await setPassphrase(inCharge, asked)
        sendJson(asked.response, STATUS[code], { code })
      } catch (error) {
        log.error({ err: error }, 'the passphrase was not set')
        sendJson(asked.response, STATUS.failed, { code: 'failed' })
      }
    },
  },
]
