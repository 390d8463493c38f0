/** Pictures of labels over http: taken as bytes, told as the hash of what is kept, shown by that. */
import type { IncomingMessage } from 'node:http'
import type { Logger } from 'pino'
import { mayActAs } from '#lib/access/roles-granted.ts'
import { MOST_PHOTO_BYTES, PHOTO_TYPES, type PhotoAnswer } from '#lib/editor/label-http.ts'
import type { Access } from '#server/access/access.ts'
import type { Route } from '#server/http/routes.ts'
import { sendJson } from '#server/http/sending.ts'
import type { Photos } from '#server/labels/photos.ts'

const STATUS = {
  done: 200,
  'not-joined': 401,
  'not-yours': 403,
  'no-such-photo': 404,
  'too-many': 409,
  'too-many-pixels': 413,
  'not-a-picture': 415,
  'cannot-open': 415,
  'no-pictures-here': 501,
} as const satisfies Partial<Record<PhotoAnswer['code'], number>>

const PATH = '/menu/photos'

export const menuPhotoRoutes = (deps: {
  readonly access: Pick<Access, 'deviceOf' | 'tries'>
  readonly photos: Photos
  readonly log: Logger
}): readonly Route[] => {
  const { access, photos, log } = deps

  /** Asked before a body is read: a stranger's megabytes would take the room of others'. */
  const refuses = (request: IncomingMessage) => {
    const device = access.deviceOf(request)
    if (device !== null && mayActAs(device.role, 'lead')) return null
    access.tries.refused()
    const code = device === null ? 'not-joined' : 'not-yours'
    return { status: STATUS[code], told: { code } }
  }

  return [
    {
      path: PATH,
      method: 'GET',
      refuses,
      answer: ({ request, response }) => {
        const { searchParams } = new URL(request.url ?? '/', 'http://station')
        const body = photos.find(searchParams.get('hash') ?? '')
        if (body === null) {
          sendJson(response, STATUS['no-such-photo'], { code: 'no-such-photo' })
          return
        }
        response.writeHead(200, {
          'Content-Type': 'image/jpeg',
          'Content-Length': body.length,
          // What is called by its hash is never another.
          'Cache-Control': 'private, max-age=31536000, immutable',
        })
        response.end(request.method === 'HEAD' ? undefined : body)
      },
    },
    {
      path: PATH,
      method: 'POST',
      body: { types: PHOTO_TYPES, mostBytes: MOST_PHOTO_BYTES, withinMs: 60_000 },
      refuses,
      answer: async ({ response, body }) => {
        try {
          const kept = await photos.keep(body)
          const told =
            'problem' in kept ? { code: kept.problem } : { code: 'done' as const, ...kept }
          sendJson(response, STATUS[told.code], told satisfies PhotoAnswer)
        } catch (error) {
          log.error({ err: error, path: PATH }, 'a picture was not kept')
          sendJson(response, 500, { code: 'failed' })
        }
      },
    },
  ]
}
