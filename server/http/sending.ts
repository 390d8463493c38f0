import type { ServerResponse } from 'node:http'

const send = (response: ServerResponse, status: number, type: string, body: string): void => {
  response.writeHead(status, {
    'Content-Type': type,
    'Content-Length': Buffer.byteLength(body),
    'Cache-Control': 'no-store',
  })
  response.end(response.req.method === 'HEAD' ? undefined : body)
}

export const sendText = (response: ServerResponse, status: number, body: string): void =>
  send(response, status, 'text/plain; charset=utf-8', body)

export const sendJson = (response: ServerResponse, status: number, value: unknown): void =>
  send(response, status, 'application/json; charset=utf-8', `${JSON.stringify(value)}\n`)

/** What a browser saves under a name instead of showing it. Ids and words of ours are in the name alone. */
export const sendFile = (
  response: ServerResponse,
  { text, type, name }: { readonly text: string; readonly type: string; readonly name: string },
): void => {
  response.setHeader(
    'Content-Disposition',
    `attachment; filename="${name.replace(/[^\w.-]/g, '-')}"`,
  )
  send(response, 200, `${type}; charset=utf-8`, text)
}
