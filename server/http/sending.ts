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
