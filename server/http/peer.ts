/** Who asks: the address that the connection comes from, and nothing that a request says of itself. */
import type { IncomingMessage } from 'node:http'
import { isLoopback } from '#server/http/allowed.ts'

/** An address in one form: IPv4 in IPv6 as IPv4, no zone. */
export const addressOf = (remoteAddress: string | undefined): string =>
  (remoteAddress ?? 'unknown').replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '')

const FORWARDING =
  /^(forwarded|via|x-forwarded(-.*)?|x-real-ip|x-client-ip|x-cluster-client-ip|true-client-ip|cf-connecting-ip|fastly-client-ip|x-original-.*|x-rewrite-url|x-http-method.*|x-method-override|x-host)$/

/** What frameworks believe of a request that came by a proxy, or by their own inside. */
const INTERNAL = /^(x-middleware-.*|x-invoke-.*|x-matched-path|x-nextjs-.*|next-action)$/

export const carriesForwarding = (headers: IncomingMessage['headers']): boolean =>
  Object.keys(headers).some((name) => FORWARDING.test(name))

/** A forwarded request comes from wherever its forwarder says, which nobody here believes. */
export const isFromHere = ({
  headers,
  socket,
}: Pick<IncomingMessage, 'headers'> & {
  readonly socket: { readonly remoteAddress?: string | undefined }
}): boolean => isLoopback(socket.remoteAddress) && !carriesForwarding(headers)

/** Takes away what the screens' framework would believe. */
export const forgetForwarding = (request: IncomingMessage): void => {
  for (const name of Object.keys(request.headers))
    if (FORWARDING.test(name) || INTERNAL.test(name)) delete request.headers[name]
}
