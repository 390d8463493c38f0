/** Over http: whether the person in charge has a passphrase, and setting it. Answers are codes. */
import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Logger } from 'pino'
import { z } from 'zod'
import { MOST_PASSPHRASE_UNITS, type PassphraseCode } from '#lib/protocol/wire.ts'
import { houseWords as words } from '#lib/words/house/house-en.ts'
import { isAllowedOrigin, isLoopback } from '#server/http/allowed.ts'
import { sendJson, sendText } from '#server/http/sending.ts'
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

/** What came, as text; null, and no more is read, where it is too large. */
const readBody = async (request: IncomingMessage): Promise<string | null> => {
  const parts: Buffer[] = []
  let size = 0
  // A stream that is destroyed here would take the answer with it.
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    size += part.length
    if (size > MOST_BYTES) return null
    parts.push(part)
  }
  return Buffer.concat(parts).toString('utf8')
}

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** A forwarded request comes from wherever its forwarder says, not from this machine. */
const isFromHere = ({ headers, socket }: IncomingMessage): boolean =>
  isLoopback(socket.remoteAddress) &&
  headers.forwarded === undefined &&
  headers['x-forwarded-for'] === undefined

const setPassphrase = async (
  inCharge: InCharge,
  request: IncomingMessage,
): Promise<PassphraseCode> => {
  const { headers, socket } = request
  if (!isAllowedOrigin(headers.origin, headers.host, socket.remoteAddress)) return 'other-origin'
  if (!/^application\/json\s*(;|$)/i.test(headers['content-type'] ?? '')) return 'not-json'
  const text = await readBody(request)
  if (text === null) return 'too-large'
  const json = parseJson(text)
  if (json === undefined) return 'not-json'
  const body = bodySchema.safeParse(json)
  if (!body.success) return 'not-as-asked'
  const { passphrase: wanted, before } = body.data
  if (before !== undefined)
    return inCharge.change(wanted, before, socket.remoteAddress ?? 'unknown')
  if (await inCharge.isSet()) return 'before-missing'
  if (!isFromHere(request)) return 'only-on-this-machine'
  const answer = await inCharge.setFirst(wanted)
  return answer === 'set-already' ? 'before-missing' : answer
}

export const answerInCharge = async (
  { inCharge, log }: { readonly inCharge: InCharge; readonly log: Logger },
  path: '/in-charge' | '/in-charge/passphrase',
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> => {
  const { method } = request
  try {
    if (path === '/in-charge') {
      if (method === 'GET' || method === 'HEAD')
        sendJson(response, 200, { set: await inCharge.isSet() })
      else sendText(response.setHeader('Allow', 'GET, HEAD'), 405, words.readOnly)
      return
    }
    if (method !== 'POST') {
      sendText(response.setHeader('Allow', 'POST'), 405, words.writeOnly)
      return
    }
    const code = await setPassphrase(inCharge, request)
    // What wasn't read to its end would be taken for the next request.
    if (code === 'too-large') response.setHeader('Connection', 'close')
    sendJson(response, STATUS[code], { code })
  } catch (error) {
    if (request.readableAborted) return
    log.error({ err: error, path }, 'the passphrase was not set')
    if (response.headersSent) response.destroy()
    else sendJson(response, STATUS.failed, { code: 'failed' })
  }
}
