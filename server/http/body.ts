/** The bodies of requests: of the type, size and time that their route declares, and no more at once than there is room for. */
import type { IncomingMessage } from 'node:http'
import { isLoopback } from '#server/http/allowed.ts'
import { WITHIN_MS } from '#server/http/limits.ts'
import { addressOf } from '#server/http/peer.ts'

/** What a route takes. */
export interface BodyRule {
  /** Media types in lower case, such as "application/json". */
  readonly types: readonly string[]
  readonly mostBytes: number
  /** 10 s where left away; at most 60 s. */
  readonly withinMs?: number
}

export interface BodyLimits {
  readonly ofOne: number
  readonly ofLoopback: number
  readonly inAll: number
  readonly bytesInAll: number
}

export type BodyRefusal = 'not-as-asked' | 'too-large' | 'too-slow' | 'busy'

export type BodyRead =
  | { readonly read: true; readonly bytes: Buffer }
  | { readonly read: false; readonly because: BodyRefusal }

export interface Bodies {
  /**
   * @param goOn called before anything is read, where the sender waits for that
   * @throws where the sender goes away in the middle
   */
  read(request: IncomingMessage, rule: BodyRule, goOn?: () => void): Promise<BodyRead>
  /** How many are being read now. */
  count(): number
}

const not = (because: BodyRefusal): BodyRead => ({ read: false, because })

/** Whether anything follows the headers. */
export const hasBody = ({ headers }: IncomingMessage): boolean =>
  headers['transfer-encoding'] !== undefined ||
  (headers['content-length'] !== undefined && headers['content-length'] !== '0')

/** What the headers alone say against it. */
const whyNot = ({ headers }: IncomingMessage, rule: BodyRule): BodyRefusal | null => {
  const type = (headers['content-type'] ?? '').replace(/;.*$/s, '').trim().toLowerCase()
  if (!rule.types.includes(type)) return 'not-as-asked'
  const coding = headers['content-encoding'] ?? 'identity'
  const transfer = headers['transfer-encoding'] ?? 'chunked'
  if (coding.toLowerCase() !== 'identity' || transfer.toLowerCase() !== 'chunked')
    return 'not-as-asked'
  return Number(headers['content-length'] ?? 0) > rule.mostBytes ? 'too-large' : null
}

const readWithin = async (request: IncomingMessage, rule: BodyRule): Promise<BodyRead> => {
  const parts: Buffer[] = []
  let size = 0
  const before = Date.now() + Math.min(rule.withinMs ?? WITHIN_MS.body, WITHIN_MS.request)
  // A stream that is destroyed here would take the answer with it.
  const stream = request.iterator({ destroyOnReturn: false })
  while (true) {
    let timer: NodeJS.Timeout | undefined
    const tooLong = new Promise<'late'>((settle) => {
      timer = setTimeout(() => settle('late'), Math.max(0, before - Date.now()))
    })
    const next = stream.next()
    const got = await Promise.race([next, tooLong]).finally(() => clearTimeout(timer))
    if (got === 'late') {
      next.catch(() => undefined)
      return not('too-slow')
    }
    if (got.done) return { read: true, bytes: Buffer.concat(parts) }
    size += got.value.length
    if (size > rule.mostBytes) return not('too-large')
    parts.push(got.value)
  }
}

export const createBodies = (limits: BodyLimits): Bodies => {
  const byAddress = new Map<string, number>()
  let count = 0
  let bytes = 0
  const hold = (address: string, by: 1 | -1, size: number): void => {
    const own = (byAddress.get(address) ?? 0) + by
    if (own === 0) byAddress.delete(address)
    else byAddress.set(address, own)
    count += by
    bytes += by * size
  }
  return {
    count: () => count,
    read: async (request, rule, goOn) => {
      const refused = whyNot(request, rule)
      if (refused !== null) return not(refused)
      const address = addressOf(request.socket.remoteAddress)
      const most = isLoopback(address) ? limits.ofLoopback : limits.ofOne
      const isFull = count >= limits.inAll || bytes + rule.mostBytes > limits.bytesInAll
      if (isFull || (byAddress.get(address) ?? 0) >= most) return not('busy')
      hold(address, 1, rule.mostBytes)
      try {
        goOn?.()
        return await readWithin(request, rule)
      } finally {
        hold(address, -1, rule.mostBytes)
      }
    },
  }
}
